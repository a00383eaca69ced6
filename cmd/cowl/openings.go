package main

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/truing"
)

// openingJSON says whether one gets into the top.
type openingJSON struct {
	Neck       float64 `json:"neck_mm"` // edge and back neck
	Head       float64 `json:"head_mm"` // that it is held against
	PassesHead bool    `json:"passes_head"`
	Waist      float64 `json:"waist_mm"` // sewn, darts stitched
	Bust       float64 `json:"bust_mm"`  // that it is held against
	PassesBust bool    `json:"passes_bust"`
	Closure    string  `json:"closure"`              // none, side, shoulder or back
	Open       float64 `json:"closure_mm,omitempty"` // how long it is; what is passed counts both its edges

	neckOpen, waistOpen float64 // mm, with the closure open
}

// openings holds neck and waist of the suit against the wearer of s; nil where their bust
// is not known.
func openings(s style.Style, suit truing.Suit) *openingJSON {
	who, err := s.Wearer()
	if err != nil {
		return nil
	}
	p, b, g := suit.Front, suit.Back, suit.Gap
	neck, waist := g.Head(p, b), g.Waist(p, b)
	return &openingJSON{
		Neck: say.MM(draft.Opening(p, b)), Head: say.MM(headGirth), PassesHead: neck >= headGirth,
		Waist: say.MM(draft.WaistOpening(p, b)), Bust: say.MM(who.Bust), PassesBust: waist >= who.Bust,
		Closure: g.Closure.String(), Open: say.MM(g.Long), neckOpen: say.MM(neck), waistOpen: say.MM(waist),
	}
}

// report says what passes and what to do where it does not.
func (o *openingJSON) report(w io.Writer) {
	if o == nil {
		return
	}
	row := func(name string, shut, open float64, what string, girth float64, passes bool, do string) {
		text := fmt.Sprintf("%.1f cm against %s %.1f cm: ", shut/10, what, girth/10)
		if open != shut {
			text = fmt.Sprintf("%.1f cm, %.1f cm with the %s, against %s %.1f cm: ", shut/10, open/10, closureWords(o), what, girth/10)
		}
		if passes {
			text += "it passes"
		} else {
			text += fmt.Sprintf("%.1f cm short, %s", (girth-open)/10, do)
		}
		fmt.Fprintf(w, "  %-13s%s\n", name, text)
	}
	advice := "leave an opening: --closure shoulder or back"
	if o.Closure == draft.ShoulderOpen.String() {
		advice = "leave the back open instead: --closure back"
	}
	row("Head", o.Neck, o.neckOpen, "a head of", o.Head, o.PassesHead, advice)
	row("Getting in", o.Waist, o.waistOpen, "the bust of", o.Bust, o.PassesBust,
		"leave the left side seam open for a zip: --closure side; what bias gives is not counted")
}

// closureWords says what is open.
func closureWords(o *openingJSON) string {
	return map[string]string{"side": "zip", "shoulder": "shoulder", "back": "slit"}[o.Closure] + fmt.Sprintf(" of %.1f cm open", o.Open/10)
}
