package main

import (
	"fmt"
	"reflect"

	"cowl/materials"
)

// swatchFlags are the tests of a swatch; the name of a flag is the key of its
// materials.Trial.
type swatchFlags struct {
	Square       []string `group:"Sample room" placeholder:"LEN" help:"Side of the cut square that was weighed, 10.0cm."`
	Mass         []string `group:"Sample room" placeholder:"MASS" help:"Mass of that square, 1.35g."`
	Weight       []string `group:"Sample room" placeholder:"W" help:"Weight instead of square and mass: 135gsm, 4oz/yd2, 16momme."`
	OverhangWarp []string `group:"Sample room" placeholder:"LEN" help:"Strip along the warp pushed over an edge until edge to tip dips 41.5°: 3.2cm,3.3cm,3.1cm."`
	OverhangWeft []string `group:"Sample room" placeholder:"LEN" help:"The same along the weft."`
	OverhangBias []string `group:"Sample room" placeholder:"LEN" help:"The same at 45°. Without it a rule, ±40 %."`
	BiasStretch  []string `group:"Sample room" placeholder:"PCT" help:"Stretch of a bias strip under --bias-load: 5%."`
	BiasLoad     []string `group:"Sample room" placeholder:"LOAD" help:"Load on the width of the bias strip (5gf/cm)."`
	WarpStretch  []string `group:"Sample room" placeholder:"PCT" help:"Stretch along the warp under --warp-load."`
	WarpLoad     []string `group:"Sample room" placeholder:"LOAD" help:"Load on the width of the warp strip, 50gf/cm."`
	WeftStretch  []string `group:"Sample room" placeholder:"PCT" help:"Stretch along the weft under --weft-load."`
	WeftLoad     []string `group:"Sample room" placeholder:"LOAD" help:"Load on the width of the weft strip."`
	Thickness    []string `group:"Sample room" placeholder:"LEN" help:"Thickness, 0.31mm."`
	Drape        []string `group:"Sample room" placeholder:"PCT" help:"Drape coefficient read on a drape meter, kept beside the values: 22%."`
	Specimen     []string `group:"Sample room" placeholder:"LEN" help:"Diameter of its cloth, 30cm."`
	Disc         []string `group:"Sample room" placeholder:"LEN" help:"Diameter of its support, 18cm."`
	Nodes        []string `group:"Sample room" placeholder:"N" help:"Folds counted on it."`

	KesW       []string `name:"kes-w" group:"KES-F sheet, bare numbers in its units" placeholder:"W" help:"Weight, mg/cm²."`
	KesB       []string `name:"kes-b" group:"KES-F sheet, bare numbers in its units" placeholder:"B" help:"Bending, one value for both directions, gf·cm²/cm; or"`
	KesBWarp   []string `name:"kes-b-warp" group:"KES-F sheet, bare numbers in its units" placeholder:"B" help:"bending along the warp,"`
	KesBWeft   []string `name:"kes-b-weft" group:"KES-F sheet, bare numbers in its units" placeholder:"B" help:"along the weft,"`
	KesBBias   []string `name:"kes-b-bias" group:"KES-F sheet, bare numbers in its units" placeholder:"B" help:"and at 45°."`
	Kes2hb     []string `name:"kes-2hb" group:"KES-F sheet, bare numbers in its units" placeholder:"2HB" help:"Loop of the bending, gf·cm/cm; also --kes-2hb-warp, --kes-2hb-weft."`
	Kes2hbWarp []string `name:"kes-2hb-warp" hidden:""`
	Kes2hbWeft []string `name:"kes-2hb-weft" hidden:""`
	KesG       []string `name:"kes-g" group:"KES-F sheet, bare numbers in its units" placeholder:"G" help:"Shear, gf/(cm·deg), 0.2 to 3 for most cloth. NOT the G of FAST: 1 gf/(cm·deg) is 56.19 N/m. Also --kes-g-warp, --kes-g-weft."`
	KesGWarp   []string `name:"kes-g-warp" hidden:""`
	KesGWeft   []string `name:"kes-g-weft" hidden:""`
	Kes2hg     []string `name:"kes-2hg" group:"KES-F sheet, bare numbers in its units" placeholder:"2HG" help:"Loop of the shear at 0.5°, gf/cm; also --kes-2hg-warp, --kes-2hg-weft."`
	Kes2hgWarp []string `name:"kes-2hg-warp" hidden:""`
	Kes2hgWeft []string `name:"kes-2hg-weft" hidden:""`
	KesEmtWarp []string `name:"kes-emt-warp" group:"KES-F sheet, bare numbers in its units" placeholder:"EMT" help:"Stretch at 500 gf/cm along the warp, %."`
	KesEmtWeft []string `name:"kes-emt-weft" group:"KES-F sheet, bare numbers in its units" placeholder:"EMT" help:"The same along the weft."`
	KesLtWarp  []string `name:"kes-lt-warp" group:"KES-F sheet, bare numbers in its units" placeholder:"LT" help:"Linearity of that pull (0.65)."`
	KesLtWeft  []string `name:"kes-lt-weft" group:"KES-F sheet, bare numbers in its units" placeholder:"LT" help:"The same along the weft."`
	KesT       []string `name:"kes-t" group:"KES-F sheet, bare numbers in its units" placeholder:"T" help:"Thickness, mm."`

	FastW        []string `name:"fast-w" group:"FAST sheet, bare numbers in its units" placeholder:"W" help:"Weight, g/m²."`
	FastCWarp    []string `name:"fast-c-warp" group:"FAST sheet, bare numbers in its units" placeholder:"C" help:"Bending length along the warp, mm: half the overhang."`
	FastCWeft    []string `name:"fast-c-weft" group:"FAST sheet, bare numbers in its units" placeholder:"C" help:"The same along the weft."`
	FastCBias    []string `name:"fast-c-bias" group:"FAST sheet, bare numbers in its units" placeholder:"C" help:"The same at 45°."`
	FastBWarp    []string `name:"fast-b-warp" group:"FAST sheet, bare numbers in its units" placeholder:"B" help:"Bending along the warp, µN·m."`
	FastBWeft    []string `name:"fast-b-weft" group:"FAST sheet, bare numbers in its units" placeholder:"B" help:"The same along the weft."`
	FastBBias    []string `name:"fast-b-bias" group:"FAST sheet, bare numbers in its units" placeholder:"B" help:"The same at 45°."`
	FastG        []string `name:"fast-g" group:"FAST sheet, bare numbers in its units" placeholder:"G" help:"Shear, N/m, 15 to 100 for most cloth. NOT the G of KES."`
	FastEb5      []string `name:"fast-eb5" group:"FAST sheet, bare numbers in its units" placeholder:"EB5" help:"Bias stretch at 5 gf/cm, %; G is 123 over it."`
	FastE5Warp   []string `name:"fast-e5-warp" group:"FAST sheet, bare numbers in its units" placeholder:"E" help:"Stretch at 5 gf/cm along the warp, %; also -e20-, -e100-, and -weft."`
	FastE5Weft   []string `name:"fast-e5-weft" hidden:""`
	FastE20Warp  []string `name:"fast-e20-warp" hidden:""`
	FastE20Weft  []string `name:"fast-e20-weft" hidden:""`
	FastE100Warp []string `name:"fast-e100-warp" hidden:""`
	FastE100Weft []string `name:"fast-e100-weft" hidden:""`
	FastT2       []string `name:"fast-t2" group:"FAST sheet, bare numbers in its units" placeholder:"T" help:"Thickness at 2 gf/cm², mm."`
}

// given returns the readings of the flag of that key, nil if it was not given.
func (f swatchFlags) given(key string) []string {
	v := reflect.ValueOf(f)
	for i := range v.NumField() {
		if flagName(v.Type().Field(i)) == key {
			return v.Field(i).Interface().([]string)
		}
	}
	panic("cowl: no flag --" + key)
}

// flagName returns the name of a flag as kong makes it.
func flagName(f reflect.StructField) string {
	if name := f.Tag.Get("name"); name != "" {
		return name
	}
	return kebab(f.Name)
}

// kebab writes OverhangWarp as overhang-warp.
func kebab(name string) string {
	var out []rune
	for i, r := range name {
		if r >= 'A' && r <= 'Z' {
			if i > 0 {
				out = append(out, '-')
			}
			r += 'a' - 'A'
		}
		out = append(out, r)
	}
	return string(out)
}

// into puts what was given on the command line over the tests of a sheet.
func (f swatchFlags) into(s *materials.Swatch) error {
	for _, t := range materials.Trials() {
		if readings := f.given(t.Key()); readings != nil {
			if err := s.Set(t.Key(), readings); err != nil {
				return fmt.Errorf("--%s: %w", t.Key(), err)
			}
		}
	}
	return nil
}
