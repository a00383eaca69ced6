package draft

import (
	"cowl/mesh/polyline"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// walkedOutline is the length of an outline from a to b, places of it, the shorter way round.
func walkedOutline(t *testing.T, outline []r2.Vec, a, b r2.Vec) float64 {
	t.Helper()
	closed := append(append([]r2.Vec(nil), outline...), outline[0])
	place := func(v r2.Vec) float64 {
		s, off := foot(closed, v)
		if off > 1e-6 {
			t.Fatalf("place %v lies %.3g m off the outline", v, off)
		}
		return s * polyline.Length(closed)
	}
	d := math.Abs(place(a) - place(b))
	return math.Min(d, polyline.Length(closed)-d)
}

// On 200 bodies and cuts: the sewn waist of a front that was not shifted off CF is the
// waist measured and 6 cm of ease, which the frame of the draft has, less or more by the
// 4 mm a half and piece that blending takes; the neck is what the outlines of
// front and back have between the cowl points; a gap is as long as the outline between its
// ends, alike on front and back, and opens neck or waist by both its edges.
func TestOpeningsOfBodies(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 21))
	count, gaps, waists := 0, 0, 0
	for count < 200 {
		who, drafted, ok := cutOf(rnd, AtFront)
		if !ok {
			continue
		}
		p, b := blendedSuit(t, who, drafted)
		count++
		neck := 2*p.HalfEdge + walkedOutline(t, b.Outline, b.Shoulder[0], mirrored(b.Shoulder[0]))
		if got := Opening(p, b); math.Abs(got-neck) > 1e-6 {
			t.Errorf("case %d: Opening = %.4f m, want %.4f m round the outlines", count, got, neck)
		}
		if p.Eased == 0 && (p.How == Pivot || p.Added.Amount == 0) {
			waists++
			if got, want := WaistOpening(p, b), who.Waist+0.06; math.Abs(got-want) > 0.016 {
				t.Errorf("case %d: WaistOpening = %.4f m, want %.4f ± 0.016 m", count, got, want)
			}
		}
		for _, c := range []Closure{SideZip, ShoulderOpen, BackOpen} {
			g, err := c.GapIn(p, b, 0.57)
			if err != nil {
				continue // a narrow shoulder; counted below
			}
			gaps++
			checkGap(t, p, b, g)
		}
	}
	if waists < 100 || gaps < 580 {
		t.Errorf("looked at %d waists and %d gaps, want 100 and 580 or more", waists, gaps)
	}
}

// checkGap holds a gap against the outlines. On the back, seen from the right side of the
// cloth, the wearer's left lies at X below 0.
func checkGap(t *testing.T, p Cowl, b Back, g Gap) {
	t.Helper()
	front, back := 0.0, b.Neck[len(b.Neck)-1].Y-g.Back[0].Y
	switch g.Closure {
	case SideZip:
		front = walkedOutline(t, p.Outline, g.Front[0], p.Side[len(p.Side)-1])
		back = walkedOutline(t, b.Outline, mirrored(g.Back[0]), b.Side[len(b.Side)-1])
	case ShoulderOpen:
		front = walkedOutline(t, p.Outline, g.Front[0], p.Shoulder[0])
		back = walkedOutline(t, b.Outline, mirrored(g.Back[0]), b.Shoulder[0])
	case BackOpen:
		front = back
		if g.Head(p, b) < 0.57 {
			t.Errorf("a head of 57 cm does not pass the slit: %.1f cm", g.Head(p, b)*100)
		}
	}
	if math.Abs(front-g.Long) > 5e-4 || math.Abs(back-g.Long) > 5e-4 {
		t.Errorf("%v: gap of %.2f mm, front's edge %.2f mm, back's %.2f mm", g.Closure, g.Long*1000, front*1000, back*1000)
	}
	neck, waist := g.Head(p, b)-Opening(p, b), g.Waist(p, b)-WaistOpening(p, b)
	if g.Closure == SideZip {
		neck, waist = waist, neck
	}
	if math.Abs(neck-2*g.Long) > 1e-9 || waist != 0 {
		t.Errorf("%v: a gap of %.1f mm opens by %.1f and %.1f mm, want by twice its length and 0", g.Closure, g.Long*1000,
			neck*1000, waist*1000)
	}
}

// A front with a hem has a zip with two stops; pleats keep the shoulder shut; a name
// goes round; an unknown one is refused.
func TestClosures(t *testing.T) {
	c := DefaultCut()
	c.Hem = 0.18
	p, err := Draft(workedBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	k, err := BackFromBody(readWorked(t).body())
	if err != nil {
		t.Fatal(err)
	}
	b, err := MatchBack(k, p)
	if err != nil {
		t.Fatal(err)
	}
	g, err := SideZip.GapIn(p, b, 0.57)
	if err != nil || len(g.Front) != 2 || math.Abs(walkedOutline(t, p.Outline, g.Front[0], g.Front[1])-g.Long) > 1e-6 {
		t.Errorf("zip with a hem: %+v, %v, want two stops", g, err)
	}
	c = DefaultCut()
	c.Pleats = 2
	if p, err = Draft(workedBlock(t), c); err != nil {
		t.Fatal(err)
	}
	if _, err := ShoulderOpen.GapIn(p, b, 0.57); err == nil {
		t.Error("a pleated shoulder was opened, want an error")
	}
	for c := NoClosure; c <= BackOpen; c++ {
		if got, err := ParseClosure(c.String()); got != c || err != nil {
			t.Errorf("ParseClosure(%q) = %v, %v", c.String(), got, err)
		}
	}
	if _, err := ParseClosure("front"); err == nil {
		t.Error(`ParseClosure("front") = nil error, want one`)
	}
}
