package draft

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// sewnAngle lays the back onto the front along their seam and returns the angle of the
// line over it (degrees), taken from places far metres off the seam on either side: 180
// runs straight on. The seam ends in the corner; lines begin there.
func sewnAngle(frontSeam, front, backSeam, back []r2.Vec, far float64) float64 {
	direction := func(line []r2.Vec, s float64) r2.Vec { at, _ := polyline.Along(line, s); return r2.Sub(at, line[0]) }
	side := func(seam, line []r2.Vec) float64 {
		u, v := direction(seam, far), direction(line, far)
		return deg(math.Acos(r2.Dot(u, v) / (r2.Norm(u) * r2.Norm(v))))
	}
	return side(frontSeam, front) + side(backSeam, back)
}

// bent returns the largest turn of a line between two of its pieces (degrees).
func bent(line []r2.Vec) float64 {
	most := 0.0
	for i := 1; i < len(line)-1; i++ {
		most = math.Max(most, math.Abs(deg(turn(r2.Sub(line[i], line[i-1]), r2.Sub(line[i+1], line[i])))))
	}
	return most
}

// cutOf draws a body and a cut at random for a cowl worn at a side; false: these do not
// go together.
func cutOf(rnd *rand.Rand, worn Side) (body.Body, Cowl, bool) {
	between := func(lo, hi float64) float64 { return lo + rnd.Float64()*(hi-lo) }
	lo, _ := body.FromChart(body.SmallestSize)
	hi, _ := body.FromChart(body.LargestSize)
	size := rnd.Float64()
	who := body.Body{}
	for _, m := range body.Measures() {
		*m.In(&who) = (*m.In(&lo) + size*(*m.In(&hi)-*m.In(&lo))) * between(0.97, 1.03)
	}
	if rnd.IntN(2) == 0 {
		who.ShoulderSlope, who.BustSpan, who.ApexDepth = 0, 0, 0
	}
	k, err := CowlFromBody(who, worn)
	if err != nil {
		return who, Cowl{}, false
	}
	c := DefaultCut()
	c.Worn = worn
	c.CowlPoint, c.Extension, c.Facing, c.How = between(0, 0.08), between(0, 0.2), between(0.01, 0.1), How(rnd.IntN(2))
	if rnd.IntN(4) == 0 {
		c.DartShare = rnd.Float64()
	}
	p, err := Draft(k, c)
	return who, p, err == nil
}

// blendedSuit blends a cowl and drafts the plain piece of the same body to it.
func blendedSuit(t *testing.T, who body.Body, drafted Cowl) (Cowl, Back) {
	t.Helper()
	p, err := drafted.Blended()
	if err != nil {
		t.Fatalf("Blended: %v", err)
	}
	k, err := PlainFromBody(who, p.Worn)
	if err != nil {
		t.Fatal(err)
	}
	b, err := MatchBack(k, p)
	if err != nil {
		t.Fatalf("MatchBack: %v", err)
	}
	return p, b
}

// farthestOff is how far a place of a line lies from another line at most, m.
func farthestOff(line, other []r2.Vec) (most float64) {
	for _, v := range line {
		_, off := foot(other, v)
		most = math.Max(most, off)
	}
	return most
}

// Over the closed seams waist and armhole run on without a corner, on 200 bodies and
// cuts; within, the waist is one curve, square to the centre front, and at most 4 mm a half
// longer or shorter than it was drafted. A back cowl joins its plain front as well.
func TestBlendedJoins(t *testing.T) {
	for _, q := range []struct {
		worn         Side
		bent, longer float64 // °, m: the dart of a back gives less, so that it is pivoted more and its waist turns more
	}{{AtFront, 6, 0.004}, {AtBack, 8, 0.006}} {
		t.Run(q.worn.String(), func(t *testing.T) { checkBlendedJoins(t, q.worn, q.bent, q.longer) })
	}
}

func checkBlendedJoins(t *testing.T, worn Side, mostBent, mostLonger float64) {
	rnd := rand.New(rand.NewPCG(5, 8))
	count, worst, longer, waistOff, armOff := 0, 0.0, 0.0, 0.0, 0.0
	for count < 200 {
		who, drafted, ok := cutOf(rnd, worn)
		if !ok {
			continue
		}
		p, b := blendedSuit(t, who, drafted)
		count++
		for _, q := range []struct {
			name                 string
			seam, line, on, back []r2.Vec
		}{
			{"shoulder tip", polyline.Reversed(p.Shoulder), p.Armhole, polyline.Reversed(b.Shoulder), b.Armhole},
			{"underarm", p.Side, polyline.Reversed(p.Armhole), b.Side, polyline.Reversed(b.Armhole)},
			{"side waist", polyline.Reversed(p.Side), p.Waist, polyline.Reversed(b.Side), b.Waist},
		} {
			a := sewnAngle(q.seam, q.line, q.on, q.back, squareFor)
			worst = math.Max(worst, math.Abs(a-180))
			if math.Abs(a-180) > 2 {
				t.Errorf("case %d: %s joins at %.1f°, want 180° ± 2°", count, q.name, a)
			}
		}
		for _, j := range Joined(p, b) {
			if a := deg(j.Angle()); math.Abs(a-180) > 2 {
				t.Errorf("case %d: Joined says %s at %.1f°, want 180° ± 2°", count, j.Name, a)
			}
		}
		for _, w := range Walked(p, b) {
			if math.Abs(w.Off()) > 0.0005 {
				t.Errorf("case %d: %s is %.2f mm longer on the front, want 0.5 mm at most", count, w.Name, w.Off()*1000)
			}
		}
		checkWaist(t, fmt.Sprintf("case %d: cowl", count), sewn(p.Waist, p.DartLeft), mostBent)
		checkWaist(t, fmt.Sprintf("case %d: plain", count), sewn(unjutted(b.Waist, b.Dart), b.Dart), mostBent)
		was, is := drafted.Report(), p.Report()
		d := is.Waist - is.IntakeLeft - was.Waist + was.IntakeLeft
		longer = math.Max(longer, math.Abs(d))
		waistOff = math.Max(waistOff, farthestOff(p.Waist, drafted.Waist))
		armOff = math.Max(armOff, farthestOff(p.Armhole, drafted.Armhole))
		for name, off := range map[string]float64{
			"shoulder": is.Shoulder - was.Shoulder, "side": is.Side - was.Side, "half edge": is.HalfEdge - was.HalfEdge,
		} {
			if math.Abs(off) > 1e-9 {
				t.Errorf("case %d: blending made the %s %.2f mm longer, want it untouched", count, name, off*1000)
			}
		}
	}
	if longer > mostLonger {
		t.Errorf("half waist changed by %.1f mm, want %.0f mm at most", longer*1000, mostLonger*1000)
	}
	t.Logf("%d joins, worst %.2f° off; half waist changed by %.1f mm at most; waist lies up to %.1f mm, armhole up to "+
		"%.1f mm off the draft",
		3*count, worst, longer*1000, waistOff*1000, armOff*1000)
}

// checkWaist wants a sewn waist that is one clean curve and square to the centre.
func checkWaist(t *testing.T, name string, waist []r2.Vec, mostBent float64) {
	t.Helper()
	if got := bent(waist); got > mostBent {
		t.Errorf("%s waist turns by %.1f° between two of its pieces, want one clean curve", name, got)
	}
	n := len(waist)
	if d := r2.Sub(waist[n-1], waist[n-2]); math.Abs(d.Y) > 1e-9 {
		t.Errorf("%s waist meets the centre at %.2f° from square", name, deg(math.Atan2(d.Y, -d.X)))
	}
}

// sewn returns the waist with its dart closed.
func sewn(waist, dart []r2.Vec) []r2.Vec {
	if dart == nil {
		return waist
	}
	a := turn(r2.Sub(dart[0], dart[1]), r2.Sub(dart[2], dart[1]))
	var out []r2.Vec
	outer := true
	for _, v := range waist {
		if v == dart[2] {
			outer = false
		}
		if outer {
			v = r2.Rotate(v, a, dart[1])
		}
		out = join(out, v)
	}
	return out
}

// Size 10 with its whole dart closed is 72 + 6 cm round the sewn waist: the frame has 3 cm
// of ease on the half; blending moves it by 4 mm a half at most.
func TestWaistOpening(t *testing.T) {
	for _, hem := range []float64{0, 0.12} {
		c := DefaultCut()
		c.DartShare, c.Extension, c.Hem = 1, Auto, hem
		p, err := Draft(workedBlock(t), c)
		if err != nil {
			t.Fatal(err)
		}
		if p, err = p.Blended(); err != nil {
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
		if got := WaistOpening(p, b); math.Abs(got-0.78) > 0.008 {
			t.Errorf("hem %.2f: WaistOpening = %.4f m, want 0.78 ± 0.008", hem, got)
		}
	}
}

// 3 mm of dart are too little to sew: on paper they are ease, counted, and the waist is
// drawn without a dart; 8 mm are drawn.
func TestBlendedEasesSmallDart(t *testing.T) {
	for _, q := range []struct {
		left  float64 // m
		drawn bool
	}{{0.003, false}, {0.008, true}} {
		c := DefaultCut()
		whole := workedBlock(t).DartIntake()
		c.DartShare, c.Extension = 1-q.left/whole, Auto
		p, err := Draft(workedBlock(t), c)
		if err != nil {
			t.Fatal(err)
		}
		b, err := p.Blended()
		if err != nil {
			t.Fatal(err)
		}
		if (b.DartLeft != nil) != q.drawn || (b.Eased == 0) != q.drawn || math.Abs(b.Report().IntakeLeft-q.left) > 0.0005 {
			t.Errorf("%.0f mm of dart left: drawn %t, eased %.1f mm, intake left %.1f mm",
				q.left*1000, b.DartLeft != nil, b.Eased*1000, b.Report().IntakeLeft*1000)
		}
	}
}

// With a hem of 4 to 22 cm too, on 60 bodies: all lines run on over the seams, and what is
// sewn together is of one length.
func TestBlendedHemJoins(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 4))
	for count := 0; count < 60; {
		who, plain, ok := cutOf(rnd, AtFront)
		if !ok {
			continue
		}
		c := DefaultCut()
		c.Hem, c.DartShare, c.Extension = 0.04+0.18*rnd.Float64(), rnd.Float64(), Auto
		drafted, err := Draft(plain.Block, c)
		if err != nil {
			continue
		}
		count++
		p, b := blendedSuit(t, who, drafted)
		for _, j := range Joined(p, b) {
			if a := deg(j.Angle()); math.Abs(a-180) > 2 {
				t.Errorf("case %d, hem %.0f mm: %s joins at %.1f°, want 180° ± 2°", count, p.Hem*1000, j.Name, a)
			}
		}
		for _, w := range Walked(p, b) {
			if math.Abs(w.Off()) > 0.0005 {
				t.Errorf("case %d, hem %.0f mm: %s is %.2f mm longer on the front, want 0.5 mm at most", count, p.Hem*1000, w.Name,
					w.Off()*1000)
			}
		}
	}
}
