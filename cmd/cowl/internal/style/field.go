package style

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// kind says how the number of a field is written.
type kind int

const (
	length kind = iota // key ends in _mm, _cm or _in
	angle              // key ends in _deg
	share              // 0..1, no unit
	count              // whole number, no unit
	mass               // key ends in _g
)

// field is one number of a style.
type field struct {
	section, name string // name as in the file, without its unit
	kind          kind
	auto          bool // the word auto is allowed and stands for draft.Auto
	get           func(*Style) float64
	set           func(*Style, float64)
	measure       func(*body.Body) *float64 // for the section body
}

// spoken is the name of f in messages.
func (f field) spoken() string { return strings.ReplaceAll(f.name, "_", " ") }

// unit is the unit f is written in by default.
func (f field) unit() string {
	switch {
	case f.kind == angle:
		return "deg"
	case f.kind == mass:
		return "g"
	case f.kind == length && f.name == "spacing":
		return "mm"
	case f.kind == length:
		return "cm"
	}
	return ""
}

// key is the key of f as cowl writes it.
func (f field) key() string {
	if u := f.unit(); u != "" {
		return f.name + "_" + u
	}
	return f.name
}

// fields lists all numbers of a style in the order they are written.
var fields = append(append([]field{{
	section: "body", name: "size", kind: count,
	get: func(s *Style) float64 { return float64(s.Size) }, set: func(s *Style, v float64) { s.Size = int(v) },
}}, measures()...), slices.Concat(cuts(), stands(), hangs())...)

// measures lists the body measurements.
func measures() []field {
	var out []field
	for _, m := range []struct {
		name string
		kind kind
		at   func(*body.Body) *float64
	}{
		{"bust", length, func(b *body.Body) *float64 { return &b.Bust }},
		{"waist", length, func(b *body.Body) *float64 { return &b.Waist }},
		{"hip", length, func(b *body.Body) *float64 { return &b.Hip }},
		{"back_width", length, func(b *body.Body) *float64 { return &b.BackWidth }},
		{"across_front", length, func(b *body.Body) *float64 { return &b.AcrossFront }},
		{"shoulder", length, func(b *body.Body) *float64 { return &b.Shoulder }},
		{"neck", length, func(b *body.Body) *float64 { return &b.Neck }},
		{"bust_dart", length, func(b *body.Body) *float64 { return &b.BustDart }},
		{"armscye_depth", length, func(b *body.Body) *float64 { return &b.ArmscyeDepth }},
		{"nape_to_waist", length, func(b *body.Body) *float64 { return &b.NapeToWaist }},
		{"waist_to_hip", length, func(b *body.Body) *float64 { return &b.WaistToHip }},
		{"shoulder_slope", angle, func(b *body.Body) *float64 { return &b.ShoulderSlope }},
		{"bust_span", length, func(b *body.Body) *float64 { return &b.BustSpan }},
		{"apex_depth", length, func(b *body.Body) *float64 { return &b.ApexDepth }},
	} {
		out = append(out, field{
			section: "body", name: m.name, kind: m.kind, measure: m.at,
			get: func(s *Style) float64 { return *m.at(&s.Body) },
			set: func(s *Style, v float64) { *m.at(&s.Body) = v; s.taken[m.name] = true },
		})
	}
	return out
}

// number is a field that lives in one float64.
func number(section, name string, k kind, at func(*Style) *float64) field {
	return field{section: section, name: name, kind: k,
		get: func(s *Style) float64 { return *at(s) }, set: func(s *Style, v float64) { *at(s) = v }}
}

// cuts lists the numbers of the cut.
func cuts() []field {
	dart := number("cut", "dart_share", share, func(s *Style) *float64 { return &s.Cut.DartShare })
	extension := number("cut", "extension", length, func(s *Style) *float64 { return &s.Cut.Extension })
	dart.auto, extension.auto = true, true
	return []field{dart, extension,
		{section: "cut", name: "slashes", kind: count,
			get: func(s *Style) float64 { return float64(s.Cut.Slashes) }, set: func(s *Style, v float64) { s.Cut.Slashes = int(v) }},
		number("cut", "cowl_point", length, func(s *Style) *float64 { return &s.Cut.CowlPoint }),
		number("cut", "facing", length, func(s *Style) *float64 { return &s.Cut.Facing }),
		number("cut", "grain", angle, func(s *Style) *float64 { return &s.Cut.Grain }),
		number("cut", "trim", length, func(s *Style) *float64 { return &s.Cut.Trim }),
		number("cut", "pleat_depth", length, func(s *Style) *float64 { return &s.Cut.PleatDepth }),
		{section: "cut", name: "pleats", kind: count,
			get: func(s *Style) float64 { return float64(s.Cut.Pleats) }, set: func(s *Style, v float64) { s.Cut.Pleats = int(v) }},
	}
}

// stands lists the numbers of what is done on the stand.
func stands() []field {
	return []field{
		number("stand", "lower", length, func(s *Style) *float64 { return &s.Stand.Lower }),
		number("stand", "take_in", length, func(s *Style) *float64 { return &s.Stand.TakeIn }),
		number("stand", "release_waist_at", share, func(s *Style) *float64 { return &s.Stand.ReleaseWaistAt }),
		number("stand", "release_waist", length, func(s *Style) *float64 { return &s.Stand.ReleaseWaist }),
		number("stand", "release_armhole_at", share, func(s *Style) *float64 { return &s.Stand.ReleaseArmholeAt }),
		number("stand", "release_armhole", length, func(s *Style) *float64 { return &s.Stand.ReleaseArmhole }),
		number("stand", "weight", mass, func(s *Style) *float64 { return &s.Stand.Weight }),
	}
}

// hangs lists the numbers of the hang.
func hangs() []field {
	return []field{
		number("hang", "spacing", length, func(s *Style) *float64 { return &s.Hang.Spacing }),
		{section: "hang", name: "seed", kind: count,
			get: func(s *Style) float64 { return float64(s.Hang.Seed) }, set: func(s *Style, v float64) { s.Hang.Seed = uint64(v) }},
		{section: "hang", name: "placings", kind: count,
			get: func(s *Style) float64 { return float64(s.Hang.Placings) }, set: func(s *Style, v float64) { s.Hang.Placings = int(v) }},
	}
}

const (
	mostSeed     = math.MaxUint32
	mostPlacings = 99
)

// refuse says what the draft could not tell: a number that is no whole one
// where one is wanted, and one below zero, by which the draft means auto.
func (f field) refuse(v float64) error {
	switch {
	case f.kind == count && (v != math.Trunc(v) || v < 0 || v > mostSeed):
		return fmt.Errorf("%s %g, want a whole number from 0 to %d", f.spoken(), v, uint64(mostSeed))
	case f.kind == share && !f.auto && !(v >= 0 && v <= 1):
		return fmt.Errorf("%s %g, want 0–1: a share of the seam", f.spoken(), v)
	case f.kind == share && !(v >= 0 && v <= 1):
		return fmt.Errorf("%s %g, want 0–1, or auto: 0 leaves the dart open, 1 closes it, auto closes as much as the extension needs", f.spoken(), v)
	case f.auto && v < 0:
		return fmt.Errorf("%s %.1f cm, want 0–40 cm, or auto for what closing the dart gives: cloth can only be added", f.spoken(), v*100)
	}
	return nil
}

// Check returns an error if the hang is out of range; Wearer and Piece check
// the rest.
func (s *Style) Check() error {
	h := s.Hang
	if h.Spacing < drape.Finest-1e-9 || h.Spacing > drape.Coarsest+1e-9 {
		return s.located(fmt.Errorf("hang: spacing %.1f mm, want %.0f–%.0f mm: 8 mm for a look, finer for figures; below that the lattice is as fine as the yarns, above it the facing cannot roll",
			h.Spacing*1000, drape.Finest*1000, drape.Coarsest*1000))
	}
	if h.Placings < 1 || h.Placings > mostPlacings {
		return s.located(fmt.Errorf("hang: placings %d, want 1–%d: 1 for a look, 5 or more to see the spread; each takes as long as the first", h.Placings, mostPlacings))
	}
	return nil
}

// Given notes that a field, as it is spoken of, came from a flag.
func (s *Style) Given(name, from string) { s.from[name] = from }

// Set overrides a number by its name in the file without the unit, in m, rad
// or whole numbers; from is the flag it came from. An unknown name panics.
func (s *Style) Set(name string, v float64, from string) error {
	for _, f := range fields {
		if f.name != name {
			continue
		}
		s.from[f.spoken()] = from
		if v == draft.Auto && f.auto {
			f.set(s, v)
			return nil
		}
		if err := f.refuse(v); err != nil {
			return s.located(fmt.Errorf("%s: %w", f.section, err))
		}
		f.set(s, v)
		return nil
	}
	panic("style: no field " + name)
}
