package materials

import "math"

// GravityLength returns c = (B/(W g))^(1/3) in m for the mean of warp and weft
// rigidity: the bending length of the strip test (F. T. Peirce, "The 'Handle'
// of Cloth as a Measurable Quantity", J. Textile Inst. 21, 1930), below which
// the cloth is stiff and above which it falls.
func (f Fabric) GravityLength() float64 {
	return BendingLength((f.BendWarp+f.BendWeft)/2, f.Weight)
}

// FrictionLength returns L0 = √(2HB/(W g)) in m: the friction of bending alone holds
// an overhang of this length flat, as its moment of weight W g L0²/2 is that of the
// friction. 0 where the fabric has none.
func (f Fabric) FrictionLength() float64 {
	return math.Sqrt(2 * f.BendFriction / (f.Weight * Gravity))
}

// BendingLength returns c = (B/(W g))^(1/3) in m, from B in N·m and the areal
// mass W in kg/m².
func BendingLength(bend, weight float64) float64 {
	return math.Cbrt(bend / (weight * Gravity))
}

// BendFromLength returns B = W g c³ in N·m, the inverse of BendingLength. The
// length of overhang in the 41.5° strip test is twice c (ISO 9073-7).
func BendFromLength(length, weight float64) float64 {
	return weight * Gravity * length * length * length
}

// PeirceBias returns the bending rigidity at 45° from warp and weft rigidity,
// 1/√B45 = (1/√B1 + 1/√B2)/2: the rule of yarns that cross freely, known by
// the names of Peirce and Cooper (recalled; D. N. E. Cooper, J. Textile Inst.
// 51, 1960, T317). Cantilever data of 251 fabrics (Feng et al., ACM Trans.
// Graph. 41(6), 2022) hold it in the median with a scatter of ±40 %, so a
// measured value is always to be preferred.
func PeirceBias(bendWarp, bendWeft float64) float64 {
	m := (1/math.Sqrt(bendWarp) + 1/math.Sqrt(bendWeft)) / 2
	return 1 / (m * m)
}

// minTwist is the least twisting rigidity over √(Bu·Bv). One fabric in ten has
// a bias rigidity below (Bu+Bv)/4, which a plate cannot have.
const minTwist = 0.05

// Twist returns the twisting rigidity D66 = B45 − (Bu+Bv)/4 of the orthotropic
// plate in N·m, held at 0.05·√(Bu·Bv) or more, and whether it had to be held.
func (f Fabric) Twist() (d66 float64, clamped bool) {
	least := minTwist * math.Sqrt(f.BendWarp*f.BendWeft)
	d66 = f.BendBias - (f.BendWarp+f.BendWeft)/4
	if d66 < least {
		return least, true
	}
	return d66, false
}
