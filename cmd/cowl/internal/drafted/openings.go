package drafted

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/truing"
)

// Openings say whether one gets into the top; lengths and girths in mm.
type Openings struct {
	Neck       float64 `json:"neck_mm"` // edge and back neck
	Head       float64 `json:"head_mm"` // that it is held against
	PassesHead bool    `json:"passes_head"`
	Waist      float64 `json:"waist_mm"` // sewn, darts stitched
	Bust       float64 `json:"bust_mm"`  // that it is held against
	PassesBust bool    `json:"passes_bust"`
	Closure    string  `json:"closure"`              // none, side, shoulder or back
	Open       float64 `json:"closure_mm,omitempty"` // how long it is; what is passed counts both its edges

	neckOpen, waistOpen float64 // mm, with the closure open
	slit                bool    // the centre back may be slit: it has no cowl
}

// OpeningsOf holds neck and waist of the suit against the wearer of s; nil where their bust
// is not known.
func OpeningsOf(s style.Style, suit truing.Suit) *Openings {
	who, err := s.Wearer()
	if err != nil {
		return nil
	}
	p, b, g := suit.Front, suit.Back, suit.Gap
	neck, waist := g.Head(p, b), g.Waist(p, b)
	return &Openings{
		Neck: say.MM(draft.Opening(p, b)), Head: say.MM(HeadGirth), PassesHead: neck >= HeadGirth,
		Waist: say.MM(draft.WaistOpening(p, b)), Bust: say.MM(who.Bust), PassesBust: waist >= who.Bust,
		Closure: g.Closure.String(), Open: say.MM(g.Long), neckOpen: say.MM(neck), waistOpen: say.MM(waist),
		slit: p.Worn == draft.AtFront,
	}
}

// Report says what passes and what to do where it does not.
func (o *Openings) Report(w io.Writer) {
	if o == nil {
		return
	}
	row := func(name string, shut, open float64, what string, girth float64, passes bool, do string) {
		text := fmt.Sprintf("%s against %s %s: ", say.Length(shut/1000), what, say.Length(girth/1000))
		if open != shut {
			text = fmt.Sprintf("%s, %s with the %s, against %s %s: ", say.Length(shut/1000), say.Length(open/1000),
				closureWords(o), what, say.Length(girth/1000))
		}
		if passes {
			text += "it passes"
		} else {
			text += fmt.Sprintf("%s short, %s", say.Length((girth-open)/1000), do)
		}
		fmt.Fprintf(w, "  %-13s%s\n", name, text)
	}
	advice := "leave an opening: --closure shoulder or back"
	switch {
	case !o.slit && o.Closure == draft.ShoulderOpen.String():
		advice = "give the edge more extension or widen the neck"
	case !o.slit:
		advice = "leave an opening: --closure shoulder"
	case o.Closure == draft.ShoulderOpen.String():
		advice = "leave the back open instead: --closure back"
	}
	row("Head", o.Neck, o.neckOpen, "a head of", o.Head, o.PassesHead, advice)
	row("Getting in", o.Waist, o.waistOpen, "the bust of", o.Bust, o.PassesBust,
		"leave the left side seam open for a zip: --closure side; what bias gives is not counted")
}

// closureWords says what is open.
func closureWords(o *Openings) string {
	return map[string]string{"side": "zip", "shoulder": "shoulder", "back": "slit"}[o.Closure] + " of " +
		say.Length(o.Open/1000) + " open"
}

// HeadGirth is the largest of a woman's sizes, m: 54 to 57 cm (ASTM D5585-11,
// table 1: 21½ to 22¼ in from size 4 to 16).
const HeadGirth = 0.57
