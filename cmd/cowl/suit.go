package main

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/mesh/paper/plot"
	"cowl/mesh/truing"
)

// suitFlags say how back and facing are cut and what is left outside the seams.
type suitFlags struct {
	BackGrain  *flags.Degrees `placeholder:"DEG" help:"From the centre back to the warp; without it as the front."`
	FrontGrain *flags.Degrees `placeholder:"DEG" help:"From the centre front to the warp of the plain front of a back cowl; without it as the cowl."`
	Seam       *flags.Length  `placeholder:"LEN" help:"Allowance of seams; without it that of the draft, and on a trued pattern 1 cm."`
	SideSeam   *flags.Length  `placeholder:"LEN" help:"Allowance of side seams; without it 2.5 cm or more on the bias, else as the others."`
}

// suit drafts the plain piece that walks with the cowl p as it is drawn on paper, and the
// allowances: seam (m) unless the flags say another.
func (f suitFlags) suit(s style.Style, p draft.Cowl, seam float64) (truing.Suit, error) {
	b, err := s.Wearer()
	if err != nil {
		return truing.Suit{}, err
	}
	block, err := draft.PlainFromBody(b, p.Worn)
	if err != nil {
		return truing.Suit{}, err
	}
	back, err := draft.MatchBack(block, p)
	if err != nil {
		return truing.Suit{}, err
	}
	out := truing.Suit{Front: p, Back: back}
	if out.BackGrain, err = f.backGrain(p); err != nil {
		return out, err
	}
	if out.Gap, err = s.Gap(p, back, headGirth); err != nil {
		return out, err
	}
	if out.Strap, err = s.Strapped(p); err != nil {
		return out, err
	}
	out.Allow, err = f.allowances(p, seam)
	return out, err
}

// backGrain returns the grain of the plain piece, that of the cowl p unless it is given.
func (f suitFlags) backGrain(p draft.Cowl) (float64, error) {
	flag, given, err := f.plainGrain(p.Worn)
	if err != nil || given == nil {
		return p.Grain, err
	}
	g := float64(*given)
	if a := math.Abs(g); !(a <= math.Pi/2+1e-9) {
		return g, fmt.Errorf("%s %.1f°, want -90–90°: 0 is straight grain, 45 true bias", flag, say.Degrees(g))
	}
	return g, nil
}

// allowances returns those of the flags, else seam (m) all round, and more down the side
// seam if either piece has it on the bias. A pattern without allowances has none there.
func (f suitFlags) allowances(p draft.Cowl, seam float64) (truing.Allowances, error) {
	grain, err := f.backGrain(p)
	if err != nil {
		return truing.Allowances{}, err
	}
	front, back := truing.DefaultAllowances(p.Grain), truing.DefaultAllowances(grain)
	a := truing.Allowances{Seam: seam}
	if err := allowanceOf("--seam", f.Seam, &a.Seam); err != nil {
		return a, err
	}
	if a.Seam > 0 {
		a.Side = max(a.Seam, front.Side, back.Side)
	}
	return a, allowanceOf("--side-seam", f.SideSeam, &a.Side)
}

// allowanceOf takes an allowance from its flag, if it was given.
func allowanceOf(flag string, given *flags.Length, to *float64) error {
	if given == nil {
		return nil
	}
	v := float64(*given)
	if !(v >= 0 && v <= draft.MostTrim) {
		return limit.Errorf("", "%s %v, want %.0f: %.0f is a plain seam, %v leaves bias room to drop", flag, limit.Metres(v),
			limit.Between(0, draft.MostTrim, limit.Length), limit.Metres(0.01), limit.Metres(0.025))
	}
	*to = v
	return nil
}

// suitFiles writes the pieces of a suit in the formats asked for, under names
// that begin with base.
func (f paperFlags) suitFiles(s style.Style, suit truing.Suit, base string) ([]console.File, error) {
	pieces, err := suit.Papers()
	if err != nil {
		return nil, err
	}
	o := plot.Options{Title: s.Name, Notes: suitNotes(s, suit)}
	return f.files(base, pieces, o, s.SizeWord())
}

// suitNotes lists the figures of the pieces for the sheet.
func suitNotes(s style.Style, suit truing.Suit) []string {
	r, b, cowl, plain := suit.Front.Report(), suit.Back.Report(), suit.Front.Worn, suit.Back.Worn()
	notes := []string{
		"Cut for: " + s.ForWhom(),
		fmt.Sprintf("Half edge %s, extension %s a half", say.Length(r.HalfEdge), say.Length(r.Extension)),
		fmt.Sprintf("%s seams: shoulder %s, armhole %s, side %s, half waist %s", say.Upper(cowl.String()),
			say.Length(r.Shoulder), say.Length(r.Armhole), say.Length(r.Side), say.Length(r.Waist)),
		fmt.Sprintf("%s: half neck %s, armhole %s, waist dart %s; shoulder and side as the cowl", say.Upper(plain.String()),
			say.Length(b.Neck), say.Length(b.Armhole), say.Length(b.DartIntake)),
		fmt.Sprintf("Neck opening %s round edge and %v neck", say.Length(draft.Opening(suit.Front, suit.Back)), plain),
	}
	if words := strapOf(s, suit.Front).words(); words != "" {
		notes = append(notes, words)
	}
	return append(notes, "For: "+s.Fabric.Name)
}
