package drape

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// A piece drawn 3 % along the warp, or with its weft turned 0.2 rad towards the
// warp, shows just that at every vertex.
func TestFieldsOfEvenCloth(t *testing.T) {
	for _, c := range []struct {
		name          string
		stretch, turn float64
	}{{"flat", 0, 0}, {"stretched", 0.03, 0}, {"slack", -0.05, 0}, {"sheared", 0, 0.2}} {
		d, err := job(t, 0.11, 0.020, limp).onLattice(0.020)
		if err != nil {
			t.Fatal(err)
		}
		warp, weft := d.Lattice.Warp(), d.Lattice.Weft()
		turned := r2.Add(r2.Scale(math.Cos(c.turn), weft), r2.Scale(math.Sin(c.turn), warp))
		for i, q := range d.Lattice.Rest {
			p := r2.Add(r2.Scale(r2.Dot(q, warp)*(1+c.stretch), warp), r2.Scale(r2.Dot(q, weft), turned))
			d.State.Pos[i] = r3.Vec{X: p.X, Y: p.Y, Z: 1}
		}
		strain, shear := d.strains(), d.shears()
		if len(strain) == 0 {
			t.Fatal("no vertices")
		}
		clear := d.clearances(d.Sheet().Pos)
		for v := range strain {
			// a vertex outside of all links with enough cloth shows less
			if math.Abs(strain[v]) > math.Abs(c.stretch)+1e-9 || math.Abs(shear[v]-c.turn) > 1e-9 {
				t.Errorf("%s: vertex %d has strain %g and shear %g, want %g and %g", c.name, v, strain[v], shear[v], c.stretch,
					c.turn)
				break
			}
			if clear[v] < 0.5 {
				t.Errorf("%s: vertex %d is %g m off the form, want far off", c.name, v, clear[v])
				break
			}
		}
		f := Frame{Sheet: d.Sheet()}
		if v := vertex(&f, r2.Vec{Y: d.Job.Cowl.FoldY - 0.1}); math.Abs(strain[v]-c.stretch) > 1e-9 {
			t.Errorf("%s: the middle has strain %g, want %g", c.name, strain[v], c.stretch)
		}
	}
}
