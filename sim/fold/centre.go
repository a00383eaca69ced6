package fold

import (
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
)

// Centre is the image of the flat centre front, X holds z and Y holds y, m: the front from
// the edge at flat y foldY down, and the facing from there to its free edge. Both are
// empty where the centre front does not reach the edge, the facing where there is none.
func Centre(s *mesh.Sheet, foldY float64) (front, facing []r2.Vec) {
	tr, err := traceLine(s, upright, 0, foldY)
	if err != nil {
		return nil, nil
	}
	edge := tr.point(foldY)
	front = []r2.Vec{{X: edge.Z, Y: edge.Y}}
	facing = []r2.Vec{front[0]}
	for k := len(tr.at) - 1; k >= 0; k-- {
		if tr.at[k] < foldY-same {
			front = append(front, r2.Vec{X: tr.pos[k].Z, Y: tr.pos[k].Y})
		}
	}
	for k, at := range tr.at {
		if at > foldY+same {
			facing = append(facing, r2.Vec{X: tr.pos[k].Z, Y: tr.pos[k].Y})
		}
	}
	if len(facing) == 1 {
		facing = nil
	}
	return front, facing
}
