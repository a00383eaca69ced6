//go:build cgo

package window

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape"
)

// turnSteps is the number of angles less one.
const turnSteps = 6

// turnGrain starts the demonstration, or ends it.
func (a *App) turnGrain() {
	if a.turning != nil {
		a.turning = nil
		a.say("The grain stays where it is.")
		return
	}
	a.past.Record(a.state(), "the grain demonstration", "")
	a.shownDrops = nil
	a.turning = &turning{pane: a.pane(), step: -1}
	a.nextAngle()
}

// nextAngle asks for the next angle, or ends after the last.
func (a *App) nextAngle() {
	t := a.turning
	t.step++
	if t.step > turnSteps {
		a.turning = nil
		a.say("The grain has gone from 0 to 90°. Undo brings the grain from before back.")
		return
	}
	p := t.pane
	s := p.Style.Clone()
	if err := s.Set("grain", 90*degree*float64(t.step)/turnSteps, ""); err != nil {
		a.complain(err)
		a.turning = nil
		return
	}
	p.Style = s
	if err := a.mount(p); err != nil {
		a.complain(err)
		a.turning = nil
		return
	}
	t.asked = p.frame.Serial
	p.touched(a.now)
}

// watchTurning reads the drop when the cloth rests, and goes on.
func (a *App) watchTurning() {
	t := a.turning
	if t == nil {
		return
	}
	p := t.pane
	if p.asked.refused != nil {
		a.turning = nil
		return
	}
	want := 90 * float64(t.step) / turnSteps
	if p.frame.Serial == t.asked || !p.resting() || !p.frame.Read || math.Abs(p.frame.Job.Cowl.Grain/degree-want) > 1e-6 {
		return
	}
	a.shownDrops = append(a.shownDrops, drop{want, p.frame.Outcome.EdgeDrop, p.frame.Stage == drape.StageRest})
	a.nextAngle()
}

// grainDemonstration is the button and the chart of drop against angle.
func (a *App) grainDemonstration(c *panel.Column) {
	u := a.ui
	c.Heading("Turn the grain")
	label := "Turn from 0 to 90°"
	if a.turning != nil {
		label = fmt.Sprintf("Stop at %.0f°", 90*float64(a.turning.step)/turnSteps)
	}
	if u.Button("turn", c.Next(panel.RowHeight), label,
		"Hangs the cut at seven angles of the grain and draws the edge drop against the angle.") {
		a.turnGrain()
	}
	c.Gap(8)
	if len(a.shownDrops) == 0 && a.turning == nil {
		c.Text("The cloth comes to rest at every angle; that takes a while. A 12 to 15 mm lattice (under Cut) is enough "+
			"to see it.", panel.Small, true)
		return
	}
	a.dropChart(c.Next(190))
	c.Text("Edge drop against grain, one placing each: a lower point is a deeper drop. The bars are what another hand "+
		"moves it by, "+
		"some 6 mm, twice the standard deviation of five hands: where bars overlap, the difference says nothing. A "+
		"hollow point did not come to rest.", panel.Small, true)
}

// spreadOfHands is by how much the drop of one placing may be off, m: twice the
// standard deviation of five hands, which was 1.9 to 3.9 mm at five angles (made-up cloth, two
// folds laid, 8 mm, see sim/README.md).
const spreadOfHands = 0.006

// dropChart draws the drops read so far, deeper ones lower, as they hang. Its height is
// never less than 2 cm, so that scatter does not look like an effect.
func (a *App) dropChart(r panel.Rect) {
	u := a.ui
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, d := range a.shownDrops {
		lo, hi = min(lo, d.edge), max(hi, d.edge)
	}
	if lo > hi {
		lo, hi = 0.10, 0.12
	}
	mid, half := (lo+hi)/2, max((hi-lo)/2*1.25, 0.01)+spreadOfHands
	head := r.Top(18)
	u.Words("Edge drop, lower is deeper", head.X, head.Y+13, 0, panel.Small, u.Theme.Ink)
	foot := r.Bottom(18)
	field := panel.Rect{X: r.X + 50, Y: r.Y + 6, W: r.W - 66, H: r.H - 30}
	u.Words(a.says("grain to the centre front"), field.X+field.W/2, foot.Y+12, 0.5, panel.Small, u.Theme.Ink)
	at := func(d drop) panel.Point {
		return panel.Point{X: field.X + field.W*d.angle/90, Y: field.Y + field.H*(d.edge-mid+half)/(2*half)}
	}
	a.dropAxes(field, func(v float64) float64 { return at(drop{edge: v}).Y }, mid, half)
	var line []panel.Point
	for _, d := range a.shownDrops {
		line = append(line, at(d))
		deep, high := at(drop{angle: d.angle, edge: d.edge + spreadOfHands}),
			at(drop{angle: d.angle, edge: d.edge - spreadOfHands})
		u.Stroke([]panel.Point{high, deep}, 1.4, u.Theme.Soft)
		for _, end := range []panel.Point{high, deep} {
			u.Stroke([]panel.Point{{X: end.X - 4, Y: end.Y}, {X: end.X + 4, Y: end.Y}}, 1.4, u.Theme.Soft)
		}
	}
	u.Stroke(line, 1.5, u.Theme.Ink)
	for _, d := range a.shownDrops {
		u.Disc(at(d), 4, u.Theme.Accent)
		if !d.rest {
			u.Disc(at(d), 2.5, u.Theme.Ground)
		}
	}
}

// dropAxes draws what drops and angles are read off by.
func (a *App) dropAxes(field panel.Rect, at func(float64) float64, mid, half float64) {
	u := a.ui
	for i := range 3 {
		v := mid + (half-spreadOfHands)*float64(i-1)
		u.Fill(panel.Rect{X: field.X, Y: at(v), W: field.W, H: 1 / a.scale}, u.Theme.Rule)
		u.Words(a.units.Length(v), field.X-6, at(v)+4, 1, panel.Small, u.Theme.Soft)
	}
	for i := range 4 {
		g := 30 * float64(i)
		u.Words(fmt.Sprintf("%.0f°", g), field.X+field.W*g/90, field.Y+field.H+18, 0.5, panel.Small, u.Theme.Soft)
	}
}
