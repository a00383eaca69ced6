package truing

import (
	"math"
	"strings"
	"sync"
	"testing"

	"cowl/mesh"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/lattice"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// stand is the form of the chart's size 10, built once.
var stand = sync.OnceValues(func() (*form.Form, error) {
	b, err := body.FromChart(10)
	if err != nil {
		return nil, err
	}
	return form.FromBody(b)
})

// front is the draft of the chart's size 10, a back cowl if the cut is changed to one, and
// the block of its plain piece.
func front(t *testing.T, change func(*draft.Cut)) (draft.Cowl, draft.BackBlock) {
	t.Helper()
	b, err := body.FromChart(10)
	if err != nil {
		t.Fatal(err)
	}
	c := draft.DefaultCut()
	change(&c)
	block, err := draft.CowlFromBody(b, c.Worn)
	if err != nil {
		t.Fatal(err)
	}
	p, err := draft.Draft(block, c)
	if err != nil {
		t.Fatal(err)
	}
	k, err := draft.PlainFromBody(b, c.Worn)
	if err != nil {
		t.Fatal(err)
	}
	return p, k
}

// rolled lays a flat place on a cylinder of 30 cm radius, whose axis lies 20°
// off the upright: an isometry, so flat distances are lengths on the cloth.
func rolled(v r2.Vec) r3.Vec {
	const radius, lean = 0.30, 20 * math.Pi / 180
	sin, cos := math.Sincos(lean)
	x, y := v.X*cos-v.Y*sin, v.X*sin+v.Y*cos
	s, c := math.Sincos(x / radius)
	return r3.Vec{X: radius * s, Y: y, Z: radius * c}
}

// sheetOf lays the piece on the cylinder.
func sheetOf(t *testing.T, p draft.Cowl) mesh.Sheet {
	t.Helper()
	l, err := lattice.Cut(p.Outline, lattice.Options{Spacing: 0.008, Grain: p.Grain, Origin: r2.Vec{Y: p.FoldY}})
	if err != nil {
		t.Fatal(err)
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = rolled(q)
	}
	return l.Skin().Sheet(pos, p.FoldY)
}

// pinned sets pins every few centimetres along the seams, each moved by off in
// the flat.
func pinned(p draft.Cowl, off func(seam string, t, side float64) r2.Vec) []Pin {
	var pins []Pin
	for _, s := range []struct {
		seam string
		line []r2.Vec
		n    int
	}{{"shoulder", p.Shoulder, 8}, {"side", p.Side, 5}, {"waist", p.Waist, 5}} {
		for k := 0; k <= s.n; k++ {
			t := float64(k) / float64(s.n)
			v, _ := along(s.line, t)
			for _, side := range []float64{1, -1} {
				at := r2.Add(v, off(s.seam, t, side))
				pins = append(pins, Pin{s.seam, fold(v, side), rolled(fold(at, side))})
			}
		}
	}
	return pins
}

// Pins on the seam give the draft back, but for the rounded corner of the
// waist; of all cuts, to 1.5 mm at every point of every seam and to 0.2 mm on
// all but the waist.
func TestTrueGivesDraftBack(t *testing.T) {
	f, err := stand()
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, change := range []func(*draft.Cut){
		func(c *draft.Cut) {},
		func(c *draft.Cut) { c.Facing = 0 },
		func(c *draft.Cut) { c.Grain = 0.3 },
		func(c *draft.Cut) { c.DartShare, c.Extension = 0.4, draft.Auto },
		func(c *draft.Cut) { c.How, c.Extension = draft.Slash, 0.14 },
		func(c *draft.Cut) { c.How, c.Extension = draft.Shift, 0.14 },
	} {
		p, _ := front(t, change)
		got, err := True(sheetOf(t, p), f, p, pinned(p, func(string, float64, float64) r2.Vec { return r2.Vec{} }), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range got.Seams {
			count++
			limit := 0.0002
			if s.Name == "waist" {
				limit = 0.0015
			}
			if s.Moved > limit || s.LeftRight > limit {
				t.Errorf("%v, extension %.2f: %s moved %.2f mm, left and right differ by %.2f mm, want %.1f mm at most",
					p.How, p.Extension, s.Name, s.Moved*1000, s.LeftRight*1000, limit*1000)
			}
		}
		for _, v := range p.Outline {
			if d := math.Abs(inwardClosed(got.Cowl.Outline, v)); d > 0.0015 {
				t.Errorf("outline at (%.3f, %.3f) moved %.2f mm, want 1.5 mm at most", v.X, v.Y, d*1000)
			}
		}
	}
	if count != 24 {
		t.Errorf("looked at %d seams, want 24", count)
	}
}

// inwardClosed is how far v lies off a closed line.
func inwardClosed(line []r2.Vec, v r2.Vec) float64 {
	closed := append(append([]r2.Vec(nil), line...), line[0])
	at, _ := along(closed, share(closed, v))
	return r2.Norm(r2.Sub(at, v))
}

// Pins that stand 6 mm out at the side waist of the left half, in proportion
// down the seam: averaged the seam moves by half, left by all, right by none.
func TestTrueHalves(t *testing.T) {
	f, err := stand()
	if err != nil {
		t.Fatal(err)
	}
	p, _ := front(t, func(*draft.Cut) {})
	d := r2.Unit(r2.Sub(p.Side[1], p.Side[0]))
	out := r2.Scale(0.006, r2.Vec{X: -d.Y, Y: d.X})
	pins := pinned(p, func(seam string, s, side float64) r2.Vec {
		if side < 0 || seam == "shoulder" {
			return r2.Vec{}
		}
		if seam == "waist" {
			s = 1 - s
		}
		return r2.Scale(s, out)
	})
	sheet := sheetOf(t, p)
	for _, q := range []struct {
		half Half
		want float64 // m, how far the side waist moves
	}{{Both, 0.003}, {Left, 0.006}, {Right, 0}} {
		got, err := True(sheet, f, p, pins, Options{Half: q.half})
		if err != nil {
			t.Fatal(err)
		}
		if moved := r2.Norm(r2.Sub(got.Cowl.Side[1], p.Side[1])); math.Abs(moved-q.want) > 0.0003 {
			t.Errorf("half %d: the side waist moved %.2f mm, want %.2f mm", q.half, moved*1000, q.want*1000)
		}
		if s := got.Seams[2]; math.Abs(s.LeftRight-0.006) > 0.0003 {
			t.Errorf("half %d: %s differs by %.2f mm left and right, want 6 mm", q.half, s.Name, s.LeftRight*1000)
		}
	}
}

// Shoulder pins 5 mm further from CF and 4 mm lower: the edge comes out 5 mm
// longer, square, and the facing is its mirror.
func TestTrueSquaresEdge(t *testing.T) {
	f, err := stand()
	if err != nil {
		t.Fatal(err)
	}
	p, _ := front(t, func(*draft.Cut) {})
	got, err := True(sheetOf(t, p), f, p, pinned(p, func(seam string, s, side float64) r2.Vec {
		if seam == "shoulder" {
			return r2.Vec{X: 0.005, Y: -0.004}
		}
		return r2.Vec{}
	}), Options{})
	if err != nil {
		t.Fatal(err)
	}
	q := got.Cowl
	if math.Abs(q.HalfEdge-p.HalfEdge-0.005) > 0.0003 || math.Abs(q.FoldY-p.FoldY+0.004) > 0.0003 {
		t.Errorf("edge %.2f mm longer and %.2f mm up, want 5 and −4 mm", (q.HalfEdge-p.HalfEdge)*1000, (q.FoldY-p.FoldY)*1000)
	}
	for i, v := range q.FacingEnd {
		mirror := r2.Vec{X: v.X, Y: 2*q.FoldY - v.Y}
		if d := math.Abs(inward(q.Shoulder, mirror)); d > 1e-9 {
			t.Errorf("facing end %d lies %.3g m off the mirror of the shoulder", i, d)
		}
	}
}

// Shoulder pins that stand further out down the seam, waist and side pins 4 mm
// lower: the legs of the pleats stay corners of the seam, so that it folds to
// the sum of what lies between them; slashes go down with the waist and keep
// their length; what is sewn on stays.
func TestTrueKeepsTreatments(t *testing.T) {
	f, err := stand()
	if err != nil {
		t.Fatal(err)
	}
	p, _ := front(t, func(c *draft.Cut) { c.Pleats = 2 })
	s := draft.DefaultStand()
	s.ReleaseWaist, s.Weight, s.StayShoulder = 0.06, 0.010, true
	if p, err = p.Treated(s); err != nil {
		t.Fatal(err)
	}
	got, err := True(sheetOf(t, p), f, p, pinned(p, func(seam string, s, side float64) r2.Vec {
		if seam == "shoulder" {
			return r2.Vec{X: 0.010 * s}
		}
		return r2.Vec{Y: -0.004}
	}), Options{})
	if err != nil {
		t.Fatal(err)
	}
	q := got.Cowl
	if len(q.Shoulder) != 6 {
		t.Fatalf("the shoulder has %d points, want its ends and four legs", len(q.Shoulder))
	}
	for k, c := range []int{1, 3} {
		a, b := q.Legs(k)
		for i, leg := range []float64{a, b} {
			if at, _ := along(q.Shoulder, leg/polyline.Length(q.Shoulder)); r2.Norm(r2.Sub(at, q.Shoulder[c+i])) > 1e-9 {
				t.Errorf("pleat %d: leg at %v, want the corner %v", k+1, at, q.Shoulder[c+i])
			}
		}
	}
	if folded := polyline.Length(q.Shoulder[:2]) + polyline.Length(q.Shoulder[2:4]) +
		polyline.Length(q.Shoulder[4:]); math.Abs(q.ShoulderLength()-folded) > 1e-9 ||
		q.ShoulderLength() < p.ShoulderLength()+0.002 {
		t.Errorf("shoulder folded %.2f mm, want %.2f mm, longer than the %.2f mm of the draft", q.ShoulderLength()*1000,
			folded*1000, p.ShoulderLength()*1000)
	}
	if len(q.Releases) != 2 || q.Weight != 0.010 || !q.StayShoulder {
		t.Fatalf("%d slashes, weight %g kg, shoulder stayed: %t, want two, 0.01 kg and true", len(q.Releases), q.Weight,
			q.StayShoulder)
	}
	for k, r := range q.Releases {
		off := math.Abs(inward(q.Waist, fold(r.From, float64(1-2*k))))
		if down := p.Releases[k].From.Y - r.From.Y; off > 1e-9 || math.Abs(down-0.004) > 0.0005 ||
			math.Abs(r2.Norm(r2.Sub(r.To, r.From))-0.06) > 1e-9 {
			t.Errorf("slash %d begins %.3g mm off the waist, %.2f mm lower, and is %.1f mm long, want 0, 4 and 60 mm", k,
				off*1000, down*1000, r2.Norm(r2.Sub(r.To, r.From))*1000)
		}
	}
}

func TestTrueRefuses(t *testing.T) {
	f, err := stand()
	if err != nil {
		t.Fatal(err)
	}
	p, _ := front(t, func(*draft.Cut) {})
	far := pinned(p, func(seam string, s, side float64) r2.Vec { return r2.Vec{} })
	for i := range far {
		if far[i].Seam == "side" {
			far[i].At.Z += 0.3
		}
	}
	if _, err := True(sheetOf(t, p), f, p, far, Options{}); err == nil || !strings.Contains(err.Error(), "side seam") {
		t.Errorf("True with pins off the cloth: error %v, want one that names the side seam", err)
	}
}

// A corner of 12° rounded over 2 cm is cut by half the height of the triangle:
// 20 mm·sin 6°/2 = 1.05 mm.
func TestRounded(t *testing.T) {
	sin, cos := math.Sincos(12 * math.Pi / 180)
	corner := r2.Vec{X: 0.1}
	line := rounded([]r2.Vec{{}, corner, r2.Add(corner, r2.Vec{X: 0.1 * cos, Y: 0.1 * sin})})
	if d := math.Abs(inward(line, corner)); math.Abs(d-0.00105) > 0.00002 {
		t.Errorf("rounded: the corner is cut by %.3f mm, want 1.05 mm", d*1000)
	}
	if again := rounded(line); len(again) != len(line) {
		t.Errorf("rounded twice: %d points, want %d", len(again), len(line))
	}
}

// A waist that is pinned at the side seams alone has no marks: it follows the side
// seam and stays what it was on CF.
func TestTrueWaistHangsFree(t *testing.T) {
	f, err := stand()
	if err != nil {
		t.Fatal(err)
	}
	p, _ := front(t, func(c *draft.Cut) {})
	step := r2.Vec{X: 0.004}
	var pins []Pin
	for _, q := range pinned(p, func(seam string, _, _ float64) r2.Vec {
		if seam == "side" {
			return step
		}
		return r2.Vec{}
	}) {
		if q.Seam != "waist" {
			pins = append(pins, q)
		}
	}
	got, err := True(sheetOf(t, p), f, p, pins, Options{})
	if err != nil {
		t.Fatal(err)
	}
	was, is := p.Waist, got.Cowl.Waist
	if d := r2.Norm(r2.Sub(is[0], r2.Add(was[0], step))); d > 2e-4 {
		t.Errorf("the waist begins %.2f mm from the end of the side seam, want 0.2 mm at most", 1000*d)
	}
	if d := r2.Norm(r2.Sub(is[len(is)-1], was[len(was)-1])); d > 1e-9 {
		t.Errorf("on CF the waist moved %.3f mm, want none", 1000*d)
	}
	if s := got.Seams[3]; s.Name != "waist" || s.Marks != 0 {
		t.Errorf("%s has %d marks, want none on the waist", s.Name, s.Marks)
	}
}
