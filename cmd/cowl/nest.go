package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/truing"
)

// nestFlags ask for several sizes in one file.
type nestFlags struct {
	Sizes []int  `placeholder:"N,…" help:"Draft these sizes of the chart, each anew, over each other in one file."`
	Hold  string `default:"length" enum:"length,drop" placeholder:"WHAT" help:"What of the extension all sizes share: length, or drop of the edge in the style's own size (length)."`
}

// sized is one size of a nest.
type sized struct {
	style style.Style
	front draft.Cowl // as it is drawn on paper
	suit  truing.Suit
}

// nest drafts the sizes, writes them over each other and prints their figures.
func (d draftCmd) nest(c console.Console, s style.Style) error {
	if s.OneBody() {
		return fmt.Errorf("--sizes: this style has own measurements, a block or a piece of its own, " +
			"which are of one body: leave them out, or draft one size")
	}
	var all []sized
	for _, n := range slices.Compact(slices.Sorted(slices.Values(d.Sizes))) {
		one, err := d.sizeOf(c, s, n)
		if err != nil {
			return fmt.Errorf("--sizes: size %d: %w", n, err)
		}
		all = append(all, one)
	}
	pieces, err := d.over(all)
	if err != nil {
		return err
	}
	files, err := d.files("draft", pieces, plot.Options{Title: s.Name, Notes: d.nestNotes(s, all)}, sizeList(all))
	if err != nil {
		return err
	}
	if err := console.Save(d.Out, files); err != nil {
		return err
	}
	if d.JSON {
		return c.PrintJSON(sided.JSON(d.nestFigures(all), s.Cut.Worn))
	}
	if !d.Quiet {
		d.nestReport(c.Out, s, all)
		fmt.Fprintf(c.Out, "\nWrote %s, full size: print at 100 %%.\n", filepath.Join(d.Out,
			strings.Join(namesOf(files), ", ")))
	}
	return nil
}

// sizeOf drafts one size.
func (d draftCmd) sizeOf(c console.Console, s style.Style, size int) (sized, error) {
	one := s.Clone()
	one.Size = size
	if d.Hold == "drop" {
		if err := one.HoldDrop(s); err != nil {
			return sized{}, err
		}
	}
	p, err := one.Cowl()
	if err == nil {
		err = one.Stands()
	}
	if err != nil {
		return sized{}, err
	}
	p, why := one.OnPaper(p)
	tellDrafted(c, "size "+one.SizeWord()+": ", why)
	suit, err := d.suit(one, p, p.Trim)
	return sized{one, p, suit}, err
}

// over lays out the pieces of every size, those of a name over each other.
func (d draftCmd) over(all []sized) ([]paper.Piece, error) {
	var out []paper.Piece
	for _, one := range all {
		pieces, err := papersOf(one.suit, d.plain())
		if err != nil {
			return nil, err
		}
		for _, p := range pieces {
			p.Nest, p.Size = p.Name, one.style.SizeWord()
			p.Name += " " + p.Size
			out = append(out, p)
		}
	}
	return out, nil
}

func sizeList(all []sized) string {
	var out []string
	for _, one := range all {
		out = append(out, one.style.SizeWord())
	}
	return strings.Join(out, " ")
}

// nestNotes lists the figures of the sizes for the sheet.
func (d draftCmd) nestNotes(s style.Style, all []sized) []string {
	out := []string{
		"Chart sizes " + sizeList(all) + ", each drafted anew; " + s.ExtensionHeld(d.Hold == "drop"),
		"Stacked on the centre line, at the level of the neck point",
	}
	for _, one := range all {
		r := one.front.Report()
		out = append(out, fmt.Sprintf("Size %s: half edge %s, extension %s, side %s, half waist %s", one.style.SizeWord(),
			say.Length(r.HalfEdge), say.Length(r.Extension), say.Length(r.Side), say.Length(r.Waist)))
	}
	return append(out, "Fabric: "+s.Fabric.Name)
}

// nestReport prints a row for each size.
func (d draftCmd) nestReport(w io.Writer, s style.Style, all []sized) {
	fmt.Fprintf(w, "%s, sizes %s: each drafted anew, %s\n\n", s.Name, sizeList(all), s.ExtensionHeld(d.Hold == "drop"))
	fmt.Fprintf(w, "  %4s %10s %10s %10s %10s %10s %10s %10s\n",
		"size", "extension", "half edge", "edge drop", "shoulder", "armhole", "side", "half waist")
	for _, one := range all {
		r := one.front.Report()
		fmt.Fprintf(w, "  %4s %10s %10s %10s %10s %10s %10s %10s\n", one.style.SizeWord(),
			say.Length(r.Extension), say.Length(r.HalfEdge), say.Length(r.DropChain), say.Length(r.Shoulder),
			say.Length(r.Armhole), say.Length(r.Side), say.Length(r.Waist))
	}
	fmt.Fprintln(w)
	for _, one := range all {
		fmt.Fprintf(w, "  Size %s\n", one.style.SizeWord())
		drafted.OpeningsOf(one.style, one.suit).Report(w)
	}
	drafted.ReportAllowances(w, all[0].suit.Allow)
}

// nestFigures lists the figures of every size by its number.
func (d draftCmd) nestFigures(all []sized) map[string]drafted.Figures {
	out := map[string]drafted.Figures{}
	for _, one := range all {
		f := drafted.Of(one.style, one.front)
		f.Seam, f.SideSeam = say.MM(one.suit.Allow.Seam), say.MM(one.suit.Allow.Side)
		f.Openings = drafted.OpeningsOf(one.style, one.suit)
		if d.plain() {
			f.AddPlain(one.suit)
		}
		out[strconv.Itoa(one.style.Size)] = f
	}
	return out
}
