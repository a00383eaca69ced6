package lab

import (
	"math"

	"cowl/sim"
)

// Chord returns the angle (rad) below the level of the line from root to tip of
// a strip that is clamped level and bends under its own weight; load = w·L³/B.
// Heavy elastica: with s from the tip and δ the angle from the plumb line,
// δ” = load·s·sin δ, δ'(0) = 0, δ(1) = π/2, by fourth-order Runge–Kutta and
// bisection on the logarithm of δ(0).
func Chord(load float64) float64 {
	x, y := elastica(load)
	return math.Atan2(y, x)
}

// elastica returns reach and drop of the tip over the length of the strip.
func elastica(load float64) (x, y float64) {
	low, high := math.Log(1e-200), math.Log(math.Pi/2)
	for range 64 {
		mid := (low + high) / 2
		if end, _, _ := shoot(load, math.Exp(mid)); end > math.Pi/2 {
			high = mid
		} else {
			low = mid
		}
	}
	_, x, y = shoot(load, math.Exp(low))
	return x, y
}

// shoot runs from the tip, at d from the plumb line, to the root and returns
// the angle there and how far the tip reaches and drops. It stops early where
// the angle passes the level.
func shoot(load, d float64) (end, x, y float64) {
	const n = 250
	type state struct{ d, k, x, y float64 }
	slope := func(s float64, a state) state {
		return state{a.k, load * s * math.Sin(a.d), math.Sin(a.d), math.Cos(a.d)}
	}
	to := func(a, v state, h float64) state { return state{a.d + h*v.d, a.k + h*v.k, a.x + h*v.x, a.y + h*v.y} }
	a, h := state{d: d}, 1.0/n
	for i := 0; i < n && a.d < math.Pi; i++ {
		s := float64(i) * h
		d1 := slope(s, a)
		d2 := slope(s+h/2, to(a, d1, h/2))
		d3 := slope(s+h/2, to(a, d2, h/2))
		d4 := slope(s+h, to(a, d3, h))
		a = to(to(to(to(a, d1, h/6), d2, h/3), d3, h/3), d4, h/6)
	}
	return a.d, a.x, a.y
}

// heaviest is the largest load of the elastica that is inverted; its chord
// hangs within 3° of the plumb line, where an angle tells no stiffness.
const heaviest = 5000

// chordLoad returns the load w·L³/B for which a strip hangs at the chord angle
// (rad), and false where the angle is not between those of no load and the
// heaviest.
func chordLoad(angle float64) (load float64, ok bool) {
	low, high := math.Log(1e-6), math.Log(heaviest)
	if !(angle > Chord(math.Exp(low)) && angle < Chord(heaviest)) {
		return 0, false
	}
	for range 44 {
		if mid := (low + high) / 2; Chord(math.Exp(mid)) < angle {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Exp((low + high) / 2), true
}

// OffAxisModulus returns the modulus (N/m) of cloth pulled at angle a (rad)
// from the warp, free to narrow and to skew: 1/E = cos⁴/C11 + cos²·sin²/G +
// sin⁴/C22 (F. W. Kilby, "Planar stress–strain relationships in woven fabrics",
// J. Textile Inst. 54, 1963, with ν = 0).
func OffAxisModulus(s sim.Stiffness, a float64) float64 {
	c, d := math.Pow(math.Cos(a), 2), math.Pow(math.Sin(a), 2)
	return 1 / (c*c/s.TensileWarp + c*d/s.Shear + d*d/s.TensileWeft)
}

// TrellisShear returns the shear angle (rad) in the middle of a strip of the
// given length and width (m), clamped across the true bias and drawn out by
// growth (m), if yarns do not stretch: π/2 − 2·acos((D+d)/(√2·D)) with
// D = length − width (pin-jointed net; S. Dridi, InTech 2012, doi
// 10.5772/46161, and the bias extension test of J. Cao et al., Composites A 39,
// 2008). It returns the right angle at which the net is spent where growth is
// larger than it can give.
func TrellisShear(length, width, growth float64) float64 {
	d := length - width
	return math.Pi/2 - 2*math.Acos(math.Min(1, (d+growth)/(math.Sqrt2*d)))
}

// HangingDrop returns how far the middle of an edge of the given length hung
// from two points on one level, span apart (m), lies below them: in a hanging
// curve (catenary) and in a V, the deepest that it can.
func HangingDrop(length, span float64) (curve, v float64) {
	if length <= span {
		return 0, 0
	}
	low, high := span/1400, span*1e5
	for range 200 {
		if a := math.Sqrt(low * high); 2*a*math.Sinh(span/(2*a)) > length {
			low = a
		} else {
			high = a
		}
	}
	return low * (math.Cosh(span/(2*low)) - 1), math.Sqrt(length*length-span*span) / 2
}
