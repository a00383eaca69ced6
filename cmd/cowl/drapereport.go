package main

import (
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// resultJSON is result.json: the outcome and the bounds of the draft.
type resultJSON struct {
	drape.Outcome
	DropCurve float64 `json:"edge_drop_curve_mm"` // below the shoulder neck points, of the edge hung alone in an upright plane: hanging curve
	DropV     float64 `json:"edge_drop_v_mm"`     // the same for a V

	Treatment *treatmentJSON `json:"treatment,omitempty"`

	// What release slashes gave; pleats and stays, if it was asked for.
	Release *changeJSON `json:"release,omitempty"`
	Pleats  *changeJSON `json:"pleats,omitempty"`
	Stays   *changeJSON `json:"stays,omitempty"`
}

// result returns what result.json holds.
func (h *hung) result() resultJSON {
	curve, v := h.bounds()
	return resultJSON{
		h.run.Outcome, curve * 1000, v * 1000, treatmentOf(h.style, h.piece),
		h.changes["slashes"], h.changes["pleats"], h.changes["stays"],
	}
}

// bounds returns how far below the shoulder neck points the edge of the flat
// piece would hang alone in an upright plane, m: in a hanging curve and in a V.
func (h *hung) bounds() (curve, v float64) {
	r := h.piece.Report()
	down := h.piece.Block.Neck.Y - h.piece.Block.CowlPoint(h.piece.CowlPoint).Y
	return down + r.DropChain, down + r.DropV
}

// report prints the outcome for people. Lengths over 1 cm are centimetres.
func (h *hung) report(w io.Writer) {
	o := h.run.Outcome
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	fmt.Fprintf(w, "%s, for %s, in %s\n\n", h.style.Name, wearer(h.style), h.style.Fabric)
	treatmentOf(h.style, h.piece).report(row)
	row("Status", "%s", h.verdict())
	row("Cowl folds", "%s", counted(o))
	for _, f := range zone(o, fold.AboveBust) {
		row("", "%s", f)
	}
	below := zone(o, fold.BelowBust)
	row("Other folds", "%d below the bust", len(below))
	for _, f := range below {
		row("", "%s", f)
	}
	row("Edge drop", "%.1f cm below the shoulder neck points%s", o.EdgeDrop/10, spread(o))
	row("", "%s the front neck point", belowOrAbove(o.EdgeBelowNeck))
	row("", "%s", h.boundsText())
	if !o.Free {
		row("Stand-off", "edge %.0f mm off the form; the front reaches %.1f cm ahead of the form", noMinus(o.StandOff), noMinus(o.Forward/10))
	}
	row("Balance", "left and right differ by %.1f mm; the edge lies %.1f mm to the wearer's %s", math.Abs(o.Twist), math.Abs(o.Drift), hand(o.Drift))
	row("Cloth", "centre front hangs %s than cut; yarns change length by %.1f %% at most; wrong side seen %.1f cm²", longer(o.CFGrowth), o.MaxStrain, o.WrongSide/100)
	row("Seams", "edge hangs %s than cut, at worst 3 cm of it %s; shoulders %s, at worst %s%s",
		longer(o.EdgeGrowth), longer(o.EdgeStretch), longer(o.ShoulderGrow), longer(o.ShoulderMost), taped(o))
	row("Softness", "%s", softness(o))
	row("Pins", "the hardest pulled carries %.0f g; moved at most %.0f mm off the seam", o.PinPull/gravity*1000, o.PinSlip)
	for _, name := range []string{"slashes", "pleats", "stays"} {
		if r := h.changes[name]; r != nil {
			r.report(w, name)
		}
	}
	row("Computed", "forces balance to %.2f %% of the weight; %d points %.1f mm apart, %d steps, %.0f s", o.Residual*100, o.Nodes, o.Spacing, o.Iterations, h.took.Seconds())
	fmt.Fprintf(w, "\n%s\n", caution)
}

// gravity turns a pull into the weight that pulls as hard, m/s².
const gravity = 9.80665

// zone describes the folds on one side of the bust.
func zone(o drape.Outcome, z fold.Zone) []string {
	var lines []string
	for _, f := range o.Folds {
		if f.Zone == string(z) {
			lines = append(lines, fmt.Sprintf("%3.0f mm deep, %.1f cm down the centre front, %.1f cm above the waist", f.Depth, f.CF/10, f.Height/10))
		}
	}
	return lines
}

// boundsText tells what the edge would do alone, and why it does not.
func (h *hung) boundsText() string {
	curve, v := h.bounds()
	text := fmt.Sprintf("alone in an upright plane it would hang %.1f cm (curve) to %.1f cm (V)", cm(curve), cm(v))
	if h.run.Outcome.EdgeDrop/1000 < curve {
		text += "; here it also runs forward, so it drops less"
	}
	return text
}

// belowOrAbove places the edge, in mm below a point.
func belowOrAbove(below float64) string {
	if below < 0 {
		return fmt.Sprintf("%.1f cm above", -below/10)
	}
	return fmt.Sprintf("%.1f cm below", below/10)
}

// longer says how a length has changed, in percent.
func longer(growth float64) string {
	if growth < 0 {
		return fmt.Sprintf("%.1f %% shorter", -growth)
	}
	return fmt.Sprintf("%.1f %% longer", growth)
}

// taped says what the stay tapes carry.
func taped(o drape.Outcome) string {
	if o.TapePull == 0 {
		return ""
	}
	return fmt.Sprintf("; stay tape carries %.0f g at most", o.TapePull/gravity*1000)
}

// verdict says how the drape ended, and whether the other placings came to rest.
func (h *hung) verdict() string {
	o := h.run.Outcome
	switch n := h.restless(); {
	case o.Status != sim.Settled:
		return fmt.Sprintf("NOT SETTLED (%s): %s", o.Status, o.Warning)
	case n > 0:
		return fmt.Sprintf("settled; NOT SETTLED: %d of the %d placings, which count and spread include", n, o.Placings)
	}
	return "settled"
}

// restless counts the placings that did not come to rest.
func (h *hung) restless() int {
	n := 0
	for _, o := range h.run.Each {
		if o.Status != sim.Settled {
			n++
		}
	}
	return n
}

// counted says how many folds lie above the bust, and how sure that is.
func counted(o drape.Outcome) string {
	text := fmt.Sprintf("%d above the bust", o.FoldCount)
	if o.Placings > 1 {
		text += fmt.Sprintf(" in %.0f %% of %d placings; in the one shown", o.CountShare*100, o.Placings)
	}
	return text
}

// spread tells how far the placings agree on the drop of the edge.
func spread(o drape.Outcome) string {
	if o.Placings < 2 {
		return ""
	}
	return fmt.Sprintf("; %.1f ± %.1f cm over %d placings", o.EdgeDropMean/10, o.EdgeDropSpan/10, o.Placings)
}

// softness tells how the folds turn.
func softness(o drape.Outcome) string {
	text := fmt.Sprintf("sharp bends down the centre front: %d", o.Kinks)
	if o.FoldRadius > 0 {
		text = fmt.Sprintf("tightest cowl fold turns on a radius of %.1f mm; ", o.FoldRadius) + text
	}
	return text
}

// hand names the side of the wearer.
func hand(left float64) string {
	if left < 0 {
		return "right"
	}
	return "left"
}

// deepest returns the depth of the deepest fold above the bust, mm; 0: none.
func deepest(o drape.Outcome) float64 {
	most := 0.0
	for _, f := range o.Folds {
		if f.Zone == string(fold.AboveBust) {
			most = max(most, f.Depth)
		}
	}
	return most
}

// upper begins a line with a capital.
func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// list names the files that were written.
func (d drapeCmd) list(c console, files []output) {
	var names []string
	for _, f := range files {
		names = append(names, f.name)
	}
	fmt.Fprintf(c.out, "Wrote to %s: %s\n", filepath.Clean(d.Out), strings.Join(names, ", "))
}

// caption returns the words under the picture.
func (h *hung) caption() []string {
	o := h.run.Outcome
	folds := "Cowl folds: " + counted(o)
	if d := deepest(o); d > 0 {
		folds += fmt.Sprintf(", the deepest %.0f mm", d)
	}
	lines := []string{
		h.style.Name,
		fmt.Sprintf("%s; cut for %s, extension %.1f cm a half, cowl point %.1f cm, facing %.1f cm, grain %.0f°",
			h.style.Fabric.Title, wearer(h.style), o.Extension/10, o.CowlPoint/10, o.Facing/10, o.Grain),
		fmt.Sprintf("%s; other folds: %d below the bust", folds, len(zone(o, fold.BelowBust))),
		fmt.Sprintf("Edge drop: %.1f cm below the shoulder neck points%s; %s", o.EdgeDrop/10, spread(o), h.boundsText()),
		fmt.Sprintf("%s; forces balance to %.2f %% of the weight, lattice %.1f mm, seed %d", upper(h.verdict()), o.Residual*100, o.Spacing, o.Seed),
	}
	return append(lines, caution)
}
