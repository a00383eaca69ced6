package main

import (
	"errors"

	"cowl/cmd/cowl/internal/flags"
	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/truing"
)

// plainFlags ask for the plain piece that a cowl is sewn to.
type plainFlags struct {
	Back  bool `help:"Draft the matching back and its facing too."`
	Front bool `help:"Draft the matching plain front and its facing too, of a back cowl."`
}

// plain reports whether it is asked for.
func (f plainFlags) plain() bool { return f.Back || f.Front }

// check refuses flags of the side that the cowl itself is worn at, and a grain of what is
// not drafted.
func (f plainFlags) check(worn draft.Side, g suitFlags) error {
	switch {
	case worn == draft.AtBack && f.Back:
		return errors.New("--back: the cowl is the back itself, want --front for the plain front that goes with it")
	case worn == draft.AtFront && f.Front:
		return errors.New("--front: the cowl is the front itself, want --back for the back that goes with it, or --side back")
	case !f.plain() && g.BackGrain != nil:
		return errors.New("--back-grain: no back is drafted, want --back with it, or leave it out")
	case !f.plain() && g.FrontGrain != nil:
		return errors.New("--front-grain: no plain front is drafted, want --front with it, or leave it out")
	}
	return nil
}

// papersOf lays out the pieces of a suit: all, or the cowl and what belongs to it.
func papersOf(s truing.Suit, plain bool) ([]paper.Piece, error) {
	if plain {
		return s.Papers()
	}
	return s.CowlPapers()
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
