// Package look says what a cloth looks like: its colours, how it shines, how
// much is seen through it. Looks are invented for pictures and never measured;
// no figure depends on them and they are no part of the physics. Start at Look.
package look

import (
	"fmt"
	"strconv"
	"strings"

	"cowl/mesh/limit"
)

// Colour is an sRGB colour.
type Colour struct{ R, G, B uint8 }

// String writes the colour as #RRGGBB.
func (c Colour) String() string { return fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B) }

// Float is along which yarn the threads lie that one sees.
type Float string

// The yarns that float on the right side.
const (
	None Float = ""
	Warp Float = "warp"
	Weft Float = "weft"
)

// Face is what the weave shows seen near.
type Face string

// The faces of cloth.
const (
	Plain Face = "plain"
	Twill Face = "twill"
	Satin Face = "satin"
	Crepe Face = "crepe"
	Rib   Face = "rib"
)

// Look is what a cloth looks like. The zero Look is that of a cloth of which
// nothing is known: it is drawn as a toile.
type Look struct {
	Colour    Colour  // right side
	Wrong     Colour  // wrong side
	Face      Face    // of the right side
	Float     Float   // along which the highlight is drawn together; None: it is round
	Sheen     float64 // 0 matt to 1: how strong the highlight of the right side is
	Roughness float64 // 0.1 to 1: how wide it is across the float
	Sheer     float64 // 0 to 0.9: share of the light let through
	Check     Colour  // of the lines of a check on the grain
	CheckStep float64 // m, from line to line; 0: no check
	CheckWide float64 // m, of a line
}

// Known reports whether the look is that of a certain cloth.
func (l Look) Known() bool { return l != Look{} }

// field is a key of a look in a file.
type field struct {
	key   string
	read  func(l *Look, text string) error
	write func(l Look) string // empty: left out
}

// fields lists the keys in the order of files.
var fields = []field{
	colour("colour", func(l *Look) *Colour { return &l.Colour }),
	colour("wrong_colour", func(l *Look) *Colour { return &l.Wrong }),
	word("face", "plain, twill, satin, crepe or rib", func(l *Look) *Face { return &l.Face }, Plain, Twill, Satin, Crepe,
		Rib),
	word("float", "warp or weft", func(l *Look) *Float { return &l.Float }, Warp, Weft),
	number("sheen", 0, 1, 1, func(l *Look) *float64 { return &l.Sheen }),
	number("roughness", 0.1, 1, 1, func(l *Look) *float64 { return &l.Roughness }),
	number("sheer", 0, 0.9, 1, func(l *Look) *float64 { return &l.Sheer }),
	colour("check_colour", func(l *Look) *Colour { return &l.Check }),
	number("check_step_mm", 2, 300, 1e-3, func(l *Look) *float64 { return &l.CheckStep }),
	number("check_wide_mm", 0.2, 150, 1e-3, func(l *Look) *float64 { return &l.CheckWide }),
}

// Keys lists the keys of a look in a file.
func Keys() []string {
	var out []string
	for _, f := range fields {
		out = append(out, f.key)
	}
	return out
}

// Set reads one key. The error says what was wanted.
func (l *Look) Set(key, text string) error {
	for _, f := range fields {
		if f.key == key {
			return f.read(l, text)
		}
	}
	return limit.Errorf("look", "look: unknown key %.60q, want one of %s", key, strings.Join(Keys(), ", "))
}

// Lines returns the look as lines of a file, "key: value", in fixed order.
func (l Look) Lines() []string {
	var out []string
	for _, f := range fields {
		if v := f.write(l); v != "" {
			out = append(out, f.key+": "+v)
		}
	}
	return out
}

// Finish fills in what a file leaves out and refuses what does not go together.
func (l *Look) Finish() error {
	zero := Colour{}
	if l.Colour == zero {
		return limit.Errorf("look", "look: colour is missing, want one like \"#C8B08C\"")
	}
	if l.Wrong == zero {
		l.Wrong = l.Colour
	}
	if l.Face == "" {
		l.Face = Plain
	}
	if l.Roughness == 0 {
		l.Roughness = 1
	}
	if (l.CheckStep > 0) != (l.CheckWide > 0) || l.CheckWide >= l.CheckStep && l.CheckStep > 0 {
		return limit.Errorf("look", "look: a check needs check_step_mm and a smaller check_wide_mm")
	}
	return nil
}

func colour(key string, at func(*Look) *Colour) field {
	return field{key, func(l *Look, text string) error {
		n, err := strconv.ParseUint(strings.TrimPrefix(text, "#"), 16, 24)
		if err != nil || len(text) != 7 || text[0] != '#' || n == 0 {
			return limit.Errorf("look", "look: %s %.60q, want a colour like \"#C8B08C\", not all black", key, text)
		}
		*at(l) = Colour{uint8(n >> 16), uint8(n >> 8), uint8(n)}
		return nil
	}, func(l Look) string {
		if c := *at(&l); c != (Colour{}) {
			return strconv.Quote(c.String())
		}
		return ""
	}}
}

func word[T ~string](key, want string, at func(*Look) *T, words ...T) field {
	return field{key, func(l *Look, text string) error {
		for _, w := range words {
			if text == string(w) {
				*at(l) = w
				return nil
			}
		}
		return limit.Errorf("look", "look: %s %.60q, want %s", key, text, want)
	}, func(l Look) string { return string(*at(&l)) }}
}

func number(key string, low, high, scale float64, at func(*Look) *float64) field {
	return field{key, func(l *Look, text string) error {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || !(v >= low && v <= high) {
			return limit.Errorf("look", "look: %s %.60q, want %g to %g", key, text, low, high)
		}
		*at(l) = v * scale
		return nil
	}, func(l Look) string {
		if v := *at(&l); v != 0 {
			return strconv.FormatFloat(v/scale, 'g', 12, 64)
		}
		return ""
	}}
}
