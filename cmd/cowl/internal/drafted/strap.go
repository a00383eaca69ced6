package drafted

import (
	"fmt"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
)

// Strap says what keeps a back cowl on the shoulders; lengths in mm.
type Strap struct {
	Kind  string  `json:"kind"` // strap, tie or none
	Long  float64 `json:"long_mm,omitempty"`
	Wide  float64 `json:"wide_mm,omitempty"`
	At    float64 `json:"from_cowl_point_mm,omitempty"` // of its middle, down the shoulder seam
	Slips bool    `json:"slips_without"`                // by the rule of draft.Cowl.Slips
}

// StrapOf tells of the strap of the cowl p of s; nil: it is worn at the front.
func StrapOf(s style.Style, p draft.Cowl) *Strap {
	strap, err := s.Strapped(p)
	if err != nil || p.Worn == draft.AtFront {
		return nil
	}
	if strap == nil {
		return &Strap{Kind: draft.NoStrap.String(), Slips: p.Slips()}
	}
	return &Strap{strap.Kind.String(), say.MM(strap.Long), say.MM(strap.Wide), say.MM(strap.At), p.Slips()}
}

// Report prints it, a row.
func (s *Strap) Report(row func(name, format string, args ...any)) {
	if s == nil {
		return
	}
	why := "the neck is not so wide and low that it would fall off the shoulders"
	if s.Slips {
		why = "the neck is wide and low, and would fall off the shoulders without one (common practice)"
	}
	strip := map[string]string{draft.Strapped.String(): "one strip", draft.Tied.String(): "two strips"}[s.Kind]
	if strip == "" {
		row("Strap", "none; %s", why)
		return
	}
	row("Strap", "%s, %s long and %s wide, its middle %s from the cowl points in the shoulder seams; drawn on paper, "+
		"not hung: %s",
		strip, say.Length(s.Long/1000), say.Length(s.Wide/1000), say.Length(s.At/1000), why)
}

// words is a line for a sheet; empty: there is none.
func (s *Strap) words() string {
	if s == nil || s.Kind == draft.NoStrap.String() {
		return ""
	}
	return fmt.Sprintf("%s: finished %s long, %s wide, in the shoulder seams %s from the cowl points",
		ruler.Capital(s.Kind), say.Length(s.Long/1000), say.Length(s.Wide/1000), say.Length(s.At/1000))
}
