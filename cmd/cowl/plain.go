package main

import (
	"errors"

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

// plainWords are what a verb says where flags of the plain piece contradict its cowl.
type plainWords struct {
	own   map[draft.Side]string // a flag of the side that the cowl itself is worn at
	grain map[draft.Side]string // the grain of what is not made
}

// check refuses flags of the side that the cowl itself is worn at, of which own tells
// whether one was given, and a grain of what is not made.
func (w plainWords) check(worn draft.Side, own bool, g suitFlags, noBack, noFront bool) error {
	switch {
	case own:
		return errors.New(w.own[worn])
	case noBack && g.BackGrain != nil:
		return errors.New(w.grain[draft.AtBack])
	case noFront && g.FrontGrain != nil:
		return errors.New(w.grain[draft.AtFront])
	}
	return nil
}

var onDraft = plainWords{
	own: map[draft.Side]string{
		draft.AtBack: "--back: the cowl is the back itself, want --front for the plain front that goes with it",
		draft.AtFront: "--front: the cowl is the front itself, want --back for the back that goes with it, or --side " +
			"back",
	},
	grain: map[draft.Side]string{
		draft.AtBack:  "--back-grain: no back is drafted, want --back with it, or leave it out",
		draft.AtFront: "--front-grain: no plain front is drafted, want --front with it, or leave it out",
	},
}

// check refuses what contradicts a cowl that is drafted.
func (f plainFlags) check(worn draft.Side, g suitFlags) error {
	own := map[draft.Side]bool{draft.AtBack: f.Back, draft.AtFront: f.Front}[worn]
	return onDraft.check(worn, own, g, !f.plain(), !f.plain())
}

// papersOf lays out the pieces of a suit: all, or the cowl and what belongs to it.
func papersOf(s truing.Suit, plain bool) ([]paper.Piece, error) {
	if plain {
		return s.Papers()
	}
	return s.CowlPapers()
}
