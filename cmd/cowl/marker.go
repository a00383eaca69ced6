package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/layplan"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/mesh/marker"
)

type markerCmd struct {
	styleFlags
	suitFlags
	Width  *flags.Length `xor:"width" placeholder:"LEN" help:"Width of the cloth as sold, selvedges included; without it the cheapest of 90, 112, 115, 140 and 150 cm."`
	Usable *flags.Length `xor:"width" placeholder:"LEN" help:"Width between the selvedges."`
	Nap    bool          `help:"Pile, or a print with a way up: all tops lie the same way."`
	Join   bool          `help:"Allow a corner low at the side to be joined on, along the straight grain."`
	Back   bool          `default:"true" negatable:"" help:"Lay back and back-neck facing too (--no-back: the front alone)."`
	Front  bool          `default:"true" negatable:"" help:"Of a back cowl, lay the plain front and its facing too (--no-front: the back alone)."`
}

// Run lays the pieces, draws the lay and prints how much cloth it takes.
func (l markerCmd) Run(c console.Console) error {
	p, err := l.plan(c)
	if err != nil {
		return err
	}
	var files []console.File
	if p.Err == nil {
		var b bytes.Buffer
		if err := p.Shown.Picture(&b, p.Pieces, p.Words()); err != nil {
			return err
		}
		files = []console.File{{Name: "lay.svg", Data: b.Bytes()}}
	}
	if len(files) > 0 {
		if err := console.Save(l.Out, files); err != nil {
			return err
		}
	}
	if l.JSON {
		return errors.Join(c.PrintJSON(p.Figures()), fits(p))
	}
	if !l.Quiet {
		p.Report(c.Out)
		if len(files) > 0 {
			fmt.Fprintf(c.Out, "\nWrote %s.\n", filepath.Join(l.Out, files[0].Name))
		}
	}
	return fits(p)
}

// plan drafts the pieces and lays them.
func (l markerCmd) plan(c console.Console) (*layplan.Plan, error) {
	s, err := l.load()
	if err != nil {
		return nil, err
	}
	if err := l.checkPlain(s.Cut.Worn); err != nil {
		return nil, err
	}
	front, err := s.Cowl()
	if err != nil {
		return nil, err
	}
	if err := s.Stands(); err != nil {
		return nil, err
	}
	front, why := s.OnPaper(front)
	tellDrafted(c, "", why)
	suit, err := l.suit(s, front, front.Trim)
	if err != nil {
		return nil, err
	}
	pieces, err := papersOf(suit, l.Back && l.Front)
	if err != nil {
		return nil, err
	}
	cloth := marker.Cloth{Nap: l.Nap, Join: l.Join, Seam: suit.Allow.Seam}
	p, err := layplan.Of(s, pieces, front.Grain, cloth)
	if err != nil {
		return nil, err
	}
	return p, l.choose(p, cloth)
}

var onLay = plainWords{
	own: map[draft.Side]string{
		draft.AtBack:  "--no-back: the cowl is the back itself, want --no-front to lay it alone",
		draft.AtFront: "--no-front: the cowl is the front itself, want --no-back to lay it alone",
	},
	grain: map[draft.Side]string{
		draft.AtBack:  "--back-grain: no back is laid, want it without --no-back, or leave it out",
		draft.AtFront: "--front-grain: no plain front is laid, want it without --no-front, or leave it out",
	},
}

// checkPlain refuses what contradicts a cowl that is laid out.
func (l markerCmd) checkPlain(worn draft.Side) error {
	own := map[draft.Side]bool{draft.AtBack: !l.Back, draft.AtFront: !l.Front}[worn]
	return onLay.check(worn, own, l.suitFlags, !l.Back, !l.Front)
}

// badWidth refuses the width that was given.
func (l markerCmd) badWidth() error {
	if l.Width == nil {
		return limit.Errorf("", "--usable %v, want %.0f: measure between the selvedges", limit.Metres(float64(*l.Usable)),
			limit.Between(layplan.Narrowest, layplan.Widest, limit.Length))
	}
	selvedges := 2 * marker.Selvedge
	return limit.Errorf("", "--width %v, want %.0f: give the width of the cloth as sold, of which %v on either side "+
		"is selvedge",
		limit.Metres(float64(*l.Width)),
		limit.Between(layplan.Narrowest+selvedges, layplan.Widest+selvedges, limit.Length), limit.Metres(marker.Selvedge))
}

// choose lays on the width that was given, else on the cheapest.
func (l markerCmd) choose(p *layplan.Plan, c marker.Cloth) error {
	nominal := 0.0
	switch {
	case l.Width != nil:
		nominal = float64(*l.Width)
		c.Width = marker.Usable(nominal)
	case l.Usable != nil:
		c.Width = float64(*l.Usable)
	default:
		return nil
	}
	if !(c.Width >= layplan.Narrowest && c.Width <= layplan.Widest) {
		return l.badWidth()
	}
	return p.On(nominal, c)
}

// fits is the status of a plan: that of what was sought and missed where it does not fit.
func fits(p *layplan.Plan) error {
	if p.Err != nil {
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}
