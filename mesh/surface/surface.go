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
	Part  float64 // m, edges of the drawn triangles at most, in the flat; 0: 2.2 mm
}

// Surface is a smooth sheet and its normals.
type Surface struct {
	mesh.Sheet          // no triangle lies on both sides of the fold line
	Normal     []r3.Vec // unit, right side of the cloth, len = len(Pos)
}

// part is the length of a drawn edge, m: two pixels of a picture of 60 cm of
// cloth 900 pixels high are 1.3 mm, and a chord of 2.2 mm on a roll of 6 mm
// misses it by 0.1 mm.
const part = 0.0022

// most is how many parts an edge is drawn in at most.
const most = 6

// Smooth returns the smooth surface through s. Equal sheets give equal bits.
func Smooth(s mesh.Sheet, o Options) Surface {
	if o.Part == 0 {
		o.Part = part
	}
	b := split(s, o.FoldY)
	if b.spacing == 0 {
		return Surface{Sheet: s, Normal: s.Normals()}
	}
	b.fair()
	n := int(math.Ceil(b.spacing / o.Part))
	return b.tessellate(b.gradients(b.all()), min(max(n, 1), most))
}
