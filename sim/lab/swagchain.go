package lab

import "math"

// chain is a hanging curve between two points on one level.
type chain struct{ span, drop, a, half float64 } // m; a is the least radius, half is half the length

// newChain hangs a chain of a span so deep.
func newChain(span, drop float64) chain {
	if drop <= 0 {
		return chain{span: span, half: span / 2}
	}
	low, high := span/1400, span*1e5
	for range 200 {
		if a := math.Sqrt(low * high); a*(math.Cosh(span/(2*a))-1) > drop {
			low = a
		} else {
			high = a
		}
	}
	return chain{span, drop, low, low * math.Sinh(span/(2*low))}
}

// at returns the place at share t of its half length: x from the middle, and how
// far below the ends.
func (c chain) at(t float64) (x, drop float64) {
	if c.drop == 0 {
		return t * c.half, 0
	}
	s := t * c.half
	return c.a * math.Asinh(s/c.a), c.drop - (math.Hypot(s, c.a) - c.a)
}

// unrolled returns how far from the middle the place x lies where the chain is
// drawn with all its heights at the given share and its length unchanged.
func (c chain) unrolled(x, share float64) float64 {
	if c.drop == 0 {
		return x
	}
	const parts = 64
	sum, h := 0.0, x/parts
	for i := range parts {
		slope := math.Sinh((float64(i) + 0.5) * h / c.a)
		sum += h * math.Sqrt(1+(1-share*share)*slope*slope)
	}
	return sum
}
