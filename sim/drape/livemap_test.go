package drape

import (
	"math"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// recut returns the job with another cut of its piece.
func recut(t testing.TB, j Job, change func(*draft.Cut)) Job {
	t.Helper()
	c := draft.DefaultCut()
	c.Extension = 0.11
	change(&c)
	p, err := draft.Draft(size10().block, c)
	if err != nil {
		t.Fatal(err)
	}
	j.Cowl = p
	return j
}

// Mean value coordinates have linear precision: they map an affine image of
// the outline by that affine map, inside, outside and on the line.
func TestMeanValuesKeepAffine(t *testing.T) {
	affine := func(p r2.Vec) r2.Vec { return r2.Vec{X: 1.2*p.X + 0.3*p.Y - 0.1, Y: -0.2*p.X + 0.9*p.Y + 0.4} }
	o := outlines{from: frontHalf(job(t, 0.11, 0.02, limp).Cowl)}
	for _, p := range o.from {
		o.to = append(o.to, affine(p))
	}
	top := o.from[len(o.from)-1]
	for _, q := range []r2.Vec{{X: 0.05, Y: top.Y - 0.1}, {X: 0.1, Y: top.Y - 0.3}, {X: 0, Y: top.Y - 0.05},
		{X: 0.07, Y: top.Y}, top, {X: 0.02, Y: top.Y + 0.01}} {
		if got, want := o.at(q), affine(q); r2.Norm(r2.Sub(got, want)) > 1e-9 {
			t.Errorf("at(%v) = %v, want %v", q, got, want)
		}
	}
}

// Edge stays edge, seams stay seams at the same share of their length, CF
// stays CF, left and right are mirrors, and the same piece maps to itself.
func TestMatchKeepsLines(t *testing.T) {
	j := job(t, 0.11, 0.02, limp)
	a := j.Cowl
	b := recut(t, j, func(c *draft.Cut) { c.Extension, c.CowlPoint, c.Facing = 0.05, 0.06, 0.07 }).Cowl
	m, ok := matched(a, b)
	if !ok {
		t.Fatal("two pieces with facings do not match")
	}
	self, _ := matched(a, a)
	check := func(what string, q, want r2.Vec) {
		t.Helper()
		for _, side := range [2]float64{1, -1} {
			if got := m.at(sided(q, side)); r2.Norm(r2.Sub(got, sided(want, side))) > 1e-6 {
				t.Errorf("%s: at(%v) = %v, want %v", what, sided(q, side), got, sided(want, side))
			}
		}
		if got := self.at(q); r2.Norm(r2.Sub(got, q)) > 1e-6 {
			t.Errorf("%s: at(%v) of the piece itself = %v", what, q, got)
		}
	}
	for _, s := range []float64{0, 0.25, 0.5, 0.75, 1} {
		check("edge", r2.Vec{X: s * a.HalfEdge, Y: a.FoldY}, r2.Vec{X: s * b.HalfEdge, Y: b.FoldY})
		check("side", along(a.Side, s*polyline.Length(a.Side)), along(b.Side, s*polyline.Length(b.Side)))
		check("shoulder", along(a.Shoulder, s*polyline.Length(a.Shoulder)), along(b.Shoulder, s*polyline.Length(b.Shoulder)))
		wa, wb := a.Waist[len(a.Waist)-1].Y, b.Waist[len(b.Waist)-1].Y
		check("CF", r2.Vec{Y: wa + s*(a.FoldY-wa)}, r2.Vec{Y: wb + s*(b.FoldY-wb)})
	}
	for _, q := range []r2.Vec{{X: 0.03, Y: a.FoldY - 0.1}, {X: 0.05, Y: a.FoldY + 0.05}} {
		if got := self.at(q); r2.Norm(r2.Sub(got, q)) > 1e-9 {
			t.Errorf("at(%v) of the piece itself = %v", q, got)
		}
	}
	if _, ok := matched(a, recut(t, j, func(c *draft.Cut) { c.Facing = 0 }).Cowl); ok {
		t.Error("a piece with and one without facing match, want no match")
	}
}

// A flat piece carried to another cut lies flat again where the other cut has
// it, and stays within the bounds of what may be taken over.
func TestCarryFlat(t *testing.T) {
	j := job(t, 0.11, 0.02, limp)
	d, err := j.onLattice(0.02)
	if err != nil {
		t.Fatal(err)
	}
	cases := 0
	for name, change := range map[string]func(*draft.Cut){
		"extension": func(c *draft.Cut) { c.Extension = 0.12 },
		"grain":     func(c *draft.Cut) { c.Grain = 0 },
		"facing":    func(c *draft.Cut) { c.Facing = 0.11 },
		"dart":      func(c *draft.Cut) { c.DartShare = 0.2 },
	} {
		f, err := d.carry(recut(t, j, change))
		if err != nil || f == nil {
			t.Errorf("%s: carry = %v, %v, want a drape", name, f, err)
			continue
		}
		cases++
		m, _ := matched(f.Job.Cowl, j.Cowl)
		for i, q := range f.Lattice.Rest {
			if back := q.Y - f.Job.Cowl.FoldY; math.Abs(back) < 0.03 {
				continue // the roll of the fold is no plane
			}
			at := m.at(q)
			want := j.start(at)
			if p := f.State.Pos[i]; math.Abs(p.X-want.X) > 1e-3 || math.Abs(p.Y-want.Y) > 1e-3 {
				t.Errorf("%s: place %v lies at %v, want %v", name, q, p, want)
				break
			}
		}
	}
	if cases == 0 {
		t.Error("no case carried")
	}
	if f, err := d.carry(recut(t, j, func(c *draft.Cut) { c.Facing = 0 })); f != nil || err != nil {
		t.Errorf("carry to a piece without facing = %v, %v, want none and no error", f, err)
	}
}
