//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// try drafts a style and sees whether it can be hung. The form is nil where it is
// still being made; what cannot be hung on it the walk tells then.
func (a *App) try(s *style.Style) (draft.Cowl, *dummy, error) {
	if err := s.Check(); err != nil {
		return draft.Cowl{}, nil, err
	}
	p, err := s.Cowl()
	if err == nil && a.opt.Afford != nil {
		err = a.opt.Afford(*s, p, len(a.panes))
	}
	if err != nil {
		return p, nil, err
	}
	w, err := standingOf(s)
	if err != nil {
		return p, nil, err
	}
	d := a.dummies.get(w, func(w standing, d *dummy, err error) {
		a.post(func(a *App) { a.made(w, d, err) })
	})
	if d == nil {
		return p, nil, nil
	}
	return p, d, s.Fits(p, d.form)
}

// begin hangs what the window opens with.
func (a *App) begin() {
	for _, p := range a.panes {
		if err := a.mount(p); err != nil {
			a.complain(err)
		}
	}
}

// mount drafts the style of a pane and hangs it, as soon as its form is made.
func (a *App) mount(p *Pane) error {
	piece, form, err := a.try(&p.Style)
	if err != nil {
		return err
	}
	p.cowl, p.dummy, p.ranges = piece, form, nil
	if form != nil {
		p.hang()
	}
	return nil
}

// made takes a finished form in, and hangs what waited for it.
func (a *App) made(w standing, d *dummy, err error) {
	delete(a.dummies.begun, w)
	if err != nil {
		a.complain(err)
		return
	}
	first := len(a.dummies.made) == 0
	a.dummies.made[w] = d
	for _, p := range a.panes {
		if its, err := standingOf(&p.Style); err == nil && its == w && p.dummy == nil {
			p.dummy = d
			p.hang()
		}
	}
	if first {
		a.shape = 0 // frame it
	}
}
