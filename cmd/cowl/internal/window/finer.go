//go:build cgo

package window

import (
	"fmt"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// finest returns the spacing to which the cloth of s is carried on at rest, m; that of s
// where it is too small to be halved.
func finest(s *style.Style) float64 {
	j := s.Job(draft.Cowl{}, nil)
	j.Fine = true
	return j.FinestSpacing()
}

// setSpacing sets the spacing of the lattice, m. One that is too small to be halved is as
// fine as can be waited for, and is not refused for being refined besides.
func (a *App) setSpacing(v float64) {
	a.change("the lattice", "", func(s *style.Style) error {
		_, fine := s.Hang.Lattice()
		err := s.Set("spacing", v, "")
		s.Hang.Fine = fine && finest(s) < s.Hang.Spacing
		return err
	})
}

// setFine says whether cloth at rest is refined.
func (a *App) setFine(on bool) {
	a.change("the finer lattice", "", func(s *style.Style) error {
		s.OnLook()
		return s.Set("fine", float64(index(on)), "")
	})
}

// finerBox asks for finer lattices at rest, where there are any.
func (a *App) finerBox(c *panel.Column) {
	s := &a.pane().Style
	from, on := s.Hang.Lattice()
	to := finest(s)
	c.Gap(4)
	if to >= from {
		c.Text("So close it is not halved once more at rest.", panel.Small, true)
		return
	}
	if a.ui.Check("refine", c.Next(28), "Finer lattice at rest",
		"What has come to rest is refined beside what is seen, as by cowl drape --fine; a hand finds it as quick as before.",
		on) != on {
		a.setFine(!on)
	}
	c.Text(fmt.Sprintf("Carried on to %s, for figures: that takes one core a minute or more.", a.units.Apart(to)), panel.Small, true)
}

// waitWords say what is waited for: rest, or a finer lattice at rest; empty where that is nothing.
func (p *Pane) waitWords() string {
	if p.frame.Refining && p.look == nil && !p.stale() {
		return "Finer figures follow; touch it as before"
	}
	return p.timeLeft()
}
