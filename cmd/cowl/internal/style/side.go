package style

import (
	"errors"
	"sync"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/limit"
)

// FormOf returns the form of the body b, turned for a piece worn at its back. Errors are
// those of form.FromBody.
func FormOf(b body.Body, worn draft.Side) (*form.Form, error) {
	f, err := built.of(b)
	if err == nil && worn == draft.AtBack {
		f = f.Turned()
	}
	return f, err
}

// kept is the form built last: most styles of a run hang on one body, and a form takes
// most of a second.
type kept struct {
	sync.Mutex
	body body.Body
	form *form.Form // nil: none is built
}

var built kept

// of returns the form of a body, the same one where it was built last.
func (k *kept) of(b body.Body) (*form.Form, error) {
	k.Lock()
	defer k.Unlock()
	if k.form != nil && k.body == b {
		return k.form, nil
	}
	f, err := form.FromBody(b)
	if err == nil {
		k.body, k.form = b, f
	}
	return f, err
}

// autoStrap leaves the strap to the rule of draft.Cowl.Slips.
const autoStrap draft.Strapping = draft.Auto

// Strapped returns the strap of the piece p of s, nil for none: as asked for, else one where
// the neck would fall off the shoulders.
func (s *Style) Strapped(p draft.Cowl) (*draft.Strap, error) {
	kind := s.Strap
	if kind == autoStrap {
		kind = draft.NoStrap
		if p.Slips() {
			kind = draft.Strapped
		}
	}
	strap, err := p.StrapOf(kind)
	return strap, s.placed(err)
}

// checkSide refuses what a cowl at its side cannot be cut with.
func (s *Style) checkSide() error {
	if s.Cut.Worn != draft.AtBack {
		_, err := draft.Cowl{}.StrapOf(max(s.Strap, draft.NoStrap))
		return s.placed(err)
	}
	var errs []error
	if s.Points != nil {
		errs = append(errs, limit.Errorf("block", "block of your own, but the side is back: a block is read as a front; "+
			"leave it out and give measurements, or give the whole back cowl as a piece"))
	}
	if s.Closure == draft.BackOpen {
		errs = append(errs, limit.Errorf("closure",
			"closure back, but the side is back: a slit would cut the cowl in two; want side, shoulder or none"))
	}
	return s.placed(errors.Join(errs...))
}
