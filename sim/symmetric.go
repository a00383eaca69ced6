package sim

import "gonum.org/v1/gonum/spatial/r3"

// symmetric is a symmetric 3 × 3 matrix.
type symmetric struct{ xx, yy, zz, xy, xz, yz float64 }

// add adds w·(d·dᵀ + k).
func (s *symmetric) add(w, k float64, d r3.Vec) {
	s.xx, s.yy, s.zz = s.xx+w*(d.X*d.X+k), s.yy+w*(d.Y*d.Y+k), s.zz+w*(d.Z*d.Z+k)
	s.xy, s.xz, s.yz = s.xy+w*d.X*d.Y, s.xz+w*d.X*d.Z, s.yz+w*d.Y*d.Z
}

// solve returns x of (s + k)·x = f for a positive definite s + k, and 0 where
// that is nothing.
func (s *symmetric) solve(k float64, f r3.Vec) r3.Vec {
	a, b, c := s.xx+k, s.yy+k, s.zz+k
	xx, xy, xz := b*c-s.yz*s.yz, s.xz*s.yz-s.xy*c, s.xy*s.yz-s.xz*b
	det := a*xx + s.xy*xy + s.xz*xz
	if !(det > 0) {
		return r3.Vec{}
	}
	yy, yz, zz := a*c-s.xz*s.xz, s.xy*s.xz-a*s.yz, a*b-s.xy*s.xy
	return r3.Vec{X: (xx*f.X + xy*f.Y + xz*f.Z) / det, Y: (xy*f.X + yy*f.Y + yz*f.Z) / det,
		Z: (xz*f.X + yz*f.Y + zz*f.Z) / det}
}
