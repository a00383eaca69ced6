package form

import (
	"math"
	"slices"
	"testing"

	"cowl/mesh"
	"cowl/mesh/body"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cutBy returns where the edges of the triangles cross the plane through o with
// the unit normal n.
func cutBy(s mesh.Surface, o, n r3.Vec) []r3.Vec {
	var pts []r3.Vec
	side := func(p r3.Vec) float64 { return r3.Dot(n, r3.Sub(p, o)) }
	for _, t := range s.Tris {
		for e := range t {
			p, q := s.Pos[t[e]], s.Pos[t[(e+1)%3]]
			a, b := side(p), side(q)
			if (a < 0) == (b < 0) {
				continue
			}
			pts = append(pts, r3.Add(p, r3.Scale(a/(a-b), r3.Sub(q, p))))
		}
	}
	return pts
}

// tautBetween is the length of a tape drawn taut over the surface from high to
// low, which lies under it, in the vertical plane through both that holds the
// given direction: the hull of the section on the side of out, m.
func tautBetween(s mesh.Surface, high, low, along, out r3.Vec) float64 {
	u := r3.Unit(along)
	v := r3.Unit(r3.Sub(out, r3.Scale(r3.Dot(out, u), u)))
	flat := func(p r3.Vec) r2.Vec {
		d := r3.Sub(p, low)
		return r2.Vec{X: r3.Dot(d, u), Y: r3.Dot(d, v)}
	}
	top := flat(high)
	pts := []r2.Vec{{}, top}
	for _, p := range cutBy(s, low, r3.Cross(u, v)) {
		q := flat(p)
		// Before the chord from low to high; what is behind it is the other wall.
		if q.X > 0 && q.X < top.X && q.Y > top.Y*q.X/top.X {
			pts = append(pts, q)
		}
	}
	return tape(pts) - r2.Norm(top)
}

// arcDown is the length along the cut of the surface with a plane through the
// Y axis, from height top to the waist, on the side of the unit vector out, m.
func arcDown(s mesh.Surface, out r3.Vec, top float64) float64 {
	n := r3.Cross(out, r3.Vec{Y: 1})
	// A hair off the plane, where no vertex lies in it.
	var pts []r3.Vec
	for _, p := range cutBy(s, r3.Scale(1e-6, n), n) {
		if r3.Dot(p, out) > 0 && p.Y > 0 && p.Y < top {
			pts = append(pts, p)
		}
	}
	slices.SortFunc(pts, func(a, b r3.Vec) int { return int(math.Copysign(1, b.Y-a.Y)) })
	// The last steps to both ends follow the neighbouring slope.
	first, last := pts[0], pts[len(pts)-1]
	ends := (top-first.Y)*r3.Norm(r3.Sub(first, pts[2]))/(first.Y-pts[2].Y) + last.Y
	return polyLength(pts) + ends
}

// TestTapeLengths measures the finished triangles with a tape: the lengths of
// the flat block lie over them.
func TestTapeLengths(t *testing.T) {
	for _, n := range []int{6, 8, 10, 12, 14, 16, 18} {
		b, f := size(t, n), bareForm(t, n)
		s, apex, neck := f.Surface(), f.Apex(1), f.NeckPoint(1)
		foot := r3.Vec{X: apex.X, Z: f.WaistPoint(1, 0).Z}
		foot.Z = frontWall(s, foot)
		down := b.NapeToWaist + body.NapeDrop
		for _, c := range []struct {
			name           string
			got, want, tol float64
		}{
			{"neck point to apex", tautBetween(s, neck, apex, r3.Sub(neck, apex), r3.Vec{Z: 1}),
				math.Hypot(b.ApexDepth, b.BustSpan/2-neck.X), 0.002},
			{"apex to waist", tautBetween(s, apex, foot, r3.Sub(apex, foot), r3.Vec{Z: 1}), down - b.ApexDepth, 0.002},
			{"front neck to waist on CF", arcDown(s, r3.Vec{Z: 1}, f.FrontNeck().Y), down - (b.Neck/5 - 0.002), 0.002},
			{"nape to waist on CB", arcDown(s, r3.Vec{Z: -1}, f.NeckLine()[0].Y), b.NapeToWaist, 0.002},
			{"underarm to waist on the side", arcDown(s, r3.Vec{X: 1}, f.SidePoint(1, 0).Y),
				b.NapeToWaist - b.ArmscyeDepth - body.ArmscyeEase, 0.002},
		} {
			if !(math.Abs(c.got-c.want) <= c.tol) {
				t.Errorf("size %d: tape %s = %.4f, want %.4f ± %g", n, c.name, c.got, c.want, c.tol)
			}
		}
	}
}

// frontWall is the front of the triangles at X and Y of p: the foremost crossing
// of the section nearest in X.
func frontWall(s mesh.Surface, p r3.Vec) float64 {
	z, miss := 0.0, math.Inf(1)
	for _, q := range cutBy(s, p, r3.Vec{Y: 1}) {
		if m := math.Abs(q.X - p.X); q.Z > 0 && m < miss {
			z, miss = q.Z, m
		}
	}
	return z
}
