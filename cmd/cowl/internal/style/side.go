package style

import (
	"errors"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/mesh/limit"
)

// Form builds the form that the piece hangs before: that of the body b, turned for a back
// cowl. Errors are those of form.FromBody.
func (s *Style) Form(b body.Body) (*form.Form, error) {
	f, err := form.FromBody(b)
	if err == nil && s.Cut.Worn == draft.AtBack {
		f = f.Turned()
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
