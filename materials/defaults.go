package materials

import "fmt"

// Defaults for what a fabric file leaves out. Only weight and bending have none.
const (
	DefaultShear    = 30.0   // N/m, about 0.53 gf/(cm·deg); common for dress-weight wovens, from memory
	DefaultTensile  = 2000.0 // N/m, within the 500–3500 N/m of the library fabrics with a published pull test
	DefaultFriction = 0.3    // cloth on a jersey-covered form, from memory 0.2–0.5
	DefaultRub      = 0.4    // cloth on cloth, from memory 0.3–0.6 for wovens; more than on a smooth cover
	DefaultDensity  = 436.0  // kg/m³, median of the library fabrics with a published thickness
)

// LoopOverBend is the KES 2HB over B, 1/m, where B is of the same test and its
// loop is not told: of the means of 214 suitings of winter and of summer
// (S. Kawabata, The Standardization and Analysis of Hand Evaluation, 2nd ed.,
// 1980, constants of KN-101; from memory). The three library fabrics with a
// published loop have 37, 49 and 105. KES reads B as a slope between two
// curvatures, beyond the loop, so without it cloth bends too easily. A
// cantilever feels both at once: its B needs no loop.
const LoopOverBend = 45.8

// fillDefaults sets every field that is still without evidence and flags it.
// Weight and both bendings must be set.
func fillDefaults(f *Fabric) {
	fill := func(q Field, v float64, kind Kind, how string) {
		if f.Basis[q].Kind == Unknown {
			*quantities[q].at(f) = v
			f.Basis[q] = Evidence{kind, how}
		}
	}
	fill(BendBias, PeirceBias(f.BendWarp, f.BendWeft), Assumed, "Peirce–Cooper rule from warp and weft, ±40 %")
	fill(Shear, DefaultShear, Assumed, fmt.Sprintf("default %g N/m", DefaultShear))
	fill(TensileWarp, DefaultTensile, Assumed, fmt.Sprintf("default %g N/m", DefaultTensile))
	fill(TensileWeft, DefaultTensile, Assumed, fmt.Sprintf("default %g N/m", DefaultTensile))
	fill(Thickness, f.Weight/DefaultDensity, Assumed, fmt.Sprintf("weight over %g kg/m³", DefaultDensity))
	fill(Friction, DefaultFriction, Assumed, fmt.Sprintf("default %g", DefaultFriction))
	fill(FrictionCloth, DefaultRub, Assumed, fmt.Sprintf("default %g", DefaultRub))
	fill(BendFriction, 0, Assumed, "none, as no loop was measured")
	fill(ShearFriction, 0, Assumed, "none, as no loop was measured")
	fill(BendSoftening, 0, Assumed, "none, as no curve was measured")
	fill(ShearLock, 0, Assumed, "none, as no locking angle was measured")
}
