package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// changeJSON tells what a treatment of the front gave: the same hand, without
// it and with it.
type changeJSON struct {
	WaistBefore    float64 `json:"waist_pull_before_N"` // of all waist pins together
	WaistAfter     float64 `json:"waist_pull_N"`
	SideBefore     float64 `json:"side_pull_before_N"`
	SideAfter      float64 `json:"side_pull_N"`
	ShoulderBefore float64 `json:"shoulder_pull_before_N"` // cowl points and shoulders
	ShoulderAfter  float64 `json:"shoulder_pull_N"`
	StrainBefore   float64 `json:"max_strain_before_percent"`
	StrainAfter    float64 `json:"max_strain_percent"`
	EdgeBefore     float64 `json:"edge_growth_before_percent"`
	EdgeAfter      float64 `json:"edge_growth_percent"`
	SeamBefore     float64 `json:"shoulder_growth_before_percent"`
	SeamAfter      float64 `json:"shoulder_growth_percent"`
	DropBefore     float64 `json:"edge_drop_before_mm"`
	DropAfter      float64 `json:"edge_drop_mm"`
}

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
func (d drapeVerb) compared(h *hung) ([]untreated, error) {
	var out []untreated
	for _, t := range treatments {
		if !t.has(h) || !t.always && !d.Before {
			continue
		}
		p, err := t.without(h)
		if err != nil {
			return nil, fmt.Errorf("--before: the front without the %s: %w", t.name, err)
		}
		out = append(out, untreated{t.name, p})
	}
	if d.Before && len(out) == 0 {
		return nil, errors.New("--before: this front has no slash, pleat, stay, lowering, taking in or weight to hang it " +
			"without: " +
			"leave it out, or give it one")
	}
	return out, nil
}

// compare hangs the piece again without each of the treatments, as many folds laid as in h.
func (d drapeVerb) compare(ctx context.Context, c console.Console, h *hung, without []untreated) error {
	h.changes = map[string]*changeJSON{}
	for _, t := range without {
		other := *h
		other.Cowl, other.Style = t.cowl, h.alike(t.cowl)
		if err := d.hang(ctx, c, &other); err != nil {
			return err
		}
		h.changes[t.name] = changeOf(other.Run, h.Run)
	}
	return nil
}

// alike is the style of h for a comparison with p: the hand lays as many folds as h
// shows, or what p feeds, and nothing is shaken or leaned.
func (h *hung) alike(p draft.Cowl) style.Style {
	s := h.Style
	s.Hang.Folds = min(h.Run.Outcome.Laid, s.Job(p, h.Form).FoldsThatFit())
	s.Hang.Shake, s.Hang.Lean = false, 0
	return s
}

// changeOf compares a drape without a treatment, a, with one with it, b.
func changeOf(a, b *drape.Run) *changeJSON {
	pull := func(r *drape.Run, pin string) float64 { return r.Drape.PullOf(pin) }
	shoulder := func(r *drape.Run) float64 { return pull(r, "shoulder") + pull(r, "cowl point") }
	p, q := &a.Outcome, &b.Outcome
	strain, edge, seam := measure.Named("max_strain_percent"), measure.Named("edge_growth_percent"),
		measure.Named("shoulder_growth_percent")
	return &changeJSON{
		pull(a, "waist"), pull(b, "waist"), pull(a, "side"), pull(b, "side"), shoulder(a), shoulder(b),
		strain.Value(p), strain.Value(q), edge.Value(p), edge.Value(q), seam.Value(p), seam.Value(q), edgeDrop.Value(p),
		edgeDrop.Value(q),
	}
}

// report prints what a treatment gave.
func (r *changeJSON) report(w io.Writer, head, name string) {
	fmt.Fprintf(w, "  %-13swaist pins pull %.2f N together, without the %s %.2f N; side pins %.2f N, without %.2f N; "+
		"shoulder pins %.2f N, without %.2f N\n",
		head, r.WaistAfter, name, r.WaistBefore, r.SideAfter, r.SideBefore, r.ShoulderAfter, r.ShoulderBefore)
	fmt.Fprintf(w, "  %-13syarns change length by %.1f %% at most, without %.1f %%; edge drop %s, without %s\n", "",
		r.StrainAfter, r.StrainBefore, say.Length(r.DropAfter/1000), say.Length(r.DropBefore/1000))
	fmt.Fprintf(w, "  %-13sedge hangs %s than cut, without %s; shoulders %s, without %s\n", "", longer(r.EdgeAfter),
		longer(r.EdgeBefore), longer(r.SeamAfter), longer(r.SeamBefore))
}

// longer says how a length has changed, in percent.
func longer(growth float64) string {
	if growth < 0 {
		return fmt.Sprintf("%.1f %% shorter", -growth)
	}
	return fmt.Sprintf("%.1f %% longer", growth)
}
