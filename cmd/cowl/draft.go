package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/export/svg"
	"cowl/mesh/truing"
)

type draftCmd struct {
	styleFlags
	suitFlags
	Back bool `help:"Draft the matching back and its facing too; allowances are then per edge."`
}

// Run drafts the piece, writes draft.svg and prints the figures.
func (d draftCmd) Run(c console) error {
	s, err := d.load()
	if err != nil {
		return err
	}
	p, err := s.Piece()
	if err != nil {
		return err
	}
	pattern, err := patternOf(s, p)
	if err != nil {
		return err
	}
	figures := draftFigures(s, p)
	var suit truing.Suit
	if d.Back {
		if suit, err = d.suit(s, p); err != nil {
			return err
		}
		if pattern, err = suitFile(s, suit, "draft"); err != nil {
			return err
		}
		figures.Back = backFigures(suit)
	}
	if err := save(d.Out, []output{pattern}); err != nil {
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
		fmt.Fprintf(c.out, "\nWrote %s, full size: print at 100 %%.\n", filepath.Join(d.Out, pattern.name))
	}
	return nil
}

// patternOf draws the flat piece.
func patternOf(s style.Style, p draft.Piece) (output, error) {
	var b bytes.Buffer
	err := svg.Write(&b, p, svg.Options{Title: s.Name, Notes: []string{"Cut for: " + wearer(s)}})
	return output{"draft.svg", b.Bytes()}, err
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

// jsonOf writes v for people and programs alike.
func jsonOf(v any) ([]byte, error) {
	b, err := json.MarshalIndent(v, "", "  ")
	return append(b, '\n'), err
}
