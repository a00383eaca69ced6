package main

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"

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
func (d draftCmd) Run(c console) error {
	if flag := d.given(); !d.Back && flag != "" {
		return fmt.Errorf("%s: without a back the draft has one allowance all round, --trim: want --back with it, or leave it out", flag)
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
	if err := save(d.Out, files); err != nil {
		return err
	}
	if d.JSON {
		return printJSON(c, figures)
	}
	if !d.Quiet {
		draftReport(c.out, s, p)
		if d.Back {
			backReport(c.out, suit)
		}
		var names []string
		for _, f := range files {
			names = append(names, f.name)
		}
		fmt.Fprintf(c.out, "\nWrote %s, full size: print at 100 %%.\n", filepath.Join(d.Out, strings.Join(names, ", ")))
	}
	return nil
}

// tellNotes prints what reading a block or a piece from a file left out or straightened.
func tellNotes(c console, s style.Style) {
	for _, n := range s.Notes {
		fmt.Fprintf(c.err, "cowl: %s\n", n)
	}
}

// tellShort warns of an edge that cannot lie below the neck, before anything is hung.
func tellShort(c console, p draft.Piece) {
	if d := p.DeepestBelowNeck(); d < 0 {
		fmt.Fprintf(c.err, "cowl: the edge is too short to lie below the front neck point: it stays %.1f cm above it at least; give it an extension of more than %.1f cm\n", -cm(d), cm(p.ExtensionToNeck()))
	}
}

// wearer says in a few words for whom the piece is.
func wearer(s style.Style) string {
	text := fmt.Sprintf("chart size %d", s.Size)
	if n := s.Taken(); n > 0 {
		text += fmt.Sprintf(" with %d own measurements", n)
	}
	if s.Points != nil {
		text += ", own block"
	}
	if s.Lines != nil {
		text += ", own piece"
	}
	return text
}

// printJSON prints v as the one object on standard output.
func printJSON(c console, v any) error {
	b, err := jsonOf(v)
	if err == nil {
		_, err = c.out.Write(b)
	}
	return err
}

// jsonOf writes v for people and programs alike. What cannot be written, a figure
// that is no number, is a fault of ours.
func jsonOf(v any) ([]byte, error) {
	b, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		panic("the figures cannot be written\n" + err.Error())
	}
	return append(b, '\n'), nil
}
