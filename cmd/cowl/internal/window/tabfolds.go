//go:build cgo

package window

import (
	"fmt"
	"math"
	"strconv"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// foldsTab says how the cloth is laid.
func (a *App) foldsTab(r panel.Rect) {
	r.W -= 6
	a.ui.Scroll("folds", r, func(c *panel.Column) {
		a.foldsChoice(c)
		a.waistChoice(c)
		a.openControls(c)
		c.Gap(10)
	})
}

// leastOffered is the largest number of folds that is always offered: one that does
// not fit is refused with the reason.
const leastOffered = 4

// foldsChoice chooses how many folds the hand lays.
func (a *App) foldsChoice(c *panel.Column) {
	p := a.pane()
	c.Heading("Folds laid")
	fit, auto := p.foldsFit()
	most := max(leastOffered, fit, p.Style.Hang.Folds)
	names := []string{"auto"}
	for n := range most + 1 {
		names = append(names, strconv.Itoa(n))
	}
	helps := []string{
		"As many as the draft asks for, else two if they fit; cowl drape tries one to four and shows what the cloth keeps.",
		"No hand lays folds: the cloth falls as it will.",
		a.says("The hand lays so many down the centre front, and lets go."),
	}
	on := p.Style.Hang.Folds - drape.Auto
	if k := a.ui.Choice("laid", c.Next(panel.RowHeight), names, helps, on); k != on {
		a.setNumber("folds", float64(k+drape.Auto), "the folds laid", "")
	}
	c.Gap(4)
	if fit >= 0 {
		c.Text(fmt.Sprintf("Auto lays %d here. There is cloth for %d at most; a wider extension feeds more.", auto, fit),
			panel.Small, true)
	}
}

// foldsFit returns how many folds the cloth of the pane feeds, and how many auto
// lays; below 0 while there is no form.
func (p *Pane) foldsFit() (most, auto int) {
	if p.dummy == nil {
		return -1, -1
	}
	j := p.job()
	return j.FoldsThatFit(), j.AutoFolds()
}

// waistChoice says how the waist is held.
func (a *App) waistChoice(c *panel.Column) {
	c.Heading("Waist")
	was := a.pane().Style.Held()
	helps := []string{"Pinned at the side seams only, as it is worn: between them the waist hangs free.",
		"Pinned all round, as on the stand.", "Nowhere: the cowl hangs from shoulders and underarms, and the side seams " +
			"hang with the other piece."}
	w := drape.Waist(a.ui.Choice("waist", c.Next(panel.RowHeight), []string{"At the sides", "All round", "Free"}, helps,
		int(was)))
	if w != was {
		a.setNumber("waist", float64(w), "how the waist is held", "")
	}
	c.Gap(4)
}

// openControls say how deep the edge lies.
func (a *App) openControls(c *panel.Column) {
	p := a.pane()
	c.Heading("How open")
	falls := p.Style.Hang.EdgeDepth == draft.Auto
	r := p.limits("edge_depth")
	v := p.Style.Hang.EdgeDepth
	if falls {
		v = 0
		if p.frame.Read {
			v = math.Round(p.frame.Outcome.EdgeBelowNeck*1000) / 1000
		}
		v = max(r.Lo, min(r.Hi, v))
	}
	if got := a.ui.Check("edge/falls", c.Next(28), "As it falls",
		"The edge lies where cloth and extension let it; else it is set to the depth below.", falls); got != falls {
		to := v
		if got {
			to = draft.Auto
		}
		a.setNumber("edge_depth", to, "how open the edge is", "")
	}
	a.numberSlider(c, control{"edge_depth", "how open the edge is", "Below the front neck point",
		"The cloth is taken up or let down over the cowl points, as it hangs, until the edge rests there."}, v)
	c.Text(openWords(a.units, p), panel.Small, true)
}

// openWords says what setting the edge takes.
func openWords(u Units, p *Pane) string {
	o := &p.frame.Outcome
	switch {
	case p.Style.Hang.EdgeDepth == draft.Auto:
		return ""
	case !p.resting():
		return "It is set when the cloth has come to rest, and looked at again."
	case !p.frame.Read:
		return ""
	}
	text := fmt.Sprintf("%s of either half edge lies over the shoulder. The flat piece stays as cut.", u.Length(o.Taken))
	switch {
	case o.Taken == 0:
		text = "As cut."
	case o.Taken < 0:
		text = fmt.Sprintf("%s let down out of the allowance at either cowl point.", u.Length(-o.Taken))
	}
	if off := math.Abs(o.EdgeBelowNeck - p.Style.Hang.EdgeDepth); off > drape.EdgeNear {
		text += fmt.Sprintf(" Set as often as is tried, the edge still rests %s off.", u.Small(off))
	}
	return text
}
