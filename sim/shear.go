package sim

import "math"

// flattest is the smallest cosine of the shear angle that the shear force is
// divided by; beyond 78° of shear the cloth is a bundle of yarns.
const flattest = 0.2

// knee is the shear beyond the locking angle at which the slope of the shear
// force has grown elevenfold, rad. Locking angles depend on the rig that
// measured them and no slope is published with them (P. Boisse et al., "The
// bias-extension test for the analysis of in-plane shear properties", 2016), so
// it only has to be steep and smooth.
const knee = 0.1

// jam returns the shear stress over G that jammed yarns add beyond the locking
// angle: 5·x²/knee for the excess x, with a continuous slope.
func jam(angle, lock float64) float64 {
	x := math.Abs(angle) - lock
	if lock == 0 || x <= 0 {
		return 0
	}
	return math.Copysign(5*x*x/knee, angle)
}

// jamEnergy is the integral of jam over the angle.
func jamEnergy(angle, lock float64) float64 {
	x := math.Abs(angle) - lock
	if lock == 0 || x <= 0 {
		return 0
	}
	return 5 * x * x * x / (3 * knee)
}

// steep returns the shear force of a cell over its shear stiffness and the sine
// s of its shear angle, γ'(s)·(γ + jam)/s for γ = asin s, given t = s².
func (c *Cloth) steep(t float64) float64 {
	if t < 0.25 && c.lock == 0 {
		return slender(t)
	}
	s := math.Sqrt(min(t, 1))
	g := math.Asin(s)
	if s == 0 {
		return 1
	}
	return (g + jam(g, c.lock)) / (s * max(flattest, math.Sqrt(1-s*s)))
}

// slender is asin(s)/(s·√(1 − s²)) for t = s² in 0..¼: up to 30° of shear. The
// coefficients interpolate at 13 Chebyshev points, computed in 60 digits; the
// error is below 1e-15.
func slender(t float64) float64 {
	t2 := t * t
	t4 := t2 * t2
	lo := (1.0000000000000007 + 0.6666666666658514*t) + (0.5333333335153069+0.4571428412360304*t)*t2
	mid := (0.4063499261634057 + 0.36938906878354955*t) + (0.3413226954254761+0.31449836880158427*t)*t2
	hi := (0.32854384229612016 + 0.1326240997858804*t) + (0.7879936250707563-0.8270432291133321*t)*t2
	return lo + t4*(mid+t4*(hi+t4*1.4048744945476264))
}
