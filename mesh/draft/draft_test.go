package draft

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

func ExampleDraft() {
	b, _ := body.FromChart(10)
	block, _ := FromBody(b)
	piece, err := Draft(block, DefaultCut())
	if err != nil {
		fmt.Println(err)
		return
	}
	r := piece.Report()
	fmt.Printf("half edge %.1f cm, %.0f %% of the dart closed, edge hangs %.0f–%.0f cm\n",
		r.HalfEdge*100, r.DartShare*100, r.DropChain*100, r.DropV*100)
	// Output: half edge 18.5 cm, 70 % of the dart closed, edge hangs 14–15 cm
}

// randomBody draws a body between two sizes of the chart with each
// measurement up to 3 % off.
func randomBody(t *rapid.T) body.Body {
	sizes := body.Sizes()
	i := rapid.IntRange(0, len(sizes)-2).Draw(t, "size")
	lo, err := body.FromChart(sizes[i])
	if err != nil {
		t.Fatal(err)
	}
	hi, err := body.FromChart(sizes[i+1])
	if err != nil {
		t.Fatal(err)
	}
	share := rapid.Float64Range(0, 1).Draw(t, "between")
	mix := func(name string, a, b float64) float64 {
		return (a + share*(b-a)) * rapid.Float64Range(0.97, 1.03).Draw(t, name)
	}
	b := body.Body{
		Bust: mix("bust", lo.Bust, hi.Bust), Waist: mix("waist", lo.Waist, hi.Waist), Hip: mix("hip", lo.Hip, hi.Hip),
		BackWidth: mix("back", lo.BackWidth, hi.BackWidth), AcrossFront: mix("front", lo.AcrossFront, hi.AcrossFront),
		Shoulder: mix("shoulder", lo.Shoulder, hi.Shoulder), Neck: mix("neck", lo.Neck, hi.Neck),
		BustDart: mix("dart", lo.BustDart, hi.BustDart), ArmscyeDepth: mix("armscye", lo.ArmscyeDepth, hi.ArmscyeDepth),
		NapeToWaist: mix("nape", lo.NapeToWaist, hi.NapeToWaist), WaistToHip: mix("waist to hip", lo.WaistToHip,
			hi.WaistToHip),
	}
	if rapid.Bool().Draw(t, "measured") {
		b.BustSpan, b.ApexDepth = mix("span", lo.BustSpan, hi.BustSpan), mix("apex", lo.ApexDepth, hi.ApexDepth)
		b.ShoulderSlope = rapid.Float64Range(15, 26).Draw(t, "slope") * math.Pi / 180
	}
	return b
}

// near fails unless got is want to a micrometre.
func near(t *rapid.T, what string, got, want float64) {
	if !(math.Abs(got-want) <= 1e-6) {
		t.Fatalf("%s = %.7f, want %.7f", what, got, want)
	}
}

func TestDraftKeepsSeams(t *testing.T) {
	count := 0
	rapid.Check(t, func(t *rapid.T) {
		count++
		blk, err := FromBody(randomBody(t))
		if err != nil {
			t.Fatal(err)
		}
		c := DefaultCut()
		c.How = How(rapid.IntRange(0, 2).Draw(t, "how"))
		c.Slashes = rapid.IntRange(1, 4).Draw(t, "slashes")
		c.CowlPoint = rapid.Float64Range(0.01, 0.06).Draw(t, "cowl point")
		c.DartShare = rapid.SampledFrom([]float64{Auto, 0, 0.4, 1}).Draw(t, "share")
		c.Facing = rapid.SampledFrom([]float64{0, 0.01, 0.04, 0.07}).Draw(t, "facing")
		c.Extension = Auto
		natural, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		c.Extension = natural.Extension + rapid.Float64Range(0, 0.015).Draw(t, "more")
		p, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		checkSeams(t, blk, c, p)
		checkFacing(t, p)
		checkHalves(t, p)
	})
	if !t.Failed() && count < 200 {
		t.Errorf("drafted %d bodies, want 200", count)
	}
}

func checkSeams(t *rapid.T, b Block, c Cut, p Cowl) {
	r := p.Report()
	near(t, "extension", p.HalfEdge-b.CowlPoint(c.CowlPoint).X, c.Extension)
	near(t, "report extension", r.FromDart+r.FromOther, c.Extension)
	near(t, "shoulder", r.Shoulder, b.ShoulderLength()-c.CowlPoint)
	near(t, "armhole", r.Armhole, b.ArmholeLength())
	near(t, "side", r.Side, b.SideLength())
	waist := b.WaistLength() + r.IntakeLeft
	if c.How == Shift {
		waist += p.Added.Amount
	}
	near(t, "waist", r.Waist, waist)
	inner, outer := b.DartLegs()
	near(t, "dart legs", inner, outer)
	if p.DartLeft != nil {
		near(t, "outer leg left open", dist(p.DartLeft[0], p.DartLeft[1]), outer)
		near(t, "inner leg left open", dist(p.DartLeft[2], p.DartLeft[1]), inner)
	}
	if r.SurplusCF < -1e-9 && c.How != Pivot {
		t.Fatalf("surplus of CF %.4f, want none below 0", r.SurplusCF)
	}
}

// checkFacing holds the facing against the shoulder seam, mirrored.
func checkFacing(t *rapid.T, p Cowl) {
	a := p.Shoulder[0]
	near(t, "edge, height at CF", a.Y, p.FoldY)
	near(t, "edge, length", a.X, p.HalfEdge)
	for _, v := range p.FacingEnd {
		folded := r2.Vec{X: v.X, Y: 2*p.FoldY - v.Y}
		off := math.Inf(1)
		for i := 1; i < len(p.Shoulder); i++ {
			u, w := p.Shoulder[i-1], p.Shoulder[i]
			s := r2.Dot(r2.Sub(folded, u), r2.Sub(w, u)) / r2.Norm2(r2.Sub(w, u))
			off = min(off, dist(folded, lerp(u, w, min(max(s, 0), 1))))
		}
		near(t, "facing end off the shoulder seam", off, 0)
	}
	near(t, "facing depth on CF", p.FacingEdge[len(p.FacingEdge)-1].Y-p.FoldY, p.Facing)
}

// checkHalves measures the outline by a way of its own: trapezia to the X axis.
func checkHalves(t *rapid.T, p Cowl) {
	n := len(p.Outline)
	var area float64
	for i, v := range p.Outline {
		w := p.Outline[(i+1)%n]
		area += (v.X - w.X) * (v.Y + w.Y) / 2
		near(t, "mirror image", nearest(p.Outline, mirrored(v)), 0)
	}
	r := p.Report()
	near(t, "area", r.AreaFront+r.AreaFacing, area)
	if _, _, ok := Crossing(p.CutLine); ok {
		t.Fatalf("the cut line crosses itself")
	}
	if cut := polyline.Area(p.CutLine); cut < area+p.Trim*polyline.Length(p.Outline)*0.9 {
		t.Fatalf("cut line encloses %.4f m², want more than the outline's %.4f with its allowance", cut, area)
	}
}

// Each way of adding cloth reaches what is asked of it.
func TestExtensionAsked(t *testing.T) {
	b := workedBlock(t)
	count := 0
	for _, q := range []struct {
		how   How
		share float64
		most  int // cm
	}{
		{Pivot, Auto, 30}, {Shift, Auto, 30}, {Slash, Auto, 15}, {Pivot, 0, 25}, {Shift, 0, 25}, {Slash, 0, 4},
		{Pivot, 0.5, 25}, {Slash, 0.5, 10},
	} {
		for cm := 0; cm <= q.most; cm++ {
			c := DefaultCut()
			c.How, c.DartShare, c.Extension, c.Facing = q.how, q.share, float64(cm)/100, 0.05
			p, err := Draft(b, c)
			if q.share == 0.5 && cm < 6 { // half the dart gives 5.8 cm
				if err == nil {
					t.Errorf("Draft(%v, half the dart, %d cm) = nil error, want one", q.how, cm)
				}
				continue
			}
			if err != nil {
				t.Errorf("Draft(%v, share %g, %d cm): %v", q.how, q.share, cm, err)
				continue
			}
			count++
			if d := math.Abs(p.Extension*100 - float64(cm)); d > 1e-4 {
				t.Errorf("Draft(%v, share %g, %d cm): extension is %.5f cm off", q.how, q.share, cm, d)
			}
		}
	}
	if count < 140 {
		t.Errorf("drafted %d pieces, want at least 140", count)
	}
}

// A pivot of 3° adds about 2 cm to the edge and drops the side waist by about
// 1 cm; a shift of 4 cm adds 4 cm to the edge and 8 cm to the full waist
// (worked out apart from this program for the worked block, whole dart closed).
func TestPivotAndShiftFigures(t *testing.T) {
	f := newFront(workedBlock(t), 0.04).closed(workedBlock(t).DartAngle())
	g := f.pivoted(3 * math.Pi / 180)
	if d := g.edge().X - f.edge().X; math.Abs(d-0.02) > 0.001 {
		t.Errorf("pivot by 3°: edge + %.2f cm, want 2.0", d*100)
	}
	if d := f.side.Y - g.side.Y; math.Abs(d-0.01) > 0.001 {
		t.Errorf("pivot by 3°: side waist drops %.2f cm, want 1.0", d*100)
	}
	s := f.shiftedBy(0.04)
	if d := 2 * (polyline.Length(s.waist()) - polyline.Length(f.waist())); math.Abs(d-0.08) > 1e-9 {
		t.Errorf("shift by 4 cm: full waist + %.2f cm, want 8", d*100)
	}
}

// Slashes open by equal gaps on CF and lengthen it by about their sum.
func TestSlashGaps(t *testing.T) {
	f := newFront(workedBlock(t), 0.04)
	for n := 1; n <= MostSlashes; n++ {
		const gap = 0.03
		for i, s := range f.slashes(n) {
			if chord := 2 * s.long * math.Sin(opening(s, gap)/2); math.Abs(chord-gap) > 1e-12 {
				t.Errorf("slash %d of %d opens by %.4f m, want %g", i+1, n, chord, gap)
			}
		}
		g := f.spread(n, gap)
		if dist(g.armhole[0], g.shoulder[len(g.shoulder)-1]) > 1e-12 {
			t.Errorf("%d slashes: the shoulder tip has moved", n)
		}
		if l := polyline.Length(g.shoulder); math.Abs(l-polyline.Length(f.shoulder)) > 1e-9 {
			t.Errorf("%d slashes: shoulder %.5f m, want %.5f", n, l, polyline.Length(f.shoulder))
		}
	}
}

func TestDraftErrors(t *testing.T) {
	for _, q := range []struct {
		name   string
		change func(*Cut)
		want   []string
	}{
		{"share", func(c *Cut) { c.DartShare = 1.2 }, []string{"dart share 1.2", "0.0–1.0"}},
		{"share NaN", func(c *Cut) { c.DartShare = math.NaN() }, []string{"dart share NaN"}},
		{"extension NaN", func(c *Cut) { c.Extension = math.NaN() }, []string{"extension NaN"}},
		{"extension Inf", func(c *Cut) { c.Extension = math.Inf(1) }, []string{"extension +Inf"}},
		{"cowl point", func(c *Cut) { c.CowlPoint = 0.11 }, []string{"cowl point 11.0 cm", "0.0–9.2 cm", "shoulder"}},
		{"facing", func(c *Cut) { c.Facing = -0.01 }, []string{"facing -1.0 cm", "1.0–30.0 cm"}},
		{"facing too deep", func(c *Cut) { c.Extension, c.Facing = 0.28, 0.25 },
			[]string{"facing 25.0 cm", "want 0–", "shallower"}},
		{"grain", func(c *Cut) { c.Grain = 2 }, []string{"grain 114.6°", "-90.0–90.0°"}},
		{"trim", func(c *Cut) { c.Trim = 0.11 }, []string{"allowance 11.0 cm", "0.0–10.0 cm"}},
		{"trim NaN", func(c *Cut) { c.Trim = math.NaN() }, []string{"allowance NaN"}},
		{"slashes", func(c *Cut) { c.How, c.Slashes = Slash, 0 }, []string{"slashes 0,", "1–6"}},
		{"how", func(c *Cut) { c.How = 7 }, []string{"How(7)", "pivot, shift or slash"}},
		{"too little", func(c *Cut) { c.DartShare, c.Extension = 1, 0.05 }, []string{"extension 5.0 cm, want 11.2–",
			"close less of the dart"}},
		{"too much", func(c *Cut) { c.How, c.Extension = Slash, 0.3 }, []string{"extension 30.0 cm, want 0.0–15", "pivot"}},
		{"two", func(c *Cut) { c.Trim, c.Grain = 1, 3 }, []string{"allowance 100.0 cm", "grain 171.9°"}},
	} {
		c := DefaultCut()
		q.change(&c)
		_, err := Draft(workedBlock(t), c)
		if err == nil {
			t.Errorf("%s: Draft = nil error, want one", q.name)
			continue
		}
		for _, part := range q.want {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: Draft error %q, want it to say %q", q.name, err, part)
			}
		}
	}
}
