package drafted

import (
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/draft"
)

// biasGrowth is how much a length on true bias may grow in 24 to 48 hours of hanging, at
// most: common practice, no published source, from memory, not computed. That bias grows and
// is left to hang before it is hemmed is printed everywhere; by how much was looked for and
// found nowhere. Remembered is up to an inch or two on a skirt, some 5 % of its length. That
// other grains grow by sin²(2g), g the angle to the warp, is assumed: it is the share of the
// shear in the stretch of a strip, sin²g cos²g / G, and nothing is known of growth.
const biasGrowth = 0.05

// Aged is the band in which a front may lie after 24 to 48 hours; nothing of it is
// computed by hanging. Growth is in percent, the others in mm, each least and most.
type Aged struct {
	Rule   string     `json:"rule"`
	Growth [2]float64 `json:"growth_percent"`
	// of the edge alone in an upright plane; not of one that is taped
	Edge [2]float64 `json:"edge_drop_more_mm,omitzero"`
	Hem  [2]float64 `json:"hem_lower_mm,omitzero"` // at the centre front; where the hem hangs free
}

const agedRule = "common practice, no published source, from memory, not computed: " +
	"true bias grows by 0 to 5 % in 24 to 48 hours, other grains by sin²(2 × grain) of that"

// AgedOf is the band of the front p; nil: it is cut on the straight grain, of which nothing
// of the kind is told.
func AgedOf(p draft.Cowl) *Aged {
	s := math.Sin(2 * p.Grain)
	growth := biasGrowth * s * s
	if growth < 0.001 {
		return nil
	}
	out := &Aged{Rule: agedRule, Growth: [2]float64{0, 100 * growth}}
	if !p.StayEdge {
		longer := p
		longer.HalfEdge *= 1 + growth
		now, _ := Bounds(p)
		then, _ := Bounds(longer)
		out.Edge = [2]float64{0, say.MM(then - now)}
	}
	if p.Hem > 0 {
		out.Hem = [2]float64{0, say.MM(growth * (p.Report().CFLength + p.Hem))}
	}
	return out
}

// Report prints the band in a row of its own.
func (a *Aged) Report(row func(name, format string, args ...any)) {
	if a == nil {
		return
	}
	text := "the edge is held by its tape"
	if a.Edge[1] > 0 {
		text = "the edge drops " + say.Length(0) + " to " + say.Length(a.Edge[1]/1000) + " more, alone in an upright plane"
	}
	if a.Hem[1] > 0 {
		text += "; the hem hangs up to " + say.Length(a.Hem[1]/1000) + " lower at the centre front"
	}
	row("After 48 h", "NOT COMPUTED: %s", text)
	row("", "%s", a.Rule)
}
