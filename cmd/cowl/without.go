package main

import (
	"errors"
	"fmt"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// treatment is one that a drape can be compared without.
type treatment struct {
	name    string // as in "without the slashes"
	head    string // of its rows in the report
	always  bool   // compared unasked
	has     func(*hung) bool
	without func(*hung) (draft.Cowl, error) // the front without it
}

// treatments are those there are, in the order of the report.
var treatments = []treatment{
	{"slashes", "Released", true, func(h *hung) bool { return len(h.Cowl.Releases) > 0 },
		onCowl(func(p *draft.Cowl) { p.Releases = nil })},
	{"pleats", "Pleated", false, func(h *hung) bool { return len(h.Cowl.Pleats) > 0 },
		onStyle(func(s *style.Style) { s.Cut.Pleats = 0 })},
	{"stays", "Stayed", false, func(h *hung) bool { return h.Cowl.StayShoulder || h.Cowl.StayEdge },
		onCowl(func(p *draft.Cowl) { p.StayShoulder, p.StayEdge = false, false })},
	{"lowering", "Lowered", false, func(h *hung) bool { return h.Style.Stand.Lower > 0 },
		onStyle(func(s *style.Style) { s.Stand.Lower = 0 })},
	{"taking in", "Taken in", false, func(h *hung) bool { return h.Style.Stand.TakeIn > 0 },
		onStyle(func(s *style.Style) { s.Stand.TakeIn = 0 })},
	{"weight", "Weighted", false, func(h *hung) bool { return h.Cowl.Weight > 0 },
		onCowl(func(p *draft.Cowl) { p.Weight = 0 })},
}

// onCowl takes a treatment off the front that is drafted.
func onCowl(take func(*draft.Cowl)) func(*hung) (draft.Cowl, error) {
	return func(h *hung) (draft.Cowl, error) {
		p := h.Cowl
		take(&p)
		return p, nil
	}
}

// onStyle drafts the front without a treatment.
func onStyle(take func(*style.Style)) func(*hung) (draft.Cowl, error) {
	return func(h *hung) (draft.Cowl, error) {
		s := h.Style.Clone()
		take(&s)
		return s.Cowl()
	}
}

// untreated is the front without a treatment.
type untreated struct {
	name string
	cowl draft.Cowl
}

// compared lists the fronts that h is to be compared with: without its slashes always,
// without the others if that is asked for.
func (h *hung) compared(before bool) ([]untreated, error) {
	var out []untreated
	for _, t := range treatments {
		if !t.has(h) || !t.always && !before {
			continue
		}
		p, err := t.without(h)
		if err != nil {
			return nil, fmt.Errorf("--before: the front without the %s: %w", t.name, err)
		}
		out = append(out, untreated{t.name, p})
	}
	if before && len(out) == 0 {
		return nil, errors.New("--before: this front has no slash, pleat, stay, lowering, taking in or weight to hang it " +
			"without: leave it out, or give it one")
	}
	return out, nil
}

// alike is the style of h for a comparison with p: the hand lays as many folds as h
// shows, or what p feeds, and nothing is shaken or leaned.
func (h *hung) alike(p draft.Cowl) style.Style {
	s := h.Style
	s.Hang.Folds = min(h.Run.Outcome.Laid, s.Job(p, h.Form).FoldsThatFit())
	s.Hang.Shake, s.Hang.Lean = false, 0
	return s
}
