package materials

import (
	"math"
)

// A hanging heart loop is a strip whose two ends stand upright in one clamp,
// face to face: the cloth goes up from it, falls over on either side and hangs
// (F. T. Peirce, "The 'Handle' of Cloth as a Measurable Quantity", J. Textile
// Inst. 21, 1930, T377). Its depth is that of the lowest point below the clamp.

// LimpLoop is the longest loop over the bending length that is worked out. Of
// so limp a loop 1 % of the depth is 10 % of the bending length.
const LimpLoop = 30

// HeartDepth returns the depth of a heart loop over its length, of a cloth with
// that loop length over its bending length, 0 to LimpLoop; NaN outside. It is
// that of the heavy elastica.
func HeartDepth(lengths float64) float64 {
	if !(lengths >= 0 && lengths <= LimpLoop) {
		return math.NaN()
	}
	h := weightless()
	for at := 0.0; at < lengths; at += heartStep {
		h.settle(at)
	}
	h.settle(lengths)
	return h.depth()
}

// HeartLength is the inverse: the bending length over the loop length of a
// heart loop that hangs so deep over its length. It returns false for a loop
// limper than is worked out, and for one so stiff that its weight makes it less
// than 1 % deeper.
func HeartLength(depth float64) (float64, bool) {
	h := weightless()
	h.settle(0)
	if !(depth > 1.01*h.depth()) {
		return 0, false
	}
	high := 0.0
	for h.depth() < depth {
		if high += heartStep; high > LimpLoop {
			return 0, false
		}
		h.settle(high)
	}
	low := high - heartStep
	for range 24 {
		mid := (low + high) / 2
		if h.settle(mid); h.depth() < depth {
			low = mid
		} else {
			high = mid
		}
	}
	return 1 / high, true
}

// PeirceHeart returns what HeartLength returns, by the formula of Peirce
// (recalled): with l the depth and l0 = 0.1337 that without weight,
// c = l0·(cos θ/tan θ)^⅓, θ = 32.85°·(l − l0)/l0. It lies 9 % below the elastica
// for a loop of one bending length, 2 % below for two, 4 % above for 6 to 15 and
// 10 % above for 25: 12 % too stiff in the middle. R. H. Plaut says as much of
// Peirce's loops (Text. Res. J., 2015, doi 10.1177/0040517514553877, abstract).
func PeirceHeart(depth float64) (float64, bool) {
	const light = 0.1337
	angle := 32.85 * math.Pi / 180 * (depth - light) / light
	if !(angle > 0 && angle < math.Pi/2) {
		return 0, false
	}
	return light * math.Cbrt(math.Cos(angle)/math.Tan(angle)), true
}
