package truing

import (
	"math"
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// seam is one seam of the half front while it is being marked.
type seam struct {
	name    string
	pins    []string // names of its pins
	pinned  bool     // whether a seam without marks is an error
	line    []r2.Vec // m, as drafted, on the wearer's left half
	onForm  func(side, t float64) r3.Vec
	nowhere bool                 // the form has no such seam
	under   func(t float64) bool // cloth inside a pleat, where no pencil reaches; nil: nowhere
	marks   []mark
	misfit  Misfit
}

// mark is a place of the seam found on the cloth, folded to the left half.
type mark struct {
	t    float64 // 0..1 along the seam
	side float64 // 1 from the wearer's left half, −1 from the right
	at   r2.Vec  // m
}

// seamsOf lists the seams of the draft with their places on the form.
func seamsOf(l draft.Lines, f *form.Form, p draft.Cowl, pins []Pin) []seam {
	armhole, side := newArc(f.Armhole(1)), sideLength(f)
	return []seam{
		{name: "shoulder", pins: []string{"cowl point", "shoulder"}, pinned: true, line: l.Shoulder,
			onForm: func(s, t float64) r3.Vec {
				at, _ := p.Folded(t * polyline.Length(l.Shoulder))
				return f.ShoulderPoint(s, p.CowlPoint+at)
			},
			under: func(t float64) bool { _, k := p.Folded(t * polyline.Length(l.Shoulder)); return k >= 0 }},
		{name: "armhole", line: l.Armhole,
			onForm: func(s, t float64) r3.Vec { q := armhole.at(t); return r3.Vec{X: s * q.X, Y: q.Y, Z: q.Z} }},
		{name: "side seam", pins: []string{"side"}, pinned: true, line: l.Side,
			onForm: func(s, t float64) r3.Vec { return f.SidePoint(s, sideDown(p, side, t*polyline.Length(l.Side))) }},
		// pinned at the side seams alone it hangs free
		{name: p.LowerEdge(), pins: []string{"waist", "dart"}, pinned: slices.ContainsFunc(pins,
			func(q Pin) bool { return q.Seam == "waist" }), line: l.Waist,
			onForm: func(s, t float64) r3.Vec { return f.WaistPoint(s, 1-t) }, nowhere: p.Hem > 0},
	}
}

// sideDown returns how far down the form's side seam, of length waist (m) to the waist,
// the place s down that of the front lies: below the waist at its own length.
func sideDown(p draft.Cowl, waist, s float64) float64 {
	w := p.SideToWaist()
	if s > w {
		return waist + s - w
	}
	return s / w * waist
}

// sideLength is the arc from underarm to waist along the form's side seam, m.
func sideLength(f *form.Form) float64 {
	lo, hi := 0.0, 0.5
	for range 40 {
		if m := (lo + hi) / 2; f.SidePoint(1, m).Y > 0 {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

// pinMarks carries the pins of the seam back.
func (m *seam) pinMarks(c carrier, pins []Pin) []mark {
	var out []mark
	for _, p := range pins {
		if !m.has(p.Seam) {
			continue
		}
		q, ok := c.mark(p.At)
		if !ok {
			continue
		}
		for _, side := range sidesOf(p.Flat) {
			t := share(m.line, fold(p.Flat, side))
			out = append(out, mark{t, side, fold(q, side)})
		}
	}
	return out
}

// has reports whether pins of that name hold the seam.
func (m *seam) has(name string) bool {
	for _, n := range m.pins {
		if n == name {
			return true
		}
	}
	return false
}

// sidesOf says of which halves a place is; a place on CF is of both.
func sidesOf(v r2.Vec) []float64 {
	const onCF = 1e-6
	switch {
	case v.X > onCF:
		return []float64{1}
	case v.X < -onCF:
		return []float64{-1}
	}
	return []float64{1, -1}
}

// fold lays the wearer's right half (side −1) on the left.
func fold(v r2.Vec, side float64) r2.Vec { return r2.Vec{X: side * v.X, Y: v.Y} }

// places is how many places of a form's seam are looked at on each half.
const places = 40

// formMarks carries the seam of the form back.
func (m *seam) formMarks(c carrier) []mark {
	var out []mark
	if m.nowhere {
		return nil
	}
	for _, side := range []float64{1, -1} {
		for k := 0; k <= places; k++ {
			t := float64(k) / places
			if m.under != nil && m.under(t) {
				continue
			}
			if q, ok := c.mark(m.onForm(side, t)); ok {
				out = append(out, mark{t, side, fold(q, side)})
			}
		}
	}
	return out
}

// fit measures where the seam of the form lies on the cloth.
func (m *seam) fit(c carrier) Misfit {
	f := Misfit{Of: 2 * (places + 1), Least: math.Inf(1), Most: math.Inf(-1)}
	for _, k := range m.formMarks(c) {
		d := inward(m.line, k.at)
		f.Places++
		f.Mean += d
		f.Least, f.Most = math.Min(f.Least, d), math.Max(f.Most, d)
	}
	if f.Places == 0 {
		return Misfit{Of: f.Of}
	}
	f.Mean /= float64(f.Places)
	return f
}

// report compares the trued line with the draft and the marks.
func (m *seam) report(line []r2.Vec, h Half) Seam {
	s := Seam{
		Name: m.name, Draft: polyline.Length(m.line), Length: polyline.Length(line), Marks: len(m.marks),
		LeftRight: leftRight(m.marks), Misfit: m.misfit,
	}
	for k := 0; k <= places; k++ {
		at, _ := along(m.line, float64(k)/places)
		s.Moved = math.Max(s.Moved, math.Abs(inward(line, at)))
	}
	for _, ends := range [][2]r2.Vec{{m.line[0], line[0]}, {m.line[len(m.line)-1], line[len(line)-1]}} {
		s.Moved = math.Max(s.Moved, r2.Norm(r2.Sub(ends[0], ends[1])))
	}
	for _, k := range m.marks {
		if h.takes(k.side) {
			s.Scatter = math.Max(s.Scatter, math.Abs(inward(line, k.at)))
		}
	}
	return s
}

// takes reports whether marks of that side count.
func (h Half) takes(side float64) bool { return h == Both || (h == Left) == (side > 0) }
