package treatment

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/say"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// Change tells what a treatment of the front gave: the same hand, without it (before) and with
// it. Pulls are in N, strains and growths in percent, drops in mm.
type Change struct {
	WaistBefore    float64 `json:"waist_pull_before_N"` // of all waist pins together
	WaistAfter     float64 `json:"waist_pull_N"`
	SideBefore     float64 `json:"side_pull_before_N"`
	SideAfter      float64 `json:"side_pull_N"`
	ShoulderBefore float64 `json:"shoulder_pull_before_N"` // cowl points and shoulders
	ShoulderAfter  float64 `json:"shoulder_pull_N"`
	StrainBefore   float64 `json:"max_strain_before_percent"`
	StrainAfter    float64 `json:"max_strain_percent"`
	EdgeBefore     float64 `json:"edge_growth_before_percent"`
	EdgeAfter      float64 `json:"edge_growth_percent"`
	SeamBefore     float64 `json:"shoulder_growth_before_percent"`
	SeamAfter      float64 `json:"shoulder_growth_percent"`
	DropBefore     float64 `json:"edge_drop_before_mm"`
	DropAfter      float64 `json:"edge_drop_mm"`
}

// ChangeOf compares a drape without a treatment, a, with one with it, b.
func ChangeOf(a, b *drape.Run) *Change {
	pull := func(r *drape.Run, pin string) float64 { return r.Drape.PullOf(pin) }
	shoulder := func(r *drape.Run) float64 { return pull(r, "shoulder") + pull(r, "cowl point") }
	p, q := &a.Outcome, &b.Outcome
	strain, edge, seam := measure.Named("max_strain_percent"), measure.Named("edge_growth_percent"),
		measure.Named("shoulder_growth_percent")
	drop := measure.Named("edge_drop_mm")
	return &Change{
		pull(a, "waist"), pull(b, "waist"), pull(a, "side"), pull(b, "side"), shoulder(a), shoulder(b),
		strain.Value(p), strain.Value(q), edge.Value(p), edge.Value(q), seam.Value(p), seam.Value(q), drop.Value(p),
		drop.Value(q),
	}
}

// Changes are what treatments gave, by their names, as far as they were compared.
type Changes map[string]*Change

// Report prints them in the order of the treatments.
func (c Changes) Report(w io.Writer) {
	for _, t := range treatments {
		if r := c[t.name]; r != nil {
			r.report(w, t.head, t.name)
		}
	}
}

// report prints what a treatment gave.
func (r *Change) report(w io.Writer, head, name string) {
	fmt.Fprintf(w, "  %-13swaist pins pull %.2f N together, without the %s %.2f N; side pins %.2f N, without %.2f N; "+
		"shoulder pins %.2f N, without %.2f N\n",
		head, r.WaistAfter, name, r.WaistBefore, r.SideAfter, r.SideBefore, r.ShoulderAfter, r.ShoulderBefore)
	fmt.Fprintf(w, "  %-13syarns change length by %.1f %% at most, without %.1f %%; edge drop %s, without %s\n", "",
		r.StrainAfter, r.StrainBefore, say.Length(r.DropAfter/1000), say.Length(r.DropBefore/1000))
	fmt.Fprintf(w, "  %-13sedge hangs %s than cut, without %s; shoulders %s, without %s\n", "", longer(r.EdgeAfter),
		longer(r.EdgeBefore), longer(r.SeamAfter), longer(r.SeamBefore))
}

// longer says how a length has changed, in percent.
func longer(growth float64) string {
	if growth < 0 {
		return fmt.Sprintf("%.1f %% shorter", -growth)
	}
	return fmt.Sprintf("%.1f %% longer", growth)
}
