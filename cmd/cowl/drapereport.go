package main

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/treatment"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fold"
)

// resultJSON is result.json: the outcome and what follows it.
type resultJSON struct {
	outcome *drape.Outcome
	after   boundsJSON
	worn    draft.Side
}

// MarshalJSON writes one object, its keys those of the side.
func (r resultJSON) MarshalJSON() ([]byte, error) {
	b, err := measure.JSON(r.outcome, r.after)
	return []byte(sided.Keys(string(b), r.worn)), err
}

// boundsJSON holds the bounds of the draft and what was done to the front.
type boundsJSON struct {
	Worn string `json:"side,omitempty"` // back; else the front
	// below the shoulder neck points, of the edge hung alone in an upright plane: hanging curve
	DropCurve float64 `json:"edge_drop_curve_mm"`
	DropV     float64 `json:"edge_drop_v_mm"` // the same for a V

	Treatment *treatment.Figures `json:"treatment,omitempty"`
	Strap     *drafted.Strap     `json:"strap,omitempty"` // of a back cowl; drawn, not hung

	// What release slashes gave; the others, if it was asked for.
	Release  *treatment.Change `json:"release,omitempty"`
	Pleats   *treatment.Change `json:"pleats,omitempty"`
	Stays    *treatment.Change `json:"stays,omitempty"`
	Lowering *treatment.Change `json:"lowering,omitempty"`
	TakingIn *treatment.Change `json:"taking_in,omitempty"`
	Weight   *treatment.Change `json:"weight,omitempty"`

	Aged *drafted.Aged `json:"after_48_h_not_computed,omitempty"` // on the bias alone
}

// result returns what result.json holds.
func (h *hung) result() resultJSON {
	curve, v := drafted.Bounds(h.Cowl)
	return resultJSON{&h.Run.Outcome, boundsJSON{
		sided.Key(h.Cowl.Worn), curve * 1000, v * 1000, treatment.Of(h.Style, h.Cowl), drafted.StrapOf(h.Style, h.Cowl),
		h.changes["slashes"], h.changes["pleats"], h.changes["stays"],
		h.changes["lowering"], h.changes["taking in"], h.changes["weight"],
		drafted.AgedOf(h.Cowl),
	}, h.Cowl.Worn}
}

// report prints the outcome for people.
func (h *hung) report(w io.Writer) {
	o := &h.Run.Outcome
	fmt.Fprintf(w, "%s, for %s, in %s\n\n", h.Style.Name, h.Style.ForWhom(), h.Style.Fabric)
	w = sided.To(w, h.Cowl.Worn)
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	treatment.Of(h.Style, h.Cowl).Report(row)
	drafted.StrapOf(h.Style, h.Cowl).Report(row)
	row("Status", "%s", h.verdict())
	if o.Laid > 0 {
		row("Laid", "%s", laidText(o))
	}
	if len(o.Tried) > 1 {
		for _, t := range o.Tried {
			row("", "%s", tryText(t))
		}
	}
	reportFolds(row, o)
	row(dropTitle(o), "%s the shoulder neck points%s", dropText(o), spread(o))
	row("", "%s the front neck point", belowOrAbove(o))
	row("", "%s", h.boundsText())
	if text := takenText(o); text != "" {
		row("Taken up", "%s", text)
	}
	for _, g := range measure.InReport {
		line := g.Line(o)
		if g.Title == "Softness" && line != "" {
			line += measure.Sharpness(o)
		}
		if line != "" {
			row(g.Title, "%s", line)
		}
	}
	h.changes.Report(w)
	drafted.AgedOf(h.Cowl).Report(row)
	name := "Lean"
	for _, text := range measure.LeanLines(o) {
		row(name, "%s", text)
		name = ""
	}
	if text := measure.Halved(o); text != "" {
		row("Halved", "%s", text)
	}
	row("Computed", "%s, %.0f s", measure.Say(o,
		"forces balance to {residual} of the weight; {nodes} points {spacing_mm} apart, {iterations} steps"),
		h.took.Seconds())
	fmt.Fprintf(w, "\n%s\n", say.Caution)
}

// reportFolds prints the folds above the bust and the others.
func reportFolds(row func(name, format string, args ...any), o *drape.Outcome) {
	above, below := zone(o, fold.AboveBust), zone(o, fold.BelowBust)
	row("Cowl folds", "%s", counted(o))
	for _, f := range above {
		row("", "%s", foldText(f))
	}
	row("Other folds", "%d below the bust", len(below))
	for _, f := range below {
		row("", "%s", foldText(f))
	}
}

// dropTitle and dropText say how far the edge lies below the shoulder neck points, or
// has risen above them.
func dropTitle(o *drape.Outcome) string {
	if o.EdgeDrop < 0 {
		return "Edge rise"
	}
	return "Edge drop"
}

func dropText(o *drape.Outcome) string {
	if v := edgeDrop.Value(o); v < 0 {
		return edgeDrop.Amount(-v) + " above"
	}
	return edgeDrop.Amount(edgeDrop.Value(o)) + " below"
}

// takenText tells how the edge was set where it was wanted; empty: it was not.
func takenText(o *drape.Outcome) string {
	if !o.SetEdge {
		return ""
	}
	set := fmt.Sprintf(", to set the edge %s below the front neck point", say.Length(o.EdgeDepth))
	if o.EdgeDepth < 0 {
		set = fmt.Sprintf(", to set the edge %s above the front neck point", say.Length(-o.EdgeDepth))
	}
	switch {
	case o.Taken == 0:
		return "nothing; the edge hangs where it was wanted by itself"
	case o.Taken < 0:
		return fmt.Sprintf("%s was let down out of the allowance at either cowl point", say.Length(-o.Taken)) + set
	}
	return fmt.Sprintf("%s of either half edge lies over the shoulder", say.Length(o.Taken)) + set
}

// boundsText tells what the edge would do alone, and why it does not.
func (h *hung) boundsText() string {
	curve, v := drafted.Bounds(h.Cowl)
	text := fmt.Sprintf("alone in an upright plane it would hang %s (curve) to %s (V)", say.Length(curve), say.Length(v))
	if h.Run.Outcome.EdgeDrop < curve {
		text += "; here it also runs forward, so it drops less"
	}
	return text
}

// belowOrAbove places the edge against the front neck point.
func belowOrAbove(o *drape.Outcome) string {
	f := measure.Named("edge_below_neck_mm")
	if v := f.Value(o); v < 0 {
		return f.Amount(-v) + " above"
	}
	return measure.Say(o, "{edge_below_neck_mm} below")
}

// verdict says how the drape ended, and whether the other placings came to rest.
func (h *hung) verdict() string {
	o := h.Run.Outcome
	switch n := h.restless(); {
	case o.Status != sim.Settled:
		return fmt.Sprintf("NOT SETTLED (%s): %s", o.Status, o.Warning)
	case n > 0:
		return fmt.Sprintf("settled; NOT SETTLED: %d of the %d placings, which count and spread include", n, o.Placings)
	case o.Warning != "":
		return "settled; WARNING: " + o.Warning
	}
	return "settled"
}

// restless counts the placings that did not come to rest.
func (h *hung) restless() int {
	n := 0
	for _, o := range h.Run.Each {
		if o.Status != sim.Settled {
			n++
		}
	}
	return n
}

// spread tells how far the placings agree on the drop of the edge.
func spread(o *drape.Outcome) string {
	if o.Placings < 2 {
		return ""
	}
	mean, deviation := measure.Named("edge_drop_mean_mm").Value(o), measure.Named("edge_drop_spread_mm").Value(o)
	return "; " + edgeDrop.Spread(mean, deviation, o.Placings) + " " + edgeDrop.People().Sign +
		measure.Say(o, " over {placings} placings")
}

// caption returns the words under the picture.
func (h *hung) caption() []string {
	o := &h.Run.Outcome
	folds := "Cowl folds: " + counted(o)
	if len(zone(o, fold.AboveBust)) > 0 {
		folds += measure.Say(o, ", the deepest {deepest_fold_mm}")
	}
	if o.Laid > 0 {
		folds += "; " + tryText(o.Try())
	}
	lines := []string{
		fmt.Sprintf("%s; cut for %s, ", h.Style.Fabric.Title, h.Style.ForWhom()) +
			measure.Say(o, "extension {extension_mm} a half, cowl point {cowl_point_mm}, facing {facing_mm}, grain {grain_deg}"),
		fmt.Sprintf("%s; other folds: %d below the bust", folds, len(zone(o, fold.BelowBust))),
		fmt.Sprintf("%s: %s the shoulder neck points%s; %s", dropTitle(o), dropText(o), spread(o), h.boundsText()),
		ruler.Capital(h.verdict()) + measure.Say(o, "; forces balance to {residual} of the weight, lattice {spacing_mm}") +
			fmt.Sprintf(", seed %d", o.Seed),
	}
	lines = sided.Names{h.Style.Fabric.Title}.Strings(lines, h.Cowl.Worn)
	return append(append([]string{h.Style.Name}, lines...), say.Caution)
}
