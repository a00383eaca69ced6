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
}

// openings holds neck and waist of the front p and its back against the wearer; nil where
// no back can be matched, as to a piece of one's own.
func openings(s style.Style, p draft.Piece) *openingJSON {
	suit, err := suitFlags{}.suit(s, p, p.Trim)
	if err != nil {
		return nil
	}
	who, err := s.Wearer()
	if err != nil {
		return nil
	}
	return openingsOf(suit, who.Bust)
}

func openingsOf(suit truing.Suit, bust float64) *openingJSON {
	neck, waist := draft.Opening(suit.Front, suit.Back), draft.WaistOpening(suit.Front, suit.Back)
	return &openingJSON{
		Neck: say.MM(neck), Head: say.MM(headGirth), PassesHead: neck >= headGirth,
		Waist: say.MM(waist), Bust: say.MM(bust), PassesBust: waist >= bust,
	}
}

// report says what passes and what to do where it does not.
func (o *openingJSON) report(w io.Writer) {
	if o == nil {
		return
	}
	say := func(name string, opening float64, what string, girth float64, passes bool, do string) {
		text := fmt.Sprintf("%.1f cm against %s %.1f cm: it passes", opening/10, what, girth/10)
		if !passes {
			text = fmt.Sprintf("%.1f cm against %s %.1f cm: %.1f cm short, %s", opening/10, what, girth/10, (girth-opening)/10, do)
		}
		fmt.Fprintf(w, "  %-13s%s\n", name, text)
	}
	say("Head", o.Neck, "a head of", o.Head, o.PassesHead, "leave a shoulder or the centre back open")
	say("Getting in", o.Waist, "the bust of", o.Bust, o.PassesBust, "leave the left side seam open from the waist up and close it with a zip; what bias gives is not counted")
}
