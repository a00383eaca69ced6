package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/truing"
)

type draftCmd struct {
	styleFlags
	paperFlags
	suitFlags
	Back bool `help:"Draft the matching back and its facing too; allowances are then per edge."`
}

// Run drafts the piece, writes it in the formats asked for and prints the
// figures.
func (d draftCmd) Run(c console.Console) error {
	if flag := d.given(); !d.Back && flag != "" {
		return fmt.Errorf("%s: without a back the draft has one allowance all round, --allowance: want --back with it, or leave it out", flag)
	}
	s, err := d.load()
	if err != nil {
		return err
	}
	tellNotes(c, s)
	p, err := s.Piece()
	if err != nil {
		return err
	}
	if err := s.Stands(); err != nil {
		return err
	}
	tellShort(c, p)
	files, err := d.outputs(s, p)
	if err != nil {
		return err
	}
	figures := draftFigures(s, p)
	figures.Openings = openings(s, p)
	var suit truing.Suit
	if d.Back {
		if suit, err = d.suit(s, p); err != nil {
			return err
		}
		if files, err = d.suitFiles(s, suit, "draft"); err != nil {
			return err
		}
		figures.Back = backFigures(suit)
	}
	if err := console.Save(d.Out, files); err != nil {
		return err
	}
	if d.JSON {
		return c.PrintJSON(figures)
	}
	if !d.Quiet {
		draftReport(c.Out, s, p)
		figures.Openings.report(c.Out)
		if d.Back {
			backReport(c.Out, suit)
		}
		var names []string
		for _, f := range files {
			names = append(names, f.Name)
		}
		fmt.Fprintf(c.Out, "\nWrote %s, full size: print at 100 %%.\n", filepath.Join(d.Out, strings.Join(names, ", ")))
	}
	return nil
}

// tellNotes prints what reading a block or a piece from a file left out or straightened.
func tellNotes(c console.Console, s style.Style) {
	for _, n := range s.Notes {
		fmt.Fprintf(c.Err, "cowl: %s\n", n)
	}
}

// tellShort warns of an edge that cannot lie below the neck, before anything is hung.
func tellShort(c console.Console, p draft.Piece) {
	if d := p.DeepestBelowNeck(); d < 0 {
		fmt.Fprintf(c.Err, "cowl: the edge is too short to lie below the front neck point: it stays %.1f cm above it at least; give it an extension of more than %.1f cm\n", -say.CM(d), say.CM(p.ExtensionToNeck()))
	}
}
