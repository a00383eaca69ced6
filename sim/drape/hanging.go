package drape

import "math"

// hangingLine is a chain between (−half, 0) and (half, 0); a catenary
// y = a cosh(x/a), whose arc from the middle is a sinh(x/a).
type hangingLine struct {
	half, arc float64 // m, half the span and half the length
	a         float64 // m, smallest radius of curvature; +Inf for a taut line
	drop      float64 // m, of the middle below the ends
}

// hangingCurve returns the chain of half length arc over half span half (m).
// A chain no longer than its span is taut.
func hangingCurve(half, arc float64) hangingLine {
	c := hangingLine{half: half, arc: arc, a: math.Inf(1)}
	if arc <= half*(1+1e-9) {
		return c
	}
	lo, hi := half/700, half*1e5
	for range 200 {
		if m := math.Sqrt(lo * hi); m*math.Sinh(half/m) > arc {
			lo = m
		} else {
			hi = m
		}
	}
	c.a = lo
	c.drop = c.a * (math.Cosh(half/c.a) - 1)
	return c
}

// at returns the point at share s of the half length, −1..1: x from the middle
// and how far it hangs below the ends.
func (c hangingLine) at(s float64) (x, drop float64) {
	if math.IsInf(c.a, 1) {
		return s * c.half, 0
	}
	x = c.a * math.Asinh(s*c.arc/c.a)
	return x, c.a * (math.Cosh(c.half/c.a) - math.Cosh(x/c.a))
}
