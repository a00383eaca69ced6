package style

import (
	"math"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/sim/drape"
)

const mostSeed = math.MaxUint32

// MostPlacings is how many hands may place a cloth.
const MostPlacings = 99

// Ranges returns the numbers of cut, stand and hang with what each may be by
// itself. Those of the stand and of the edge are there if the front can be cut.
func (s *Style) Ranges() []limit.Range {
	block, _ := s.block()
	out := append(s.Cut.Ranges(block), s.Hang.ranges()...)
	if p, err := s.flat(block); err == nil {
		out = append(out, s.Stand.Ranges(p)...)
	}
	if p, err := s.treated(nil); err == nil {
		if r, err := s.Job(p, nil).EdgeRange(); err == nil {
			out = append(out, r)
		}
	}
	return out
}

func (h Hang) ranges() []limit.Range {
	spacing, _ := h.Lattice()
	return []limit.Range{
		{Field: "spacing", Value: spacing, Lo: drape.Finest, Hi: drape.Coarsest, Unit: limit.Small,
			Why: limit.Say("%.0f for a look, finer for figures; below that the lattice is as fine as the yarns, above it "+
				"the facing cannot roll", limit.Of(Look, limit.Small))},
		{Field: "folds", Value: math.Max(0, float64(h.Folds)), Lo: 0, Hi: drape.MostFolds, Unit: limit.Count,
			Why: limit.Say("or auto, which tries how many the cloth keeps; 0 lets it fall")},
		drape.LeanRange(h.Lean),
		{Field: "placings", Value: float64(h.Placings), Lo: 1, Hi: MostPlacings, Unit: limit.Count,
			Why: limit.Say("1 for a look, 5 or more to see the spread; each takes as long as the first")},
	}
}

// Check returns an error if the hang is out of range; Wearer, Cowl and Fits check
// the rest.
func (s *Style) Check() error {
	return s.located(limit.Check(s.Hang.ranges()))
}

// refuse says what the draft could not tell: a number that is no whole one
// where one is wanted, and one below zero, by which the draft means auto.
func (f Field) refuse(v float64) error {
	name := f.spoken()
	switch {
	case f.Name == "size" && (v != math.Trunc(v) || v < 0):
		return limit.Errorf(name, "size %g, want an even size %d–%d, a whole one of a chart of your own, or auto: the "+
			"chart's line at the bust", v, body.SmallestSize, body.LargestSize)
	case f.Name == "height" && v <= 0:
		return limit.Errorf(name, "height %v, want %.0f", limit.Metres(v), limit.Between(body.LeastHeight, body.MostHeight,
			limit.Length))
	case f.kind == count && f.auto && (v != math.Trunc(v) || v < 0):
		return limit.Errorf(name, "%s %g, want a whole number from 0 to %d, or auto", name, v, drape.MostFolds)
	case f.kind == count && (v != math.Trunc(v) || v < 0 || v > mostSeed):
		return limit.Errorf(name, "%s %g, want a whole number from 0 to %d", name, v, uint64(mostSeed))
	case f.kind == share && !f.auto && !(v >= 0 && v <= 1):
		return limit.Errorf(name, "%s %g, want 0–1: a share of the seam", name, v)
	case f.kind == share && !(v >= 0 && v <= 1):
		return limit.Errorf(name, "%s %g, want 0–1, or auto: 0 leaves the dart open, 1 closes it, auto closes as much as "+
			"the extension needs", name, v)
	case f.Name == "spacing" && v < 0:
		return limit.Errorf(name, "spacing %v, want %.0f, or auto: by the cloth", limit.Metres(v),
			limit.Between(drape.Finest, drape.Coarsest, limit.Small))
	case f.Name == "edge_depth":
		return nil // above the neck is below 0
	case f.auto && v < 0:
		return limit.Errorf(name, "%s %v, want %.0f, or auto for what closing the dart gives: cloth can only be added",
			name, limit.Metres(v), limit.Between(0, draft.MostExtension, limit.Length))
	}
	return nil
}

// Set overrides a value by its name in the file without the unit, SI; from is
// the flag it came from. An unknown name panics.
func (s *Style) Set(name string, v float64, from string) error {
	return s.set(named(name), v, from)
}

// SetFlag overrides the value of a flag, which is named without its hyphens, SI. An unknown
// one panics.
func (s *Style) SetFlag(name string, v float64) error { return s.set(Flag(name), v, "--"+name) }

func (s *Style) set(f Field, v float64, from string) error {
	s.from[f.spoken()] = from
	if !(f.auto && v == draft.Auto) {
		if err := f.refuse(v); err != nil {
			return s.located(err)
		}
	}
	f.set(s, v)
	if f.group == "body" && f.Name == "bust" {
		s.scaled(from)
	}
	return nil
}
