package main

import (
	_ "embed"
	"errors"
	"fmt"
	"regexp"
	"strings"

	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

//go:embed demo.yaml
var demo []byte

// demoFile is how messages call the built-in style.
const demoFile = "demo.yaml (built in)"

// cutFlags choose a style and change how it is cut. What is not given stays
// as the style has it.
type cutFlags struct {
	Style     string `short:"s" placeholder:"FILE" help:"Style file in YAML. Without it: the built-in demo."`
	Cut       any    `embed:"" table:"body cut"`
	Chart     string `placeholder:"FILE" help:"Size chart of your own in YAML, in place of the built-in one; see cowl help style."`
	Block     string `placeholder:"FILE" help:"Block of your own, a half front with one waist dart: .dxf, .svg or .csv, at full size."`
	BlockUnit string `enum:",mm,cm,m,in" default:"" placeholder:"UNIT" help:"Unit of that file, mm, cm, m or in, if it does not state its own."`
	BlockName string `placeholder:"NAME" help:"Which piece of that file, if it has several."`
	Piece     string `placeholder:"FILE" help:"Finished cowl front of your own, both halves, instead of drafting one: .dxf, .svg or .csv, at full size."`
	PieceName string `placeholder:"NAME" help:"Which piece of that file, if it has several and not just one that is called front."`
	PieceUnit string `enum:",mm,cm,m,in" default:"" placeholder:"UNIT" help:"Unit of that file, mm, cm, m or in, if it does not state its own."`
	Stand     any    `embed:"" table:"stand"`
}

// styleFlags are cutFlags with where to write and what to print.
type styleFlags struct {
	cutFlags

	Out   string `short:"o" default:"cowl-out" placeholder:"DIR" help:"Folder for what is written (cowl-out)."`
	JSON  bool   `name:"json" help:"Print one JSON object and nothing else."`
	Quiet bool   `short:"q" help:"Print nothing but warnings."`
}

// load reads the style and lets the flags have their say.
func (f cutFlags) load() (style.Style, error) {
	s, err := f.read()
	if err != nil {
		return s, err
	}
	if f.Chart != "" {
		if err := s.UseChartFile(f.Chart); err != nil {
			return s, err
		}
	}
	if err := f.drawn(&s); err != nil {
		return s, err
	}
	if err := errors.Join(flags.SetFields(&s, f.Cut), flags.SetFields(&s, f.Stand)); err != nil {
		return s, err
	}
	if f.Style == "" {
		s.Name = s.Cut.Worn.Say(s.Name) // the demo's
	}
	if flags.IsGiven(f.Cut, "slashes") && s.Cut.How != draft.Slash {
		return s, fmt.Errorf("--slashes: cloth is added by %v, want --how slash with it", s.Cut.How)
	}
	if f.Piece != "" && f.Style == "" && !flags.IsGiven(f.Cut, "size") && !flags.IsGiven(f.Cut, "bust") {
		s.Notes = append(s.Notes, "the piece does not say for whom it was made, so it is hung on "+
			s.ForWhom()+": give --size or --bust")
	}
	return s, nil
}

// drawn takes block and piece from the files that were given.
func (f cutFlags) drawn(s *style.Style) error {
	for _, d := range []struct {
		flag string
		style.Drawing
		use func(style.Drawing) error
	}{
		{"--block", style.Drawing{File: f.Block, Unit: f.BlockUnit, Name: f.BlockName}, s.UseBlockFile},
		{"--piece", style.Drawing{File: f.Piece, Unit: f.PieceUnit, Name: f.PieceName}, s.UsePieceFile},
	} {
		switch {
		case d.File == "" && d.Unit != "":
			return fmt.Errorf("%s-unit: no %s is given", d.flag, d.flag)
		case d.File == "" && d.Name != "":
			return fmt.Errorf("%s-name: no %s is given", d.flag, d.flag)
		case d.File == "":
			continue
		}
		if err := d.use(d.Drawing); err != nil {
			return err
		}
	}
	return nil
}

// read reads the style file or the demo.
func (f cutFlags) read() (style.Style, error) {
	if f.Style == "" {
		return style.Parse(demoFile, demo)
	}
	return style.FromFile(f.Style)
}

var negative = regexp.MustCompile(`^-[0-9.]`)

// joined writes "--grain -45" as "--grain=-45", which cannot be taken for a
// short flag.
func joined(args []string) []string {
	var out []string
	for _, a := range args {
		if n := len(out); n > 0 && negative.MatchString(a) && strings.HasPrefix(out[n-1], "--") &&
			!strings.Contains(out[n-1], "=") {
			out[n-1] += "=" + a
			continue
		}
		out = append(out, a)
	}
	return out
}
