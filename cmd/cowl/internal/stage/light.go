package stage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// lights returns the unit directions towards the key light and the fill. They
// turn with the eye, the key from the upper left of the picture, so that folds
// throw their shadows the same way in every view.
func lights(v View) (key, fill r3.Vec) {
	back := r3.Sub(v.Eye, v.Target)
	back.Y = 0
	if r3.Norm(back) == 0 {
		back = r3.Vec{Z: 1}
	}
	right, up, level := frame(back)
	mix := func(r, u, b float64) r3.Vec {
		return r3.Unit(r3.Add(r3.Scale(r, right), r3.Add(r3.Scale(u, up), r3.Scale(b, level))))
	}
	return mix(-0.62, 0.85, 0.62), mix(0.85, 0.10, 0.55)
}

// skyDirections returns n unit directions spread evenly over the sphere: a
// spiral with the golden angle (González, Mathematical Geosciences 42, 2010).
func skyDirections(n int) []r3.Vec {
	golden := math.Pi * (3 - math.Sqrt(5))
	dirs := make([]r3.Vec, n)
	for i := range dirs {
		y := 1 - (2*float64(i)+1)/float64(n)
		r := math.Sqrt(1 - y*y)
		a := golden * float64(i)
		dirs[i] = r3.Vec{X: r * math.Cos(a), Y: y, Z: r * math.Sin(a)}
	}
	return dirs
}

// parallelView returns the world-to-clip matrix of a light far away in the
// direction dir that just holds box, and the larger side of its field in m.
func parallelView(dir r3.Vec, box r3.Box) (mat4, float64) {
	centre := r3.Scale(0.5, r3.Add(box.Min, box.Max))
	look := lookAt(r3.Add(centre, dir), centre)
	var seen []r3.Vec
	for _, c := range box.Vertices() {
		p, _ := look.apply(c)
		seen = append(seen, p)
	}
	field := Bounds(seen)
	pad := r3.Vec{X: 0.01, Y: 0.01, Z: 0.02}
	lo, hi := r3.Sub(field.Min, pad), r3.Add(field.Max, pad)
	return orthographic(lo, hi).mul(look), max(hi.X-lo.X, hi.Y-lo.Y)
}
