package main

import (
	"errors"
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
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
	if out.Gap, err = s.Gap(p, back, drafted.HeadGirth); err != nil {
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

// plainGrain is the flag of the grain of the plain piece of a cowl worn at a side, and its value.
func (f suitFlags) plainGrain(worn draft.Side) (flag string, v *flags.Degrees, err error) {
	switch {
	case worn == draft.AtBack && f.BackGrain != nil:
		return "", nil, errors.New("--back-grain: the back is the cowl, whose grain is --grain; want --front-grain for " +
			"its plain front")
	case worn == draft.AtFront && f.FrontGrain != nil:
		return "", nil, errors.New("--front-grain: the front is the cowl, whose grain is --grain; want --back-grain for " +
			"its back")
	case worn == draft.AtBack:
		return "--front-grain", f.FrontGrain, nil
	}
	return "--back-grain", f.BackGrain, nil
}
