package main

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
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
	if p.err == nil {
		var b bytes.Buffer
		if err := p.shown.Picture(&b, p.pieces, p.words()); err != nil {
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
		return errors.Join(c.PrintJSON(p.figures()), p.status())
	}
	if !l.Quiet {
		p.report(c.Out)
		if len(files) > 0 {
			fmt.Fprintf(c.Out, "\nWrote %s.\n", filepath.Join(l.Out, files[0].Name))
		}
	}
	return p.status()
}

// plan drafts the pieces and lays them.
func (l markerCmd) plan(c console.Console) (*markerPlan, error) {
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
	p := &markerPlan{style: s}
	if p.pieces, err = papersOf(suit, l.Back && l.Front); err != nil {
		return nil, err
	}
	cloth := marker.Cloth{Nap: l.Nap, Join: l.Join, Seam: suit.Allow.Seam}
	if p.widths, err = marker.Choices(p.pieces, marker.Widths(), []float64{front.Grain}, cloth); err != nil {
		return nil, err
	}
	cloth.Join = false
	if p.grains, err = marker.Choices(p.pieces, marker.Widths(), sweep(front.Grain), cloth); err != nil {
		return nil, err
	}
	cloth.Join = l.Join
	return p, l.choose(p, cloth)
}

var laidOut = plainWords{
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
	return laidOut.check(worn, own, l.suitFlags, !l.Back, !l.Front)
}

// sweep lists the grains that are looked at: the style's, and every 15°.
func sweep(own float64) []float64 {
	out := []float64{own}
	for d := 0; d <= 90; d += 15 {
		if g := float64(d) * math.Pi / 180; math.Abs(g-math.Abs(own)) > 1e-6 {
			out = append(out, g)
		}
	}
	return out
}

// narrowest and widest bound a width that is taken for one, m.
const (
	narrowest = 0.20
	widest    = 3.20
)

// badWidth refuses the width that was given.
func (l markerCmd) badWidth() error {
	if l.Width == nil {
		return limit.Errorf("", "--usable %v, want %.0f: measure between the selvedges", limit.Metres(float64(*l.Usable)),
			limit.Between(narrowest, widest, limit.Length))
	}
	selvedges := 2 * marker.Selvedge
	return limit.Errorf("", "--width %v, want %.0f: give the width of the cloth as sold, of which %v on either side "+
		"is selvedge",
		limit.Metres(float64(*l.Width)), limit.Between(narrowest+selvedges, widest+selvedges, limit.Length),
		limit.Metres(marker.Selvedge))
}

// choose lays on the width that was given, else on the cheapest.
func (l markerCmd) choose(p *markerPlan, c marker.Cloth) error {
	switch {
	case l.Width != nil:
		p.nominal = float64(*l.Width)
		c.Width = marker.Usable(p.nominal)
	case l.Usable != nil:
		c.Width = float64(*l.Usable)
	default:
		best, ok := marker.Cheapest(p.widths)
		if !ok {
			best = p.widths[len(p.widths)-1]
		}
		p.nominal, p.shown, p.err = best.Nominal, best.Marker, best.Err
		return nil
	}
	if !(c.Width >= narrowest && c.Width <= widest) {
		return l.badWidth()
	}
	p.shown, p.err = marker.On(p.pieces, c)
	if p.err == nil {
		return nil
	}
	if !errors.Is(p.err, marker.ErrTooWide) {
		return p.err
	}
	p.shown.Cloth = c
	if !c.Join {
		c.Join = true
		if with, err := marker.On(p.pieces, c); err == nil {
			p.joined = &with
		}
	}
	return nil
}
