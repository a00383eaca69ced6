//go:build cgo

package window

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fold"
)

// caution stands under every figure.
const caution = "A prediction is not a toile: cut a test in real cloth before cutting the good one."

// rightSide holds the readings and the section.
func (a *App) rightSide(r panel.Rect) {
	if r.Empty() {
		return
	}
	u, p := a.ui, a.pane()
	u.Fill(r.Left(1/a.scale), u.Theme.Rule)
	in := r.Shrunk(16, 0)
	a.settling(in.Top(64), p)
	low := in.Bottom(in.H * 0.46)
	note := low.Bottom(40)
	for i, line := range u.Wrap(caution, note.W, panel.Small) {
		u.Words(line, note.X, note.Y+12+16*float64(i), 0, panel.Small, u.Theme.Soft)
	}
	u.Fill(panel.Rect{X: r.X, Y: low.Y, W: r.W, H: 1 / a.scale}, u.Theme.Rule)
	a.section(low, p)
	in.W -= 6
	u.Scroll("readings", in, func(c *panel.Column) { a.readings(c, p) })
}

// settling tells how far the cloth is from rest.
func (a *App) settling(r panel.Rect, p *Pane) {
	u := a.ui
	word := upper(stageWords(p))
	if d := p.doubt(); d != nil && p.failed() {
		word = d.head
	} else if p.dummy != nil && p.live != nil && !p.resting() {
		word += " …"
	}
	if back := a.backWords(p); back != "" {
		u.Words(u.Fit(back, r.W, panel.Title), r.X, r.Y+30, 0, panel.Title, u.Theme.Ink)
		return
	}
	u.Words(u.Fit(word, r.W, panel.Title), r.X, r.Y+30, 0, panel.Title, u.Theme.Ink)
	u.Bar(panel.Rect{X: r.X, Y: r.Y + 42, W: r.W, H: 6}, restShare(p))
	if left := p.waitWords(); left != "" {
		u.Words(u.Fit(left, r.W, panel.Small), r.X, r.Y+62, 0, panel.Small, u.Theme.Soft)
	}
	if res := p.frame.Residual; res > 0 && res < 1 && p.frame.Stage != drape.StagePlacing && !p.stale() && !p.failed() {
		text := fmt.Sprintf("out of balance %.2g %%", res*100)
		wide := u.Width(text, panel.Small)
		u.Words(text, r.X+r.W, r.Y+30, 1, panel.Small, u.Theme.Soft)
		u.Hint("balance", panel.Rect{X: r.X + r.W - wide, Y: r.Y + 16, W: wide, H: 20},
			"All forces that are not yet in balance, against the weight of the cloth. At rest it is a tenth of a percent or "+
				"less.")
	}
}

// restShare turns the residual into a share of the way to rest: each tenth part
// of the unbalanced force is a third of it.
func restShare(p *Pane) float64 {
	res := p.frame.Residual
	switch {
	case p.stale() || p.failed():
		return 0
	case p.frame.Stage == drape.StageRest:
		return 1
	case res <= 0 || math.IsNaN(res) || p.frame.Stage == drape.StagePlacing:
		return 0
	}
	return balanceShare(res)
}

// readings are the figures of the drape, the leading one first.
func (a *App) readings(c *panel.Column, p *Pane) {
	o := &p.view().Outcome
	if d := p.doubt(); d != nil && p.look == nil {
		a.doubtBox(c, p, d)
	}
	switch {
	case p.look != nil && !p.look.Read:
		c.Text("No figures were read at this moment.", panel.Plain, true)
		return
	case p.look != nil:
	case p.stale() && p.frame.Read:
		c.Text("These are still the figures of before the change.", panel.Small, true)
	case !p.frame.Read && p.failed():
		return
	case !p.frame.Read:
		c.Gap(10)
		c.Text("The figures follow when the hand lets go of the cloth.", panel.Plain, true)
		return
	}
	if p.view().Carried {
		c.Text("Changed as it hung. Again (A) places it from the flat: trust those figures first.", panel.Small, true)
	}
	c.Dull = !p.figures()
	for i, g := range measure.InWindow {
		if i == 1 { // after the edge
			a.foldReadings(c, p)
		}
		c.Heading(p.says(g.Title))
		for _, f := range g.Told(o) {
			name, v := f.Window.Pick(f.SI(o))
			if f.OnForm {
				v = max(v, 0) // what lies in the form stands off by nothing
			}
			c.Pair(p.says(name), a.withSpread(p, f, v))
		}
	}
	c.Gap(4)
	c.Text(fmt.Sprintf("%d points, %s apart; hand %d", o.Nodes, a.units.Apart(o.Spacing), o.Seed), panel.Small, true)
	if text := measure.HalvedIn(a.units, o); text != "" {
		c.Text(p.says("Refined, "+text), panel.Small, true)
	}
	c.Dull = false
	if p.look == nil {
		a.fiveControls(c, "five", p)
	}
	c.Gap(8)
}

// foldReadings lists the folds with the numbers they carry in the views.
func (a *App) foldReadings(c *panel.Column, p *Pane) {
	o := &p.view().Outcome
	n, below := 0, 0
	c.Heading(p.says(plural(o.FoldCount, "cowl fold") + " above the bust"))
	if o.Laid > 0 {
		c.Text(fmt.Sprintf("%d laid: %d kept, %d extra", o.Laid, o.Kept, o.Extra), panel.Plain, false)
		c.Gap(2)
	}
	for i := range o.Folds {
		f := &o.Folds[i]
		if f.Zone != fold.AboveBust {
			below++
			continue
		}
		n++
		c.Pair(fmt.Sprintf("%d   %s deep", n, foldFigure(a.units, measure.Depth, f)),
			foldFigure(a.units, measure.Down, f)+" down")
		c.Text(foldWords(a.units, o, f), panel.Small, true)
	}
	if below > 0 {
		c.Text(p.says(plural(below, "ripple")+" below the bust, not counted"), panel.Small, true)
	}
}

// foldWords says how wide a fold is, and who laid it where.
func foldWords(u Units, o *drape.Outcome, f *drape.Fold) string {
	text := foldFigure(u, measure.Wide, f) + " wide"
	switch {
	case f.Kept:
		return text + ", laid at " + foldFigure(u, measure.LaidDown, f)
	case o.Laid > 0:
		return text + "; nobody laid it"
	}
	return text
}
