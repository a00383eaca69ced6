// Package surface lays a smooth surface through a draped sheet, to be looked
// at. It passes through every crossing of the lattice that lies on the cloth;
// outline and fold line become smooth curves. Figures are never read off it.
//
// Between the vertices it is piecewise cubic with one tangent plane
// everywhere, also where the outline cuts cells and at any grain: every
// triangle of the sheet is a macro-element of R. W. Clough and J. L. Tocher,
// "Finite element stiffness matrices for analysis of plates in bending" (1965),
// over the flat piece. A lattice that is drawn as it is shows its cells: the
// fold line, which runs across their diagonals at 45° grain, as saw teeth as
// deep as half a diagonal. Start at Smooth.
package surface

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// Options says how a sheet is smoothed.
type Options struct {
	FoldY float64 // m, flat height of the line where the self-facing folds in; beyond the cloth: there is none
	Part  float64 // m, edges of the drawn triangles at most, in the flat; 0: 2.7 mm
}

// Surface is a smooth sheet and its normals.
type Surface struct {
	mesh.Sheet          // no triangle lies on both sides of the fold line
	Normal     []r3.Vec // unit, right side of the cloth, len = len(Pos)
	places
}

// part is the length of a drawn edge, m, 4 pixels of a picture of 60 cm of cloth
// 900 pixels high: a chord of 2.7 mm on a roll of 6 mm misses it by 0.15 mm, a
// fifth of a pixel.
const part = 0.0027

// most is how many parts an edge is drawn in at most.
const most = 4

// stiffenings is how often cells are left as they lie on the lattice because
// their neighbours would cut through another layer.
const stiffenings = 6

// calmings is how often normals are brought nearer to those around them. Once
// leaves crests of satin braided; three times blur sharp folds.
const calmings = 2

// Smooth returns the smooth surface through s. Equal sheets give equal bits.
// Layers that lie apart in s lie apart on the surface: where cubics would cut
// through each other it goes back to the triangles of s.
func Smooth(s mesh.Sheet, o Options) Surface {
	if o.Part == 0 {
		o.Part = part
	}
	size := spacing(&s)
	if size == 0 {
		return Surface{Sheet: s, Normal: s.Normals(), places: whole(len(s.Pos))}
	}
	parts := min(max(int(math.Ceil(size/o.Part)), 1), most)
	stiff := make([]bool, len(s.Pos))
	for round := 0; ; round++ {
		b := split(s, o.FoldY, stiff)
		b.fair()
		out, hit := b.apart(b.gradients(b.all()), parts)
		if len(hit) == 0 || round == stiffenings {
			for range calmings {
				b.calm(&out)
			}
			return out
		}
		b.stiffen(hit)
	}
}

// stiffen marks the vertices of the triangles listed, in the sheet.
func (b *base) stiffen(list []int) {
	for _, k := range list {
		for _, v := range b.tris[k] {
			for _, end := range b.from[v] {
				b.stiff[end] = true
			}
		}
	}
}

// fixed reports whether a vertex stays as it lies on the lattice.
func (b *base) fixed(v int32) bool { return b.stiff[b.from[v][0]] || b.stiff[b.from[v][1]] }
