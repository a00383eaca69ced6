package main

import (
	_ "embed"
	"fmt"
	"regexp"
	"strings"

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
	Style         string     `short:"s" placeholder:"FILE" help:"Style file in YAML. Without it: the built-in demo."`
	Size          *int       `placeholder:"N" help:"Size of the chart, 6 to 18 in steps of two; single measurements of the style go before it."`
	DartShare     *autoShare `placeholder:"0..1" help:"Share of the waist dart closed into the centre front; auto: as much as the extension needs."`
	Extension     *autoCloth `placeholder:"LEN" help:"Cloth added to half the edge; auto: what closing the dart gives."`
	How           string     `placeholder:"WAY" help:"How cloth is added beyond the dart: pivot, shift or slash."`
	Slashes       *int       `placeholder:"N" help:"Number of slashes, 1 to 6, with --how slash."`
	CowlPoint     *cloth     `placeholder:"LEN" help:"Where the edge meets the shoulder, from the neck point."`
	Facing        *cloth     `placeholder:"LEN" help:"Depth of the self-facing; 0cm: none."`
	Grain         *degrees   `placeholder:"DEG" help:"From the centre front to the warp: 0 straight, 45 true bias."`
	Trim          *cloth     `placeholder:"LEN" help:"Allowance outside the seam line."`
	Pleats        *int       `placeholder:"N" help:"Pleats in each shoulder seam, 0 to 4."`
	PleatDepth    *cloth     `placeholder:"LEN" help:"Depth of a pleat; it takes twice that of cloth."`
	PleatsTowards string     `placeholder:"WAY" help:"Where the folds of the pleats point: neck or armhole."`
	Block         string     `placeholder:"FILE" help:"Block of your own, a half front with one waist dart: .dxf, .svg or .csv, at full size."`
	BlockUnit     string     `enum:",mm,cm,m,in" default:"" placeholder:"UNIT" help:"Unit of that file, mm, cm, m or in, if it does not state its own."`
	BlockName     string     `placeholder:"NAME" help:"Which piece of that file, if it has several."`
	Piece         string     `placeholder:"FILE" help:"Finished cowl front of your own, both halves, instead of drafting one: .dxf, .svg or .csv, at full size."`
	PieceName     string     `placeholder:"NAME" help:"Which piece of that file, if it has several and not just one that is called front."`
	PieceUnit     string     `enum:",mm,cm,m,in" default:"" placeholder:"UNIT" help:"Unit of that file, mm, cm, m or in, if it does not state its own."`

	Lower  *cloth `placeholder:"LEN" help:"Trim the edge lower on the stand, square to the centre front."`
	TakeIn *cloth `placeholder:"LEN" help:"Cut off the side seam at the waist, to nothing at the underarm."`

	ReleaseWaist   *cloth `placeholder:"LEN" help:"Slash both halves from the waist to release the cloth."`
	ReleaseArmhole *cloth `placeholder:"LEN" help:"Slash both halves from the armhole to release the cloth."`
	Weight         *grams `placeholder:"G" help:"Weight sewn to the facing on the centre front, grams."`
	StayShoulder   bool   `help:"Sew a stay tape along the shoulder seams."`
	StayEdge       bool   `help:"Sew a stay tape along the cowl edge."`
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
	if err := f.drawn(&s); err != nil {
		return s, err
	}
	if f.How != "" {
		if s.Cut.How, err = draft.ParseHow(f.How); err != nil {
			return s, fmt.Errorf("--how: %s", strings.TrimPrefix(err.Error(), "draft: "))
		}
		s.Given("how", "--how")
	}
	if f.PleatsTowards != "" {
		if s.Cut.PleatsTo, err = draft.ParseTowards(f.PleatsTowards); err != nil {
			return s, fmt.Errorf("--pleats-towards: %s", strings.TrimPrefix(err.Error(), "draft: "))
		}
		s.Given("pleats_towards", "--pleats-towards")
	}
	for _, g := range []struct {
		name, flag string
		value      *float64
	}{
		{"size", "--size", number(f.Size)},
		{"dart_share", "--dart-share", number(f.DartShare)},
		{"extension", "--extension", number(f.Extension)},
		{"slashes", "--slashes", number(f.Slashes)},
		{"cowl_point", "--cowl-point", number(f.CowlPoint)},
		{"facing", "--facing", number(f.Facing)},
		{"grain", "--grain", number(f.Grain)},
		{"trim", "--trim", number(f.Trim)},
		{"pleats", "--pleats", number(f.Pleats)},
		{"pleat_depth", "--pleat-depth", number(f.PleatDepth)},
		{"lower", "--lower", number(f.Lower)},
		{"take_in", "--take-in", number(f.TakeIn)},
		{"release_waist", "--release-waist", number(f.ReleaseWaist)},
		{"release_armhole", "--release-armhole", number(f.ReleaseArmhole)},
		{"weight", "--weight", number(f.Weight)},
	} {
		if err := set(&s, g.name, g.flag, g.value); err != nil {
			return s, err
		}
	}
	s.Stand.StayShoulder = s.Stand.StayShoulder || f.StayShoulder
	s.Stand.StayEdge = s.Stand.StayEdge || f.StayEdge
	if f.Slashes != nil && s.Cut.How != draft.Slash {
		return s, fmt.Errorf("--slashes: cloth is added by %v, want --how slash with it", s.Cut.How)
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

// set overrides one number of s, unless it was not given.
func set(s *style.Style, name, flag string, value *float64) error {
	if value == nil {
		return nil
	}
	return s.Set(name, *value, flag)
}

// number widens a flag; nil stays nil.
func number[T ~int | ~uint64 | ~float64](v *T) *float64 {
	if v == nil {
		return nil
	}
	x := float64(*v)
	return &x
}

var negative = regexp.MustCompile(`^-[0-9.]`)

// joined writes "--grain -45" as "--grain=-45", which cannot be taken for a
// short flag.
func joined(args []string) []string {
	var out []string
	for _, a := range args {
		if n := len(out); n > 0 && negative.MatchString(a) && strings.HasPrefix(out[n-1], "--") && !strings.Contains(out[n-1], "=") {
			out[n-1] += "=" + a
			continue
		}
		out = append(out, a)
	}
	return out
}
