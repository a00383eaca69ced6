package sim

import "math"

// chord returns the angle (degrees) of the line from root to tip of a level
// clamped strip that bends under its own weight, load = w·L³/B: the heavy
// elastica θ” = −load·(1−s)·cos θ with θ(0) = 0 and θ'(1) = 0, θ below the
// level, by fourth-order Runge–Kutta and bisection on θ'(0).
func chord(load float64) float64 {
	low, high := 0.0, load
	var x, y float64
	for range 60 {
		mid := (low + high) / 2
		var end float64
		if end, x, y = shoot(load, mid); end > 0 {
			high = mid
		} else {
			low = mid
		}
	}
	return math.Atan2(y, x) * 180 / math.Pi
}

// shoot runs along the strip from curvature k at the clamp and returns the
// curvature and the place of the tip.
func shoot(load, k float64) (end, x, y float64) {
	const n = 400
	type state struct{ th, k, x, y float64 }
	slope := func(s float64, a state) state {
		return state{a.k, -load * (1 - s) * math.Cos(a.th), math.Cos(a.th), math.Sin(a.th)}
	}
	to := func(a, d state, h float64) state {
		return state{a.th + h*d.th, a.k + h*d.k, a.x + h*d.x, a.y + h*d.y}
	}
	a, h := state{k: k}, 1.0/n
	for i := range n {
		s := float64(i) * h
		d1 := slope(s, a)
		d2 := slope(s+h/2, to(a, d1, h/2))
		d3 := slope(s+h/2, to(a, d2, h/2))
		d4 := slope(s+h, to(a, d3, h))
		a = to(to(to(to(a, d1, h/6), d2, h/3), d3, h/3), d4, h/6)
	}
	return a.k, a.x, a.y
}
