package drape

import (
	"fmt"

	"cowl/sim"
)

// What is told of a drape that rests but cannot be true to cloth.
const (
	// settled is the residual above which a drape is no result.
	settled = 1e-3
	// overstretched is the growth of edge or seam above which a piece does not fit.
	overstretched = 0.05
	// bearable is the strain of a yarn above which nothing of it is believed. A woven
	// cloth without elastane breaks at some 10 to 30 % (from memory), and the fabrics
	// are measured below 1 %.
	bearable = 0.10
	// tightest is the least radius of the form that cloth lies on, that of the neck, m.
	tightest = 0.06
)

// sunk is how far inside the form cloth may lie, m: a millimetre, and by as much as a
// chord of the spacing misses the roundest part of it, h²/8r.
func sunk(spacing float64) float64 { return 1e-3 + spacing*spacing/(8*tightest) }

// doubt takes the word "settled" from a drape that is no result.
func (o *Outcome) doubt() {
	switch {
	case o.Status != sim.Settled:
		o.Warning = "the cloth has not come to rest: figures and picture show a moment, not a drape"
	case o.Pierced > 0:
		o.Status, o.Warning = sim.StepLimit, "layers of cloth pass through each other: try a finer spacing or another seed"
	case o.MaxStrain > knot:
		o.Status, o.Warning = sim.StepLimit, "a spot of the cloth has crumpled into a knot: try a finer spacing or "+
			"another seed"
	case o.Residual > settled:
		o.Status, o.Warning = sim.StepLimit, "the forces are not in balance: try again with another seed or spacing"
	case o.MaxStrain > bearable:
		o.Warning = fmt.Sprintf("yarns change length by up to %.0f %%, which no woven cloth bears: a finer spacing, "+
			"deeper pleats, or a limper cloth to turn into its facing", 100*o.MaxStrain)
	case o.Inside > sunk(o.Spacing):
		o.Warning = fmt.Sprintf("the cloth lies up to %.1f mm inside the form, %.1f mm may be put down to the spacing: "+
			"try a finer one", 1000*o.Inside, 1000*sunk(o.Spacing))
	case o.EdgeGrowth > overstretched:
		o.Warning = fmt.Sprintf("the edge is stretched by %.0f %%: it is too short to lie there; a wider extension lets "+
			"it fall", 100*o.EdgeGrowth)
	case o.ShoulderGrow > overstretched:
		o.Warning = fmt.Sprintf("the shoulder seams are stretched by %.0f %%: the piece is too small for the form",
			100*o.ShoulderGrow)
	}
}
