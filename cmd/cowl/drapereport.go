package main

import (
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"cowl/sim"
	"cowl/sim/fold"
	"cowl/sim/study"
)

// resultJSON is result.json: the outcome and the bounds of the draft.
type resultJSON struct {
	study.Outcome
	DropCurve float64 `json:"edge_drop_curve_mm"` // below the shoulder neck points, of an edge free of the form: hanging curve
	DropV     float64 `json:"edge_drop_v_mm"`     // the same for a V
}

// result returns what result.json holds.
func (h *hung) result() resultJSON {
	curve, v := h.bounds()
	return resultJSON{h.run.Outcome, curve * 1000, v * 1000}
}

// bounds returns how far below the shoulder neck points the edge of the flat
// piece would hang free of the form, m: in a hanging curve and in a V.
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
	curve, v := h.bounds()
	fmt.Fprintf(w, "%s, for %s, in %s\n\n", h.style.Name, wearer(h.style), h.style.Fabric)
	row("Status", "%s", h.verdict())
	row("Folds", "%s", counted(o))
	for _, f := range o.Folds {
		row("", "%3.0f mm deep, %.1f cm down the centre front, %.1f cm above the waist, %s", f.Depth, f.CF/10, f.Height/10, f.Zone)
	}
	row("Edge drop", "%.1f cm below the shoulder neck points%s", o.EdgeDrop/10, spread(o))
	row("", "an edge free of the form hangs %.1f cm (hanging curve) to %.1f cm (V)", cm(curve), cm(v))
	row("", "%.1f cm below the front neck point", o.EdgeBelowNeck/10)
	if !o.Free {
		row("Stand-off", "%.0f mm from the form at the edge; the front reaches %.1f cm ahead of the form", noMinus(o.StandOff), o.Forward/10)
	}
	row("Balance", "left and right differ by %.1f mm, the edge lies %.1f mm to the wearer's %s", math.Abs(o.Twist), math.Abs(o.Drift), hand(o.Drift))
	row("Cloth", "centre front %+.1f %% in length, largest strain %.1f %%, wrong side seen %.1f cm²", noMinus(o.CFGrowth), o.MaxStrain, o.WrongSide/100)
	row("Softness", "%s, %.0f %% of the stored energy in shear", softness(o), o.ShearShare*100)
	row("Pins", "largest pull %.2f N, moved at most %.0f mm off the seam", o.PinPull, o.PinSlip)
	row("Solved", "residual %.1e of the weight, %d nodes at %.1f mm, %d steps, %.1f s", o.Residual, o.Nodes, o.Spacing, o.Iterations, h.took.Seconds())
	fmt.Fprintf(w, "\n%s\n", caution)
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
func counted(o study.Outcome) string {
	text := fmt.Sprintf("%d above the bust", o.FoldCount)
	if o.Placings > 1 {
		text += fmt.Sprintf(" in %.0f %% of %d placings; in the one shown", o.CountShare*100, o.Placings)
	}
	return text
}

// spread tells how far the placings agree on the drop of the edge.
func spread(o study.Outcome) string {
	if o.Placings < 2 {
		return ""
	}
	return fmt.Sprintf("; %.1f ± %.1f cm over %d placings", o.EdgeDropMean/10, o.EdgeDropSpan/10, o.Placings)
}

// softness tells how the folds turn.
func softness(o study.Outcome) string {
	if o.FoldRadius == 0 {
		return fmt.Sprintf("kinks %d", o.Kinks)
	}
	return fmt.Sprintf("smallest radius of a fold %.1f mm, kinks %d", o.FoldRadius, o.Kinks)
}

// hand names the side of the wearer.
func hand(left float64) string {
	if left < 0 {
		return "right"
	}
	return "left"
}

// deepest returns the depth of the deepest fold above the bust, mm; 0: none.
func deepest(o study.Outcome) float64 {
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
	curve, v := h.bounds()
	folds := "Folds: " + counted(o)
	if d := deepest(o); d > 0 {
		folds += fmt.Sprintf(", the deepest %.0f mm", d)
	}
	lines := []string{
		h.style.Name,
		fmt.Sprintf("%s; cut for %s, extension %.1f cm a half, cowl point %.1f cm, facing %.1f cm, grain %.0f°",
			h.style.Fabric.Title, wearer(h.style), o.Extension/10, o.CowlPoint/10, o.Facing/10, o.Grain),
		folds,
		fmt.Sprintf("Edge drop %.1f cm below the neck points%s", o.EdgeDrop/10, spread(o)),
		fmt.Sprintf("Free of the form: %.1f cm (hanging curve) to %.1f cm (V)", cm(curve), cm(v)),
		fmt.Sprintf("%s; residual %.1e, lattice %.1f mm, seed %d", upper(h.verdict()), o.Residual, o.Spacing, o.Seed),
	}
	return append(lines, caution)
}
