//go:build cgo

package window

import (
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// standTab changes what is done on the stand after the piece is cut.
func (a *App) standTab(r panel.Rect) {
	r.W -= 6
	a.ui.Scroll("stand", r, func(c *panel.Column) {
		s := a.pane().Style.Stand
		c.Heading("Trim")
		a.numberSlider(c, control{"lower", "the edge lower by", "Edge lower by",
			"Cut the edge lower, square to the centre front; the cowl point moves down the shoulder."}, s.Lower)
		a.numberSlider(c, control{"take_in", "the side taken in by", "Side taken in by",
			"Cut surplus off the side seam at the waist, running to nothing at the underarm."}, s.TakeIn)
		c.Heading("Release slashes, both halves")
		for _, k := range seams {
			a.slashSliders(c, k)
		}
		a.drawnControls(c)
		c.Heading("Sewn on")
		a.numberSlider(c, control{"weight", "the weight", "Weight in facing",
			"A covered weight or chain inside the facing pulls the cowl down; 5 to 15 g is usual."}, s.Weight)
		a.stays(c)
		c.Gap(6)
		if a.ui.Button("stand/none", c.Next(panel.RowHeight), "Take all of it back",
			"Leaves the piece as it was cut; undo brings it again.") {
			a.change("the work on the stand", "", func(s *style.Style) error {
				s.Stand, s.Trims = draft.DefaultStand(), nil
				return nil
			})
		}
		c.Gap(6)
		a.leanControls(c)
		a.effect(c) // last: it comes and goes
		c.Gap(10)
	})
}

// slashSliders are length and place of a slash. The place of none is dull, so that
// nothing moves under the mouse that draws a slash.
func (a *App) slashSliders(c *panel.Column, k seam) {
	long, at := k.slash(&a.pane().Style.Stand)
	s := a.slider(a.pane().limits(k.name), control{k.name, "the " + k.lower(), k.word, k.help})
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), *long); ch != panel.Same {
		a.slashTo(k, v)
		a.sealIf(ch)
	}
	a.numberSliderIf(*long > 0, c, control{k.name + "_at", "the place of the " + k.lower(), "Its place on the seam",
		k.where}, *at)
}

// slashTo sets the length of a slash, m. A new one begins where the seam lets it
// in: half-way along the waist the dart is in its way.
func (a *App) slashTo(k seam, v float64) {
	a.change("the "+k.lower(), k.name, func(s *style.Style) error {
		long, at := k.slash(&s.Stand)
		if *long == 0 {
			*at = openPlace(*s, k, max(v, usualSlash))
		}
		return s.Set(k.name, v, "")
	})
}

// usualSlash is how far a new slash must be able to grow, m.
const usualSlash = 0.05

// drawnControls say what the mouse draws on the flat piece, and take the last
// trim back.
func (a *App) drawnControls(c *panel.Column) {
	c.Heading("Drawn on the flat piece")
	row := c.Next(panel.RowHeight)
	if a.flat {
		a.draws = a.ui.Choice("draw", row, drawNames, drawHelps, a.draws)
	} else if a.ui.Button("stand/flat", row, "Show the flat piece", "To draw slashes and trims on it. Key D.") {
		a.flat = true
	}
	c.Gap(4)
	c.Text(drawHelps[a.draws], panel.Small, true)
	c.Gap(4)
	n := len(a.pane().Style.Trims)
	label := "Take the last trim back"
	if n > 1 {
		label = "Take the last of " + plural(n, "trim") + " back"
	}
	if a.ui.ButtonIf(n > 0, "stand/trim", c.Next(panel.RowHeight), label,
		"The line drawn last is forgotten, and the cloth is there again.") {
		a.change("a trim taken back", "", func(s *style.Style) error { s.Trims = s.Trims[:n-1]; return nil })
	}
}

// stays are tapes that keep an edge from stretching.
func (a *App) stays(c *panel.Column) {
	s := a.pane().Style.Stand
	for _, k := range []struct {
		id, word, help string
		at             func(*draft.Stand) *bool
	}{
		{"stay_shoulder", "Stay tape in the shoulders", "A tape along both shoulder seams, which then do not stretch.",
			func(s *draft.Stand) *bool { return &s.StayShoulder }},
		{"stay_edge", "Stay tape along the edge", "A tape in the fold of the cowl edge, which then does not stretch.",
			func(s *draft.Stand) *bool { return &s.StayEdge }},
	} {
		was := *k.at(&s)
		if on := a.ui.Check(k.id, c.Next(28), k.word, k.help, was); on != was {
			a.change("the "+strings.ToLower(k.word), "", func(s *style.Style) error { *k.at(&s.Stand) = on; return nil })
		}
	}
}
