package draft

import "gonum.org/v1/gonum/spatial/r2"

// pointsPerSpan is how many pieces the curve is broken into between two knots
// of the armhole: chords of about 1 cm, which stand off the curve by less than
// 0.3 mm.
const pointsPerSpan = 8

// smooth returns a curve through the knots, which are points of it: a cubic
// Hermite curve over the chord length whose slope at an inner knot is that of
// the parabola through it and its neighbours (Bessel's rule; C. de Boor, A
// Practical Guide to Splines, 1978, chapter IV). The curve leaves its last
// knot along end; a zero end lets it run out as a parabola, as the first does.
func smooth(knots []r2.Vec, end r2.Vec) []r2.Vec {
	n := len(knots)
	if n < 3 {
		return append([]r2.Vec(nil), knots...)
	}
	slope := knotSlopes(knots)
	if end != (r2.Vec{}) {
		slope[n-1] = r2.Unit(end)
	}
	curve := []r2.Vec{knots[0]}
	for i := 0; i < n-1; i++ {
		h := dist(knots[i], knots[i+1])
		for k := 1; k < pointsPerSpan; k++ {
			t := float64(k) / pointsPerSpan
			curve = append(curve, hermite(knots[i], knots[i+1], r2.Scale(h, slope[i]), r2.Scale(h, slope[i+1]), t))
		}
		curve = append(curve, knots[i+1])
	}
	return curve
}

// knotSlopes returns the slope of the curve at each knot, len = len(knots).
func knotSlopes(knots []r2.Vec) []r2.Vec {
	n := len(knots)
	chord := func(i int) (r2.Vec, float64) {
		d := r2.Sub(knots[i+1], knots[i])
		h := r2.Norm(d)
		return r2.Scale(1/h, d), h
	}
	s := make([]r2.Vec, n)
	for i := 1; i < n-1; i++ {
		d0, h0 := chord(i - 1)
		d1, h1 := chord(i)
		s[i] = lerp(d0, d1, h0/(h0+h1))
	}
	first, _ := chord(0)
	last, _ := chord(n - 2)
	s[0] = r2.Sub(r2.Scale(2, first), s[1])
	s[n-1] = r2.Sub(r2.Scale(2, last), s[n-2])
	return s
}

// hermite returns the cubic from p to q with end slopes u, v at t in 0..1.
func hermite(p, q, u, v r2.Vec, t float64) r2.Vec {
	t2, t3 := t*t, t*t*t
	s := r2.Add(r2.Scale(2*t3-3*t2+1, p), r2.Scale(3*t2-2*t3, q))
	s = r2.Add(s, r2.Scale(t3-2*t2+t, u))
	return r2.Add(s, r2.Scale(t3-t2, v))
}
