package form

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cut appends the crossings of a triangle's edges with height y to pts, as
// (X, Z).
func cut(pts []r2.Vec, s mesh.Surface, t [3]int32, y float64) []r2.Vec {
	for e := range t {
		p, q := s.Pos[t[e]], s.Pos[t[(e+1)%3]]
		if (p.Y < y) == (q.Y < y) {
			continue
		}
		m := (y - p.Y) / (q.Y - p.Y)
		c := r3.Add(p, r3.Scale(m, r3.Sub(q, p)))
		pts = append(pts, r2.Vec{X: c.X, Y: c.Z})
	}
	return pts
}

// Girth returns the tape girth of the surface at height y, m: the perimeter of
// the convex hull of its horizontal section; 0 above and below the form.
func (f *Form) Girth(y float64) float64 {
	var pts []r2.Vec
	for _, t := range f.surf.Tris {
		pts = cut(pts, f.surf, t, y)
	}
	return tape(pts)
}

// bridge is the front on X = 0 under a taut tape, tabulated over height.
type bridge struct {
	y0 float64
	z  []float64 // m, at y0 + i·bridgeStep
}

// bridgeStep is the spacing of the bridge table, m.
const bridgeStep = 0.002

// bridgeFront tabulates the hull of each horizontal section on X = 0.
func bridgeFront(s mesh.Surface) bridge {
	lo, hi := bounds(s.Pos)
	b := bridge{y0: lo.Y + bridgeStep/2}
	rows := make([][]r2.Vec, int((hi.Y-b.y0)/bridgeStep)+1)
	for _, t := range s.Tris {
		low, high := bounds([]r3.Vec{s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]]})
		for i := int(math.Ceil((low.Y - b.y0) / bridgeStep)); i < len(rows); i++ {
			y := b.y0 + float64(i)*bridgeStep
			if y > high.Y {
				break
			}
			if i >= 0 {
				rows[i] = cut(rows[i], s, t, y)
			}
		}
	}
	for _, pts := range rows {
		b.z = append(b.z, frontOf(hull(pts)))
	}
	return b
}

// frontOf returns the largest z at which the hull crosses X = 0, or 0.
func frontOf(h []r2.Vec) float64 {
	var z float64
	for i, p := range h {
		q := h[(i+1)%len(h)]
		if (p.X < 0) != (q.X < 0) {
			z = max(z, p.Y+(q.Y-p.Y)*p.X/(p.X-q.X))
		}
	}
	return z
}

// BridgedFront returns z of the front at X = 0 and height y as a taut tape from
// bust to bust bridges it: the convex hull of the section at y. Beyond the form
// it is held at the ends.
func (f *Form) BridgedFront(y float64) float64 {
	b := f.front
	t := min(max((y-b.y0)/bridgeStep, 0), float64(len(b.z)-1))
	i := min(int(t), len(b.z)-2)
	return b.z[i] + (t-float64(i))*(b.z[i+1]-b.z[i])
}
