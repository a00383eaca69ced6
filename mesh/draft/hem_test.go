package draft

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// plainBlock is a front without a dart whose side seam stands 20 cm from CF at the
// waist and 26 cm from it at the hip, 10 cm down the seam: 6, 8 and 10.
func plainBlock(t testing.TB) Block {
	t.Helper()
	b, err := FromPoints(map[string][]r2.Vec{
		"cf neck": {{Y: -0.08}}, "neck": {{X: 0.07}}, "shoulder tip": {{X: 0.18, Y: -0.04}},
		"underarm":   {{X: 0.23, Y: -0.20}},
		"side waist": {{X: 0.20, Y: -0.40}}, "dart outer": {{X: 0.10, Y: -0.40}}, "apex": {{X: 0.10, Y: -0.25}},
		"dart inner": {{X: 0.10, Y: -0.40}}, "cf waist": {{Y: -0.40}},
	})
	if err != nil {
		t.Fatal(err)
	}
	b.HipWide, b.HipDeep = 0.26, 0.10
	return b
}

// The front below the waist by hand: 5 cm down the side seam is half way to the hip,
// 3 cm out and 4 cm down; 12 cm is the hip and 2 cm straight down.
func TestHemByHand(t *testing.T) {
	b := plainBlock(t)
	c := DefaultCut()
	c.Extension, c.Facing = Auto, 0
	short, err := Draft(b, c)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct {
		hem, more float64 // m, m² of half the front
		side      []r2.Vec
	}{
		// Shoelace of (0, −40) (0, −45) (23, −44) (20, −40): 97.5 cm². The hem line lies
		// (c×(v−u))/10 − (u×v)/60 off its chord, c = (−23, −1), v = (−|c|, 0) and
		// u = |c|/2·(−0.8, −0.6): 14.6 cm² below it.
		{0.05, 97.5e-4 + 14.6e-4, []r2.Vec{{X: 0.23, Y: -0.20}, {X: 0.20, Y: -0.40}, {X: 0.23, Y: -0.44}}},
		// (0, −40) (0, −52) (26, −50) (26, −48) (20, −40): 262 cm², and with
		// c = (−26, −2), u = |c|/2·(−1, 0), v = (−|c|, 0): 2.6 cm² below it.
		{0.12, 262e-4 + 2.6e-4, []r2.Vec{{X: 0.23, Y: -0.20}, {X: 0.20, Y: -0.40}, {X: 0.26, Y: -0.48}, {X: 0.26, Y: -0.50}}},
	} {
		c.Hem = q.hem
		p, err := Draft(b, c)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Side) != len(q.side) {
			t.Fatalf("hem %.2f: side seam %v, want %v", q.hem, p.Side, q.side)
		}
		for i, v := range q.side {
			if dist(p.Side[i], v) > 1e-9 {
				t.Errorf("hem %.2f: side seam at %v, want %v", q.hem, p.Side[i], v)
			}
		}
		// the curve is drawn in 16 chords
		if got, want := polyline.Area(p.Outline), polyline.Area(short.Outline)+2*q.more; math.Abs(got-want) > 0.2e-4 {
			t.Errorf("hem %.2f: area %.2f cm², want %.2f", q.hem, got*1e4, want*1e4)
		}
		cf := p.Waist[len(p.Waist)-1]
		if dist(cf, r2.Vec{Y: -0.40 - q.hem}) > 1e-9 || math.Abs(p.WaistY()+0.40) > 1e-9 ||
			math.Abs(p.SideToWaist()-short.SideToWaist()) > 1e-9 {
			t.Errorf("hem %.2f: CF ends at %v, waist at %.4f, side %.4f to the waist, want hem below the waist, −0.4 and %.4f",
				q.hem, cf, p.WaistY(), p.SideToWaist(), short.SideToWaist())
		}
		if n := len(p.WaistLine); n < 2 || dist(p.WaistLine[0], short.Waist[0]) > 1e-9 ||
			dist(p.WaistLine[n-1], short.Waist[len(short.Waist)-1]) > 1e-9 {
			t.Errorf("hem %.2f: waist line %v, want that of the front that ends there, %v", q.hem, p.WaistLine, short.Waist)
		}
	}
}

// Any body has a front with a hem: its side seam is longer by the hem, all else stays,
// the hem leaves CF and side seam square, and at hip level the front is as wide as the
// hip asks for.
func TestHemOfAnyBody(t *testing.T) {
	count := 0
	rapid.Check(t, func(t *rapid.T) {
		who := randomBody(t)
		blk, err := FromBody(who)
		if err != nil {
			t.Fatal(err)
		}
		c := DefaultCut()
		c.DartShare = rapid.SampledFrom([]float64{Auto, 0, 0.5, 1}).Draw(t, "share")
		c.Extension = Auto
		c.Facing = 0.05
		short, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		c.Hem = rapid.Float64Range(leastHem, blk.mostHem()).Draw(t, "hem")
		p, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		count++
		near(t, "side seam", polyline.Length(p.Side), polyline.Length(short.Side)+c.Hem)
		near(t, "shoulder", polyline.Length(p.Shoulder), polyline.Length(short.Shoulder))
		near(t, "armhole", polyline.Length(p.Armhole), polyline.Length(short.Armhole))
		near(t, "waist line", polyline.Length(p.WaistLine), polyline.Length(short.Waist))
		near(t, "CF to the waist", p.Report().CFLength, short.Report().CFLength)
		near(t, "dart left", p.Report().IntakeLeft, short.Report().IntakeLeft)
		if p.DartLeft != nil {
			t.Fatal("a dart is sewn across a waist without a seam")
		}
		n, m := len(p.Side), len(p.Waist)
		seam, from, to := r2.Sub(p.Side[n-1], p.Side[n-2]), r2.Sub(p.Waist[1], p.Waist[0]), r2.Sub(p.Waist[m-1], p.Waist[m-2])
		if math.Abs(r2.Cos(seam, from)) > 0.12 || math.Abs(to.Y) > 0.12*math.Abs(to.X) { // first and last chord of a curve
			t.Fatalf("the hem leaves the side seam at %.1f° and CF at %.1f°, want 90 ± 7", deg(math.Acos(r2.Cos(seam, from))),
				deg(math.Atan2(-to.X, -to.Y)))
		}
		wide := who.Hip/4 + blk.WaistLength() - who.Waist/4
		if p.Eased > 0 { // the side seam falls straight where that is wider
			wide = math.Max(wide, short.Waist[0].X)
		}
		if c.Hem >= who.WaistToHip && math.Abs(p.Side[n-1].X-wide) > 1e-9 {
			t.Fatalf("half hem at the hip %.4f from CF, want %.4f", p.Side[n-1].X, wide)
		}
	})
	if !t.Failed() && count < 200 {
		t.Errorf("drafted %d bodies, want 200", count)
	}
}

// What is not done is refused by its name, with what to do.
func TestHemRefused(t *testing.T) {
	who, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	chart, err := FromBody(who)
	if err != nil {
		t.Fatal(err)
	}
	ends := plainBlock(t)
	ends.HipDeep = 0
	wide := plainBlock(t)
	wide.HipWide = 0.30
	for _, q := range []struct {
		name string
		b    Block
		cut  func(*Cut)
		want string
	}{
		{"too short", chart, func(c *Cut) { c.Hem = 0.02 }, "hem 2.0 cm, want 3.0–23.3 cm"},
		{"too long", chart, func(c *Cut) { c.Hem = 0.30 }, "hem 30.0 cm, want 3.0–23.3 cm"},
		{"below nothing", chart, func(c *Cut) { c.Hem = -0.05 }, "hem -5.0 cm"},
		{"no hip", ends, func(c *Cut) { c.Hem = 0.10 }, "this block ends at the waist and shows no hip"},
		{"hip far off", wide, func(c *Cut) { c.Hem = 0.10 },
			"between waist and hip the side seam would run 10.0 cm sideways"},
	} {
		c := DefaultCut()
		c.Extension, c.Facing = Auto, 0
		q.cut(&c)
		if _, err := Draft(q.b, c); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("%s: Draft() = %v, want %q", q.name, err, q.want)
		}
	}
}

// Taken in at the side, the front is narrower by as much from the waist to the hem.
func TestHemTakenIn(t *testing.T) {
	c := DefaultCut()
	c.Extension, c.Facing, c.Hem = Auto, 0, 0.05
	p, err := Draft(plainBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	s := DefaultStand()
	s.TakeIn = 0.02
	q, err := p.Treated(s)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{0, 0.02, 0.02} {
		if got := dist(p.Side[i], q.Side[i]); math.Abs(got-want) > 3e-4 {
			t.Errorf("point %d of the side seam moved in by %.4f m, want %.4f", i, got, want)
		}
	}
	at, _ := polyline.Along(q.Side, q.SideToWaist())
	if got := dist(q.WaistLine[0], at); got > 1e-9 || dist(at, q.Side[1]) > 1e-6 {
		t.Errorf("the waist line begins %.4f m off the side seam, %.4f from its corner", got, dist(at, q.Side[1]))
	}
	s = DefaultStand()
	s.ReleaseWaist = 0.05
	if _, err := p.Treated(s); err == nil || !strings.Contains(err.Error(), "free there") {
		t.Errorf("Treated(release waist) = %v, want it refused: the waist is free", err)
	}
}

// The back of any front with a hem walks with it, is as wide at the hip as the back of
// the block asks for, and front and back together hold the hip with the ease of the waist.
func TestHemBackWalks(t *testing.T) {
	count := 0
	rapid.Check(t, func(t *rapid.T) {
		who := randomBody(t)
		blk, err := FromBody(who)
		if err != nil {
			t.Fatal(err)
		}
		k, err := BackFromBody(who)
		if err != nil {
			t.Skip("no back")
		}
		c := DefaultCut()
		c.Extension, c.Facing, c.DartShare = Auto, 0.05, rapid.SampledFrom([]float64{0.5, 1}).Draw(t, "share")
		c.Hem = rapid.Float64Range(leastHem, blk.mostHem()).Draw(t, "hem")
		p, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		b, err := MatchBack(k, p)
		if err != nil {
			t.Fatal(err)
		}
		count++
		for _, w := range Walked(p, b) {
			near(t, w.Name, w.Front, w.Back)
		}
		near(t, "CB below the waist", k.CBWaist.Y-b.Waist[len(b.Waist)-1].Y, c.Hem)
		near(t, "half hip less that of the body", blk.HipWide+k.HipWide-who.Hip/2, 0.03) // the ease of the half waist
		if (len(b.DartBelow) == 1) != (c.Hem >= backDartBelow*who.WaistToHip+dartClear) {
			t.Fatalf("hem %.3f: the back dart has %d lines below the waist, want 1 if it ends above the hem, else 2", c.Hem,
				len(b.DartBelow))
		}
		for _, line := range b.DartBelow {
			if end := line[len(line)-1]; len(b.DartBelow) == 2 && !onLineOf(b.Waist, end) {
				t.Fatalf("hem %.3f: a leg of the back dart ends at %v, off the hem", c.Hem, end)
			}
		}
	})
	if !t.Failed() && count < 150 {
		t.Errorf("walked %d pairs, want 150 or more", count)
	}
}

// onLineOf reports whether v lies on a line.
func onLineOf(line []r2.Vec, v r2.Vec) bool { _, off := foot(line, v); return off < 1e-9 }
