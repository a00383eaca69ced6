package materials

import "fmt"

// Defaults for what a fabric file leaves out. Only weight and bending have none.
const (
	DefaultShear    = 30.0   // N/m, about 0.53 gf/(cm·deg); common for dress-weight wovens, from memory
	DefaultPull     = 2000.0 // N/m, within the 500–3500 N/m of the library fabrics with a published pull test
	DefaultFriction = 0.3    // cloth on a jersey-covered form, from memory 0.2–0.5
	DefaultDensity  = 436.0  // kg/m³, median of the library fabrics with a published thickness
)

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
	fill(PullWarp, DefaultPull, Assumed, fmt.Sprintf("default %g N/m", DefaultPull))
	fill(PullWeft, DefaultPull, Assumed, fmt.Sprintf("default %g N/m", DefaultPull))
	fill(Thickness, f.Weight/DefaultDensity, Assumed, fmt.Sprintf("weight over %g kg/m³", DefaultDensity))
	fill(Friction, DefaultFriction, Assumed, fmt.Sprintf("default %g", DefaultFriction))
	fill(BendFriction, 0, Assumed, "none, as no loop was measured")
	fill(ShearFriction, 0, Assumed, "none, as no loop was measured")
}
