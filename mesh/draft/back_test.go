package draft

import (
	"math"
	"math/rand/v2"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

func workedBack(t testing.TB) BackBlock {
	t.Helper()
	k, err := BackFromBody(readWorked(t).body())
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// The back of the worked example of an Aldrich-type draft, worked out step by
// step apart from this program: cm, y down from the neck point.
func TestBackWorked(t *testing.T) {
	k := workedBack(t)
	for _, q := range []struct {
		name string
		got  r2.Vec
		x, y float64
	}{
		{"nape", k.Nape, 0, 1.5}, {"neck", k.Neck, 7.2, 0}, {"tip", k.ShoulderTip, 19.470, 5.0},
		{"underarm", k.Underarm, 23.5, 23.0}, {"side waist", k.SideWaist, 21.75, 42.5}, {"cb waist", k.CBWaist, 0, 42.5},
	} {
		if d := math.Hypot(q.got.X*100-q.x, -q.got.Y*100-q.y); d > 0.001 {
			t.Errorf("%s = (%.3f, %.3f) cm, want (%.3f, %.3f)", q.name, q.got.X*100, -q.got.Y*100, q.x, q.y)
		}
	}
	if d := nearest(k.Armhole, r2.Vec{X: 0.177, Y: -0.14}); d > 1e-6 {
		t.Errorf("the armhole misses its pitch (17.7, 14.0) cm by %.2f mm", d*1000)
	}
	// Half waist with the darts closed: 36 cm and 3 cm ease, of which the front has 20.25.
	if got := dist(k.SideWaist, k.DartOuter) + dist(k.DartInner, k.CBWaist); math.Abs(got-0.1875) > 1e-6 {
		t.Errorf("half back waist %.4f m, want 0.1875 m", got)
	}
}

// Over 200 bodies and cuts front and back walk, whatever the front was cut to.
func TestBackWalks(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	count := 0
	for range 200 {
		sizes := body.Sizes()
		b, err := body.FromChart(sizes[r.IntN(len(sizes))])
		if err != nil {
			t.Fatal(err)
		}
		b.ShoulderSlope = between(15, 26) * math.Pi / 180
		b.BackWidth += between(-0.01, 0.01)
		blk, err := FromBody(b)
		if err != nil {
			continue
		}
		c := DefaultCut()
		c.CowlPoint, c.Extension, c.Facing = between(0, 0.08), between(0, 0.2), between(0.01, 0.1)
		p, err := Draft(blk, c)
		if err != nil {
			continue
		}
		k, err := BackFromBody(b)
		if err != nil {
			t.Fatalf("BackFromBody(%+v): %v", b, err)
		}
		back, err := MatchBack(k, p)
		if err != nil {
			t.Fatalf("MatchBack: %v", err)
		}
		count++
		for _, w := range Walked(p, back) {
			if math.Abs(w.Off()) > 0.0005 {
				t.Errorf("%s: front %.2f cm, back %.2f cm, want 0.5 mm apart at most", w.Name, w.Front*100, w.Back*100)
			}
		}
		// Seams are on the outline: shoelace over the closed outline runs the right way and holds the facing.
		if polyline.Area(back.Outline) <= polyline.Area(back.Facing) || polyline.Area(back.Facing) <= 0 {
			t.Errorf("areas: back %.4f m², facing %.4f m²", polyline.Area(back.Outline), polyline.Area(back.Facing))
		}
		// Square to CB: the neck's last chord is nearly level.
		n := len(back.Neck)
		if d := r2.Sub(back.Neck[n-1], back.Neck[n-2]); math.Abs(d.Y) > 0.12*math.Abs(d.X) {
			t.Errorf("neck meets CB at %.1f°, want level", deg(math.Atan2(d.Y, -d.X)))
		}
	}
	if count < 150 {
		t.Errorf("walked %d pairs, want 150 or more", count)
	}
}

// A front cut from a block with a shoulder 1.5 cm longer or shorter gets a
// back whose shoulder walks and whose neck is cut as far out.
func TestBackOtherShoulder(t *testing.T) {
	for _, more := range []float64{-0.015, 0.015} {
		p, err := Draft(workedBlock(t), DefaultCut())
		if err != nil {
			t.Fatal(err)
		}
		plain, err := MatchBack(workedBack(t), p)
		if err != nil {
			t.Fatal(err)
		}
		tip := r2.Add(p.Shoulder[1], r2.Scale(more, r2.Unit(r2.Sub(p.Shoulder[1], p.Shoulder[0]))))
		p.Shoulder = []r2.Vec{p.Shoulder[0], tip}
		b, err := MatchBack(workedBack(t), p)
		if err != nil {
			t.Fatal(err)
		}
		if w := Walked(p, b)[0]; math.Abs(w.Off()) > 0.0005 {
			t.Errorf("%+.1f cm: shoulder front %.2f cm, back %.2f cm", more*100, w.Front*100, w.Back*100)
		}
		if d := dist(b.Shoulder[0], plain.Shoulder[0]); d > 0.001 {
			t.Errorf("%+.1f cm: the neck is cut %.2f mm elsewhere, want 1 mm at most", more*100, d*1000)
		}
	}
}

// The worked cowl's opening: two half edges of 21.69 cm and a back neck that
// is longer than the straight line from CB to the cowl point.
func TestOpening(t *testing.T) {
	c := DefaultCut()
	c.DartShare, c.Extension = 1, Auto
	p, err := Draft(workedBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	b, err := MatchBack(workedBack(t), p)
	if err != nil {
		t.Fatal(err)
	}
	straight := 2 * (0.216878 + dist(b.Neck[0], b.Neck[len(b.Neck)-1]))
	if got := Opening(p, b); got < straight || got > straight+0.03 {
		t.Errorf("Opening = %.3f m, want %.3f m and up to 3 cm more", got, straight)
	}
}
