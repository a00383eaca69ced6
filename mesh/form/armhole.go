package form

import "gonum.org/v1/gonum/spatial/r3"

// Armhole returns the front of the seam round the shoulder plate, from the top
// by the front to the lowest point, m; side as in NeckPoint.
func (f *Form) Armhole(side float64) []r3.Vec {
	return flipAll(f.seams.plate.pts[:len(f.seams.plate.pts)/2+1], side)
}
