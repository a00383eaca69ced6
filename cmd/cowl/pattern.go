package main

import (
	"bytes"
	"fmt"
	"io"
	"slices"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/export/csv"
	"cowl/mesh/export/dxf"
	"cowl/mesh/export/pdf"
	"cowl/mesh/export/svg"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/ruler"
	"cowl/mesh/truing"
)

// paperFlags say in which formats a pattern is written.
type paperFlags struct {
	Format []string `default:"svg" enum:"svg,pdf,dxf,csv,all" placeholder:"F,…" help:"What to write: svg, pdf, dxf, csv, several with commas, or all (svg)."`
	Paper  string   `default:"both" enum:"a4,letter,both" help:"Home printer's paper for pdf: a4, letter or both (both)."`
}

// outputs makes the files of the cowl p, laid out for paper.
func (f paperFlags) outputs(s style.Style, p draft.Cowl, pieces []paper.Piece) ([]console.File, error) {
	return f.files("draft", pieces, wordsOf(s, p), s.SizeWord())
}

// files writes the pieces in every format asked for, under names that begin
// with base.
func (f paperFlags) files(base string, pieces []paper.Piece, o plot.Options, size string) ([]console.File, error) {
	var out []console.File
	for _, part := range f.parts(base) {
		var b bytes.Buffer
		if err := part.write(&b, pieces, o, size); err != nil {
			return nil, err
		}
		out = append(out, console.File{Name: part.name, Data: b.Bytes()})
	}
	return out, nil
}

// part is one file of a pattern.
type part struct {
	name  string
	write func(w io.Writer, pieces []paper.Piece, o plot.Options, size string) error
}

// parts lists the files of the formats asked for.
func (f paperFlags) parts(base string) []part {
	wants := func(format string) bool {
		return slices.Contains(f.Format, format) || slices.Contains(f.Format, "all")
	}
	var out []part
	if wants("svg") {
		out = append(out, part{base + ".svg", func(w io.Writer, p []paper.Piece, o plot.Options, _ string) error {
			return svg.Write(w, p, o)
		}})
	}
	if wants("pdf") {
		out = append(out, f.pdfParts(base)...)
	}
	if wants("dxf") {
		out = append(out, part{base + ".dxf", func(w io.Writer, p []paper.Piece, o plot.Options, size string) error {
			return dxf.Write(w, p, dxf.Options{Style: o.Title, Size: size})
		}})
	}
	if wants("csv") {
		out = append(out, part{base + ".csv", func(w io.Writer, p []paper.Piece, _ plot.Options, _ string) error {
			return csv.Write(w, p)
		}})
	}
	return out
}

// pdfParts lists the tiles for each paper, the large sheet and the cutting
// sheet.
func (f paperFlags) pdfParts(base string) []part {
	var out []part
	papers := map[string][]pdf.Paper{"a4": {pdf.A4}, "letter": {pdf.Letter}, "both": {pdf.A4, pdf.Letter}}[f.Paper]
	for _, on := range papers {
		name := map[string]string{"A4": "a4", "Letter": "letter"}[on.Name]
		out = append(out, part{base + "-" + name + ".pdf", func(w io.Writer, p []paper.Piece, o plot.Options,
			_ string) error {
			return pdf.WriteTiles(w, p, o, on)
		}})
	}
	return append(out,
		part{base + "-sheet.pdf", func(w io.Writer, p []paper.Piece, o plot.Options, _ string) error {
			return pdf.Write(w, p, o)
		}},
		part{"cutting-sheet.pdf", func(w io.Writer, p []paper.Piece, o plot.Options, _ string) error {
			return pdf.WriteCutting(w, p, o, papers[0])
		}})
}

// patterns draws the piece p that is hung as it is on paper.
func (f paperFlags) patterns(s style.Style, p draft.Cowl) ([]console.File, error) {
	p, _ = s.OnPaper(p) // who calls tells why where it is drawn as drafted
	pieces, err := cowlPapers(s, p)
	if err != nil {
		return nil, err
	}
	return f.outputs(s, p, pieces)
}

// cowlPapers is the cowl p as it is drawn on paper by itself, with an opening that lies in
// its seams and its strap.
func cowlPapers(s style.Style, p draft.Cowl) ([]paper.Piece, error) {
	if s.Closure == draft.SideZip || s.Closure == draft.ShoulderOpen {
		suit, err := suitFlags{}.suit(s, p, p.Trim)
		if err != nil {
			return nil, err
		}
		return suit.CowlPapers()
	}
	suit := truing.Suit{Front: p}
	var err error
	if suit.Allow, err = (suitFlags{}).allowances(p, p.Trim); err != nil {
		return nil, err
	}
	if suit.Strap, err = s.Strapped(p); err != nil {
		return nil, err
	}
	return suit.CowlPapers()
}

// patternOf draws the flat piece.
func patternOf(s style.Style, p draft.Cowl) (console.File, error) {
	files, err := paperFlags{Format: []string{"svg"}}.patterns(s, p)
	if err != nil {
		return console.File{}, err
	}
	return files[0], nil
}

// wordsOf lists the figures of p for the sheet.
func wordsOf(s style.Style, p draft.Cowl) plot.Options {
	r := p.Report()
	notes := []string{
		"Cut for: " + s.ForWhom(),
		"Fabric: " + s.Fabric.Name,
		fmt.Sprintf("Half edge %s, extension %s a half", say.Length(r.HalfEdge), say.Length(r.Extension)),
	}
	if s.Lines == nil {
		notes[2] += fmt.Sprintf(", %s of it from the dart", say.Length(r.FromDart))
	}
	switch {
	case p.Eased > 0:
		notes = append(notes, fmt.Sprintf("Dart closed %.0f %%, %s left unsewn as ease at the waist", r.DartShare*100,
			say.Length(r.IntakeLeft)))
	case p.DartLeft == nil:
	case s.Lines != nil:
		notes = append(notes, fmt.Sprintf("Dart: %s left open at the waist", say.Length(r.IntakeLeft)))
	default:
		notes = append(notes, fmt.Sprintf("Dart closed %.0f %%, %s left open at the waist", r.DartShare*100,
			say.Length(r.IntakeLeft)))
	}
	if r.Hem > 0 {
		notes = append(notes, fmt.Sprintf("Hem %s below the waist, half hem %s", say.Length(r.Hem), say.Length(r.HemLine)))
	}
	if words := strapOf(s, p).words(); words != "" {
		notes = append(notes, words)
	}
	return plot.Options{Title: s.Name, Notes: append(notes,
		fmt.Sprintf("Edge hangs %s to %s below the cowl points in an upright plane", say.Length(r.DropChain),
			say.Length(r.DropV)),
		fmt.Sprintf("Seams: shoulder %s, armhole %s, side %s, half waist %s", say.Length(r.Shoulder), say.Length(r.Armhole),
			say.Length(r.Side), say.Length(r.Waist)),
		fmt.Sprintf("Cloth: %s across, %s along the grain", say.Length(r.Across), say.Length(r.Along)),
	)}
}

// suitFiles writes the pieces of a suit in the formats asked for, under names
// that begin with base.
func (f paperFlags) suitFiles(s style.Style, suit truing.Suit, base string) ([]console.File, error) {
	pieces, err := suit.Papers()
	if err != nil {
		return nil, err
	}
	o := plot.Options{Title: s.Name, Notes: suitNotes(s, suit)}
	return f.files(base, pieces, o, s.SizeWord())
}

// suitNotes lists the figures of the pieces for the sheet.
func suitNotes(s style.Style, suit truing.Suit) []string {
	r, b, cowl, plain := suit.Front.Report(), suit.Back.Report(), suit.Front.Worn, suit.Back.Worn()
	notes := []string{
		"Cut for: " + s.ForWhom(),
		fmt.Sprintf("Half edge %s, extension %s a half", say.Length(r.HalfEdge), say.Length(r.Extension)),
		fmt.Sprintf("%s seams: shoulder %s, armhole %s, side %s, half waist %s", ruler.Capital(cowl.String()),
			say.Length(r.Shoulder), say.Length(r.Armhole), say.Length(r.Side), say.Length(r.Waist)),
		fmt.Sprintf("%s: half neck %s, armhole %s, waist dart %s; shoulder and side as the cowl",
			ruler.Capital(plain.String()), say.Length(b.Neck), say.Length(b.Armhole), say.Length(b.DartIntake)),
		fmt.Sprintf("Neck opening %s round edge and %v neck", say.Length(draft.Opening(suit.Front, suit.Back)), plain),
	}
	if words := strapOf(s, suit.Front).words(); words != "" {
		notes = append(notes, words)
	}
	return append(notes, "For: "+s.Fabric.Name)
}
