package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/mesh/truing"
)

type draftCmd struct {
	styleFlags
	paperFlags
	suitFlags
	nestFlags
	plainFlags
}

// Run drafts the piece, writes it in the formats asked for and prints the
// figures.
func (d draftCmd) Run(c console.Console) error {
	s, err := d.load()
	if err != nil {
		return err
	}
	if err := d.plainFlags.check(s.Cut.Worn, d.suitFlags); err != nil {
		return err
	}
	if !d.plain() && s.Cut.Worn == draft.AtFront && s.Closure == draft.BackOpen && flags.IsGiven(d.Cut, "closure") {
		return fmt.Errorf("--closure back: no back is drafted, want --back with it, or side or shoulder")
	}
	tellNotes(c, s)
	if len(d.Sizes) > 0 {
		return d.nest(c, s)
	}
	if d.Hold == "drop" {
		return fmt.Errorf("--hold: one size is drafted, want --sizes with it, or leave it out")
	}
	p, err := s.Cowl()
	if err != nil {
		return err
	}
	if err := s.Stands(); err != nil {
		return err
	}
	tellShort(c, p)
	p, why := s.OnPaper(p)
	tellDrafted(c, "", why)
	return d.write(c, s, p)
}

// write writes the front p as it is drawn on paper, with its back if that is asked for,
// and prints the figures.
func (d draftCmd) write(c console.Console, s style.Style, p draft.Cowl) error {
	allow, err := d.allowances(p, p.Trim)
	if err != nil {
		return err
	}
	suit, err := d.suit(s, p, p.Trim)
	if err != nil && (d.plain() || s.Closure != draft.NoClosure) {
		return err
	}
	if err != nil {
		fmt.Fprintf(c.Err, "cowl: whether head and bust pass is not told: no %v can be matched to this %v: %s\n",
			p.Worn.Other(), p.Worn, ruler.Spoken().Words(err))
	}
	figures := drafted.Of(s, p)
	figures.Seam, figures.SideSeam = say.MM(allow.Seam), say.MM(allow.Side)
	if err == nil {
		figures.Openings = drafted.OpeningsOf(s, suit)
	}
	if d.plain() {
		figures.AddPlain(suit)
	}
	files, err := d.drawn(s, p, suit, allow)
	if err != nil {
		return err
	}
	if err := console.Save(d.Out, files); err != nil {
		return err
	}
	if d.JSON {
		return c.PrintJSON(sided.JSON(figures, p.Worn))
	}
	if !d.Quiet {
		drafted.Report(c.Out, s, p)
		figures.Openings.Report(c.Out)
		if d.plain() {
			drafted.ReportPlain(c.Out, suit)
		}
		drafted.ReportAllowances(c.Out, allow)
		fmt.Fprintf(c.Out, "\nWrote %s, full size: print at 100 %%.\n", filepath.Join(d.Out,
			strings.Join(namesOf(files), ", ")))
	}
	return nil
}

// drawn makes the files of the suit, or of its front alone; p is the front where no back
// goes with it.
func (d draftCmd) drawn(s style.Style, p draft.Cowl, suit truing.Suit, a truing.Allowances) ([]console.File, error) {
	if d.plain() {
		return d.suitFiles(s, suit, "draft")
	}
	cowl := truing.Suit{Front: p, Allow: a, Gap: suit.Gap} // the rest of it may be wanting
	var err error
	if cowl.Strap, err = s.Strapped(p); err != nil {
		return nil, err
	}
	pieces, err := cowl.CowlPapers()
	if err != nil {
		return nil, err
	}
	return d.outputs(s, p, pieces)
}
