package window

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hit is a place of the cloth under the mouse.
type hit struct {
	flat r2.Vec  // m, on the flat piece
	at   r3.Vec  // m, in space
	away float64 // m, from the eye
}

// seen returns the nearest place of the cloth on a ray.
func seen(s *mesh.Sheet, eye, ray r3.Vec) (hit, bool) {
	best := hit{away: math.Inf(1)}
	for _, t := range s.Tris {
		away, u, v, ok := crossing(eye, ray, s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]])
		if ok && away < best.away {
			w := 1 - u - v
			a, b, c := s.Flat[t[0]], s.Flat[t[1]], s.Flat[t[2]]
			best = hit{
				flat: r2.Add(r2.Scale(w, a), r2.Add(r2.Scale(u, b), r2.Scale(v, c))),
				at:   r3.Add(eye, r3.Scale(away, ray)), away: away,
			}
		}
	}
	return best, !math.IsInf(best.away, 1)
}

// hidden reports whether a surface lies on a ray before away metres.
func hidden(f *mesh.Surface, eye, ray r3.Vec, away float64) bool {
	for _, t := range f.Tris {
		if d, _, _, ok := crossing(eye, ray, f.Pos[t[0]], f.Pos[t[1]], f.Pos[t[2]]); ok && d < away-0.004 {
			return true
		}
	}
	return false
}

// crossing returns where a ray meets a triangle: how far on, and the weights of
// the second and third corner. T. Möller, B. Trumbore, "Fast, minimum storage
// ray-triangle intersection", J. Graphics Tools 2(1) (1997).
func crossing(eye, ray, a, b, c r3.Vec) (away, u, v float64, ok bool) {
	e, f := r3.Sub(b, a), r3.Sub(c, a)
	p := r3.Cross(ray, f)
	det := r3.Dot(e, p)
	if math.Abs(det) < 1e-14 {
		return 0, 0, 0, false
	}
	s := r3.Sub(eye, a)
	u = r3.Dot(s, p) / det
	q := r3.Cross(s, e)
	v = r3.Dot(ray, q) / det
	away = r3.Dot(f, q) / det
	return away, u, v, u >= 0 && v >= 0 && u+v <= 1 && away > 0
}

// inSpace returns where a place of the flat piece lies in space; false off the
// cloth.
func inSpace(s *mesh.Sheet, q r2.Vec) (r3.Vec, bool) {
	for _, t := range s.Tris {
		a, b, c := s.Flat[t[0]], s.Flat[t[1]], s.Flat[t[2]]
		e, f, d := r2.Sub(b, a), r2.Sub(c, a), r2.Sub(q, a)
		det := r2.Cross(e, f)
		u, v := r2.Cross(d, f)/det, r2.Cross(e, d)/det
		if det != 0 && u >= -1e-9 && v >= -1e-9 && u+v <= 1+1e-9 {
			w := 1 - u - v
			return r3.Add(r3.Scale(w, s.Pos[t[0]]), r3.Add(r3.Scale(u, s.Pos[t[1]]), r3.Scale(v, s.Pos[t[2]]))), true
		}
	}
	return r3.Vec{}, false
}
