package sim

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// aroundCylinder lays a lattice round a cylinder whose axis makes angle a with the weft, so
// that the cloth along the axis keeps its length and yarns keep theirs as chords, up to
// the fourth power of spacing over radius. With curvature κ chords of a yarn that has
// curvature k are shorter than their arcs by h²k²/24, so the cloth is longer by that.
func aroundCylinder(c *Cloth, a, radius float64) []r3.Vec {
	sin, cos := math.Sincos(a) // of the warp to the way round
	long := func(s float64) float64 { k := s * s / radius; return c.h * c.h * k * k / 24 }
	u, v := long(cos), long(sin)
	round := u + v                                 // strain of the way round
	lean := (u - round*cos*cos) / (2 * cos * -sin) // half the shear of axis and way round
	out := make([]r3.Vec, len(c.Lattice.Rest))
	for i, p := range c.Lattice.Rest {
		axis, way := p.Y*cos-p.X*sin, p.X*cos+p.Y*sin
		z, x := math.Sincos((1 + round) * way / radius)
		out[i] = r3.Vec{X: radius * x, Y: axis + 2*lean*way, Z: radius * z}
	}
	return out
}

// A cylinder can be rolled from cloth that is neither pulled nor sheared, whatever the
// grain: the shear angle that the cells read vanishes with the fourth power of the
// spacing, where that between mean edges alone is h²κ²·sin 2a/16.
func TestRolledClothIsNotSheared(t *testing.T) {
	const radius = 0.020
	for _, deg := range []float64{20, 45, 70} {
		a := deg * math.Pi / 180
		var last float64
		for _, h := range []float64{0.008, 0.004, 0.002} {
			c := NewCloth(cut(t, rectangle(12*h, 12*h, 0), h, 0), Stiffness{Weight: 0.1, TensileWarp: 1, TensileWeft: 1,
				Shear: 1})
			x := aroundCylinder(c, a, radius)
			var worst, edges float64
			for _, q := range c.cells {
				worst = math.Max(worst, math.Abs(c.angle(&q, x)))
				flat := q
				flat.rim, flat.off = new([2][4]float64), 0
				edges = math.Max(edges, math.Abs(c.angle(&flat, x)))
			}
			bare := h * h / (radius * radius) * math.Sin(2*a) / 16
			if math.Abs(edges-bare) > 0.1*bare {
				t.Errorf("%g°, %g mm: mean edges are sheared by %.5f, want %.5f", deg, h*1000, edges, bare)
			}
			if worst > 0.1*bare || (last > 0 && worst > last/12) {
				t.Errorf("%g°, %g mm: sheared by %.1e, want under a tenth of %.1e, and a sixteenth of %.1e", deg, h*1000, worst,
					bare, last)
			}
			if strain := c.MaxStrain(x); strain > 2e-4 {
				t.Errorf("%g°, %g mm: yarns are strained by %.1e, want none", deg, h*1000, strain)
			}
			last = worst
		}
	}
}
