// Package form builds a dress form from body measurements: a closed surface
// with its seam lines, and a fast signed distance to it.
//
// The origin is where the centre-front plane (X = 0), the waist level (Y = 0)
// and the side-seam plane (Z = 0) meet. The side seams, the shoulder seams and
// the shoulder neck points lie in Z = 0. X points to the wearer's left, Y up,
// Z forward; metres. The form is mirror-symmetric about X = 0.
//
// The shape is a family of horizontal sections whose width, front depth and
// back depth are smooth in height, with two bust mounds; shoulder plates, neck
// cap and bottom are blended in. The girths are solved for, not assumed. So are
// the heights: the lengths of the flat block (neck point to apex to waist, CF,
// CB) lie over the surface as a taut tape, so neck points, nape and apex stand
// lower than in the block by what the curves take up.
// Start at FromBody.
package form

import (
	"cowl/mesh"
	"cowl/mesh/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// Form is a dress form. It is constant once built and safe for concurrent use.
type Form struct {
	body  body.Body
	shape *shape
	surf  mesh.Surface
	grid  *grid
	seams seams
	front bridge

	turned bool // its back is where the front was, see Turned
}

// FromBody builds the form of a body. Two calls with the same body give the
// same form bit for bit; measurements that were not taken are filled in by rule
// (Body.Filled). It fails if the body is not valid (Body.Validate), if no section
// of the family carries the wanted girths or if the landmarks would change
// places. Where a bust stands out so far that the front neck point would come
// too near to the neck points, it is held lower and CF is shorter than the tape.
func FromBody(b body.Body) (*Form, error) {
	f, err := bare(b)
	if err != nil {
		return nil, err
	}
	f.grid = distances(f.surf)
	f.grid.smooth()
	return f, nil
}

// bare builds everything but the distance grid, which takes most of the time.
func bare(b body.Body) (*Form, error) {
	if err := b.Validate(); err != nil {
		return nil, err
	}
	b = b.Filled()
	s, err := fit(b)
	if err != nil {
		return nil, err
	}
	f := &Form{body: b, shape: s, surf: extract(s, b.Hip)}
	f.seams = drawSeams(s, b.Shoulder)
	f.front = bridgeFront(f.surf)
	return f, nil
}

// Surface returns the closed triangle surface with outward unit normals. The
// slices are shared with the form and must not be written to.
func (f *Form) Surface() mesh.Surface { return f.surf }

// Distance returns the signed distance of p from the surface (m, > 0 outside)
// and its gradient. Inside the grid box it is a sum of quadratic B-splines that meets the
// distances on a 4 mm grid, and grad is the exact gradient of that sum; beyond the box
// the way to the box is added, so d stays positive.
func (f *Form) Distance(p r3.Vec) (d float64, grad r3.Vec) { return f.grid.at(p) }
