package treatment

import (
	"errors"
	"fmt"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/form"
)

// treatment is one that a drape can be compared without.
type treatment struct {
	name    string // as in "without the slashes"
	head    string // of its rows in the report
	always  bool   // compared unasked
	has     func(style.Style, draft.Cowl) bool
	without func(style.Style, draft.Cowl) (draft.Cowl, error) // the front without it
}

// treatments are those there are, in the order of the report.
var treatments = []treatment{
	{"slashes", "Released", true, func(_ style.Style, p draft.Cowl) bool { return len(p.Releases) > 0 },
		onCowl(func(p *draft.Cowl) { p.Releases = nil })},
	{"pleats", "Pleated", false, func(_ style.Style, p draft.Cowl) bool { return len(p.Pleats) > 0 },
		onStyle(func(s *style.Style) { s.Cut.Pleats = 0 })},
	{"stays", "Stayed", false, func(_ style.Style, p draft.Cowl) bool { return p.StayShoulder || p.StayEdge },
		onCowl(func(p *draft.Cowl) { p.StayShoulder, p.StayEdge = false, false })},
	{"lowering", "Lowered", false, func(s style.Style, _ draft.Cowl) bool { return s.Stand.Lower > 0 },
		onStyle(func(s *style.Style) { s.Stand.Lower = 0 })},
	{"taking in", "Taken in", false, func(s style.Style, _ draft.Cowl) bool { return s.Stand.TakeIn > 0 },
		onStyle(func(s *style.Style) { s.Stand.TakeIn = 0 })},
	{"weight", "Weighted", false, func(_ style.Style, p draft.Cowl) bool { return p.Weight > 0 },
		onCowl(func(p *draft.Cowl) { p.Weight = 0 })},
}

// onCowl takes a treatment off the front that is drafted.
func onCowl(take func(*draft.Cowl)) func(style.Style, draft.Cowl) (draft.Cowl, error) {
	return func(_ style.Style, p draft.Cowl) (draft.Cowl, error) {
		take(&p)
		return p, nil
	}
}

// onStyle drafts the front without a treatment.
func onStyle(take func(*style.Style)) func(style.Style, draft.Cowl) (draft.Cowl, error) {
	return func(s style.Style, _ draft.Cowl) (draft.Cowl, error) {
		s = s.Clone()
		take(&s)
		return s.Cowl()
	}
}

// Untreated is a front without one of its treatments.
type Untreated struct {
	Name string // of the treatment, as in "without the slashes"
	Cowl draft.Cowl
}

// Compared lists the fronts that p, the front of s, is to be compared with: without its slashes
// always, without the others if that is asked for.
func Compared(s style.Style, p draft.Cowl, before bool) ([]Untreated, error) {
	var out []Untreated
	for _, t := range treatments {
		if !t.has(s, p) || !t.always && !before {
			continue
		}
		q, err := t.without(s, p)
		if err != nil {
			return nil, fmt.Errorf("the front without the %s: %w", t.name, err)
		}
		out = append(out, Untreated{t.name, q})
	}
	if before && len(out) == 0 {
		return nil, errors.New("this front has no slash, pleat, stay, lowering, taking in or weight to hang it " +
			"without: leave it out, or give it one")
	}
	return out, nil
}

// Alike is the style s for a comparison on the form f: the hand lays so many folds, as the drape
// with the treatment shows, or what u feeds, and nothing is shaken or leaned.
func (u Untreated) Alike(s style.Style, f *form.Form, laid int) style.Style {
	s.Hang.Folds = min(laid, s.Job(u.Cowl, f).FoldsThatFit())
	s.Hang.Shake, s.Hang.Lean = false, 0
	return s
}
