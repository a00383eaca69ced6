package main

import (
	"bytes"
	"io"
	"slices"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/export/csv"
	"cowl/mesh/export/dxf"
	"cowl/mesh/export/pdf"
	"cowl/mesh/export/svg"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/truing"
)

// paperFlags say in which formats a pattern is written.
type paperFlags struct {
	Format []string `default:"svg" enum:"svg,pdf,dxf,csv,all" placeholder:"F,…" help:"What to write: svg, pdf, dxf, csv, several with commas, or all (svg)."`
	Paper  string   `default:"both" enum:"a4,letter,both" help:"Home printer's paper for pdf: a4, letter or both (both)."`
}

// outputs makes the files of the cowl p, laid out for paper.
func (f paperFlags) outputs(s style.Style, p draft.Cowl, pieces []paper.Piece) ([]console.File, error) {
	return f.files("draft", pieces, drafted.Sheet(s, p), s.SizeWord())
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

// suitFiles writes the pieces of a suit in the formats asked for, under names
// that begin with base.
func (f paperFlags) suitFiles(s style.Style, suit truing.Suit, base string) ([]console.File, error) {
	pieces, err := suit.Papers()
	if err != nil {
		return nil, err
	}
	return f.files(base, pieces, drafted.SuitSheet(s, suit), s.SizeWord())
}
