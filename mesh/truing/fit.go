package truing

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r2"
)

// fit finds a and b for which a·u + b·v comes nearest to what was measured at many pairs
// of u and v (least squares, by QR).
type fit struct {
	at   []float64 // u and v in turn
	want []float64 // X and Y in turn
}

// add takes in what was measured at u and v.
func (f *fit) add(u, v float64, measured r2.Vec) {
	f.at = append(f.at, u, v)
	f.want = append(f.want, measured.X, measured.Y)
}

// count is how many were measured.
func (f *fit) count() int { return len(f.at) / 2 }

// mean is that of what was measured; there must be some.
func (f *fit) mean() r2.Vec {
	var sum r2.Vec
	for i := 0; i < len(f.want); i += 2 {
		sum = r2.Add(sum, r2.Vec{X: f.want[i], Y: f.want[i+1]})
	}
	return r2.Scale(1/float64(f.count()), sum)
}

// solve returns a and b; false where v tells too little that u does not tell: the part of
// it that is independent is no more than least times the size of u.
func (f *fit) solve(least float64) (a, b r2.Vec, ok bool) {
	n := f.count()
	if n < 2 {
		return a, b, false
	}
	var qr mat.QR
	qr.Factorize(mat.NewDense(n, 2, f.at))
	var r, c mat.Dense
	qr.RTo(&r)
	if !(math.Abs(r.At(1, 1)) > least*math.Abs(r.At(0, 0))) {
		return a, b, false
	}
	if err := qr.SolveTo(&c, false, mat.NewDense(n, 2, f.want)); err != nil {
		return a, b, false
	}
	return r2.Vec{X: c.At(0, 0), Y: c.At(0, 1)}, r2.Vec{X: c.At(1, 0), Y: c.At(1, 1)}, true
}
