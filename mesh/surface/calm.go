package surface

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// calm brings the normals half way towards those of the cloth a cell around.
// Crossings of a lattice lie up and down by some hundredths of a millimetre
// about every sharp fold; a surface through them has a highlight like a row of
// beads. Places are left alone.
func (b *base) calm(out *Surface) {
	rings := b.rings()
	around := make([]r3.Vec, len(b.pos))
	for i, near := range rings {
		sum := out.Normal[i]
		for _, j := range near {
			if b.side[j]*b.side[i] >= 0 {
				far := r2.Norm2(r2.Sub(b.flat[j], b.flat[i])) / (b.spacing * b.spacing)
				sum = r3.Add(sum, r3.Scale(math.Exp(-2*far), out.Normal[j]))
			}
		}
		if r3.Norm(sum) > 0 {
			around[i] = r3.Unit(sum)
		}
	}
	for i, c := range out.corner {
		var mean r3.Vec
		for k, v := range c {
			mean = r3.Add(mean, r3.Scale(out.weight[i][k], around[v]))
		}
		if n := r3.Add(out.Normal[i], mean); r3.Norm(n) > 0 {
			out.Normal[i] = r3.Unit(n)
		}
	}
}
