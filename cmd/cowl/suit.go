package main

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/paper/sheet"
	"cowl/mesh/truing"
)

// suitFlags say how back and facing are cut and what is left outside the seams.
type suitFlags struct {
	BackGrain *flags.Degrees `placeholder:"DEG" help:"From the centre back to the warp; without it as the front."`
	Seam      *flags.Length  `placeholder:"LEN" help:"Allowance of seams (1cm)."`
	SideSeam  *flags.Length  `placeholder:"LEN" help:"Allowance of side seams (2.5cm on the bias, else as the others)."`
}

// given names one of the flags that was given; "": none.
func (f suitFlags) given() string {
	switch {
	case f.BackGrain != nil:
		return "--back-grain"
	case f.Seam != nil:
		return "--seam"
	case f.SideSeam != nil:
		return "--side-seam"
	}
	return ""
}

// suit drafts the back that walks with the front p, and the allowances.
func (f suitFlags) suit(s style.Style, p draft.Piece) (truing.Suit, error) {
	b, err := s.Wearer()
	if err != nil {
		return truing.Suit{}, err
	}
	block, err := draft.BackFromBody(b)
	if err != nil {
		return truing.Suit{}, err
	}
	back, err := draft.MatchBack(block, p)
	if err != nil {
		return truing.Suit{}, err
	}
	out := truing.Suit{Front: p, Back: back, BackGrain: p.Grain}
	if f.BackGrain != nil {
		out.BackGrain = float64(*f.BackGrain)
		if a := math.Abs(out.BackGrain); !(a <= math.Pi/2+1e-9) {
			return out, fmt.Errorf("--back-grain %.1f°, want -90–90°: 0 is straight grain, 45 true bias", say.Degrees(out.BackGrain))
		}
	}
	out.Allow, err = f.allowances(out)
	return out, err
}

// allowances returns those of the flags, else the usual ones. The side seam is
// on the bias if either piece is.
func (f suitFlags) allowances(s truing.Suit) (truing.Allowances, error) {
	front, back := truing.DefaultAllowances(s.Front.Grain), truing.DefaultAllowances(s.BackGrain)
	a := truing.Allowances{Seam: front.Seam, Side: math.Max(front.Side, back.Side)}
	for _, g := range []struct {
		flag  string
		given *flags.Length
		to    *float64
	}{{"--seam", f.Seam, &a.Seam}, {"--side-seam", f.SideSeam, &a.Side}} {
		if g.given == nil {
			continue
		}
		v := float64(*g.given)
		if !(v >= 0 && v <= draft.MostTrim) {
			return a, fmt.Errorf("%s %.1f cm, want 0–%.0f cm: 1 cm is a plain seam, 2.5 cm leaves bias room to drop", g.flag, v*100, draft.MostTrim*100)
		}
		*g.to = v
	}
	return a, nil
}

// suitFiles writes the pieces of a suit in the formats asked for, under names
// that begin with base.
func (f paperFlags) suitFiles(s style.Style, suit truing.Suit, base string) ([]console.File, error) {
	pieces, err := suit.Papers()
	if err != nil {
		return nil, err
	}
	o := sheet.Options{Title: s.Name, Notes: suitNotes(s, suit)}
	return f.files(base, pieces, o, s.SizeWord())
}

// suitNotes lists the figures of the pieces for the sheet.
func suitNotes(s style.Style, suit truing.Suit) []string {
	r, b := suit.Front.Report(), suit.Back.Report()
	return []string{
		"Cut for: " + s.ForWhom(),
		fmt.Sprintf("Half edge %.1f cm, extension %.1f cm a half", say.CM(r.HalfEdge), say.CM(r.Extension)),
		fmt.Sprintf("Front seams: shoulder %.1f, armhole %.1f, side %.1f, half waist %.1f cm", say.CM(r.Shoulder), say.CM(r.Armhole), say.CM(r.Side), say.CM(r.Waist)),
		fmt.Sprintf("Back: half neck %.1f, armhole %.1f, waist dart %.1f cm; shoulder and side as the front", say.CM(b.Neck), say.CM(b.Armhole), say.CM(b.DartIntake)),
		fmt.Sprintf("Neck opening %.1f cm round edge and back neck", say.CM(draft.Opening(suit.Front, suit.Back))),
		"For: " + s.Fabric.Name,
	}
}
