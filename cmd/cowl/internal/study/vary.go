package study

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/mesh/ruler"
)

// quantity is something a study can vary.
type quantity struct {
	name  string  // on the command line
	field string  // of the style; empty: a property of the cloth
	label string  // for people
	unit  string  // of the sheet
	scale float64 // SI value of one
	parse func(string) (float64, error)
	cloth func(materials.Fabric, float64) materials.Fabric
}

// quantities lists what can be varied.
var quantities = []quantity{
	{name: "size", field: "size", label: "size", scale: 1, parse: parseNumber},
	{name: "extension", field: "extension", label: "extension", unit: "cm", scale: 0.01, parse: style.ParseLength},
	{name: "grain", field: "grain", label: "grain", unit: "°", scale: math.Pi / 180, parse: style.ParseAngle},
	{name: "cowl-point", field: "cowl_point", label: "cowl point", unit: "cm", scale: 0.01, parse: style.ParseLength},
	{name: "facing", field: "facing", label: "facing", unit: "cm", scale: 0.01, parse: style.ParseLength},
	{name: "hem", field: "hem", label: "hem below the waist", unit: "cm", scale: 0.01, parse: style.ParseLength},
	{name: "dart-share", field: "dart_share", label: "dart share", scale: 1, parse: parseNumber},
	{name: "slashes", field: "slashes", label: "slashes", scale: 1, parse: parseNumber},
	{name: "pleats", field: "pleats", label: "pleats", scale: 1, parse: parseNumber},
	{name: "folds", field: "folds", label: "folds laid", scale: 1, parse: parseNumber},
	{name: "edge-depth", field: "edge_depth", label: "edge depth", unit: "cm", scale: 0.01, parse: style.ParseLength},
	{name: "weight", label: "weight", unit: "g/m²", scale: 1e-3, parse: materials.Weight.Parse,
		cloth: func(f materials.Fabric, v float64) materials.Fabric {
			f.Weight = v
			return assumed(f, materials.Weight)
		}},
	{name: "bend", label: "bending", unit: "µN·m", scale: 1e-6, parse: materials.BendWarp.Parse, cloth: bent},
	{name: "shear", label: "shear", unit: "N/m", scale: 1, parse: materials.Shear.Parse,
		cloth: func(f materials.Fabric, v float64) materials.Fabric {
			f.Shear = v
			return assumed(f, materials.Shear)
		}},
}

func parseNumber(text string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil {
		return 0, fmt.Errorf("%q is no number", text)
	}
	return v, nil
}

// bent brings the mean of warp and weft bending to v, N·m; their ratio and that
// of the bias stay.
func bent(f materials.Fabric, v float64) materials.Fabric {
	k := v / ((f.BendWarp + f.BendWeft) / 2)
	f.BendWarp, f.BendWeft, f.BendBias = k*f.BendWarp, k*f.BendWeft, k*f.BendBias
	return assumed(f, materials.BendWarp, materials.BendWeft, materials.BendBias)
}

// assumed marks fields as set by a study: they have no range any more, and the
// published drape test is of another cloth.
func assumed(f materials.Fabric, fields ...materials.Field) materials.Fabric {
	for _, q := range fields {
		f.Basis[q] = materials.Evidence{Kind: materials.Assumed, How: "set by a study of cowl"}
		f.Range[q], f.Spread[q] = materials.Interval{}, 0
	}
	f.Drape = nil
	if !strings.HasSuffix(f.Name, "-varied") {
		f.Name += "-varied"
	}
	return f
}

// factor is a quantity with the values it takes, SI.
type factor struct {
	quantity
	values []float64
}

// mostValues is as many values as one factor may take.
const mostValues = 60

// parseFactor reads NAME=FIRST:LAST:STEP or NAME=A,B,C.
func parseFactor(text string) (factor, error) {
	name, list, ok := strings.Cut(text, "=")
	f := factor{}
	var known []string
	for _, q := range quantities {
		known = append(known, q.name)
		if q.name == name {
			f.quantity = q
		}
	}
	if f.name == "" || !ok {
		return f, fmt.Errorf("--vary %s: want NAME=FIRST:LAST:STEP or NAME=A,B,C with NAME one of %s", text,
			strings.Join(known, ", "))
	}
	parts, stepped := strings.Split(list, ":"), strings.Contains(list, ":")
	if !stepped {
		parts = strings.Split(list, ",")
	}
	var read []float64
	for _, p := range parts {
		v, err := f.parse(p)
		if err != nil {
			return f, fmt.Errorf("--vary %s: %w", name, err)
		}
		read = append(read, v)
	}
	f.values = read
	if stepped {
		if len(read) != 3 || !(read[2] > 0 && read[1] > read[0]) {
			return f, fmt.Errorf("--vary %s: want FIRST:LAST:STEP with LAST above FIRST and a STEP above 0, like "+
				"extension=0cm:14cm:2cm", text)
		}
		f.values = stepsOf(read[0], read[1], read[2])
	}
	if n := len(f.values); n < 2 || n > mostValues {
		return f, fmt.Errorf("--vary %s: %d values, want 2–%d", text, n, mostValues)
	}
	return f, nil
}

// stepsOf lists first, first + step, … to last, to 12 figures.
func stepsOf(first, last, step float64) []float64 {
	n := math.Floor((last-first)/step + 1e-9)
	if n > mostValues {
		n = mostValues // one too many, to be refused
	}
	var out []float64
	for k := 0.0; k <= n; k++ {
		v, _ := strconv.ParseFloat(strconv.FormatFloat(first+k*step, 'g', 12, 64), 64)
		out = append(out, v)
	}
	return out
}

// column is the name of the factor in files, with its unit.
func (f factor) column() string {
	unit := map[string]string{"cm": "_cm", "°": "_deg", "": "", "g/m²": "_gsm", "µN·m": "_uNm", "N/m": "_N_per_m"}[f.unit]
	return strings.ReplaceAll(f.name, "-", "_") + unit
}

// axis is the name of the factor on an axis.
func (f factor) axis() string {
	text := ruler.Capital(f.label)
	switch {
	case f.name == "grain":
		return "Grain: from the centre front to the warp, °"
	case f.unit != "":
		return text + ", " + f.spokenUnit()
	}
	return text
}

// spokenUnit is the unit of the sheet as it is spoken: files keep to f.unit.
func (f factor) spokenUnit() string {
	if f.unit == "cm" {
		return string(ruler.Spoken())
	}
	return f.unit
}

// spoken turns a value that files are given into the unit that is spoken.
func (f factor) spoken(v float64) float64 {
	if f.unit == "cm" {
		return spokenLength(v)
	}
	return v
}

// spokenLength turns centimetres into the unit that is spoken.
func spokenLength(cm float64) float64 {
	if ruler.Spoken() == ruler.Inches {
		return cm / 100 / ruler.Inch
	}
	return cm
}

// said writes a value with its unit.
func (f factor) said(si float64) string {
	text := strconv.FormatFloat(f.spoken(f.shown(si)), 'g', 5, 64)
	switch f.unit {
	case "":
		return f.label + " " + text
	case "°":
		return text + "°"
	}
	return text + " " + f.spokenUnit()
}

// shown is a value in the unit of the sheet.
func (f factor) shown(si float64) float64 {
	v, _ := strconv.ParseFloat(strconv.FormatFloat(si/f.scale, 'g', 9, 64), 64)
	return v
}

// apply sets the factor to a value, SI.
func (f factor) apply(s *style.Style, v float64) error {
	if f.cloth == nil {
		return s.Set(f.field, v, "--vary "+f.name)
	}
	cloth := f.cloth(s.Fabric, v)
	read, err := materials.Parse(cloth.Name, cloth.YAML()) // as a style file is read again
	if err != nil {
		return limit.Under("--vary "+f.name, err)
	}
	s.Fabric = read
	return nil
}

// fits refuses what the cut of s has no use for.
func (f factor) fits(s style.Style) error {
	if f.name == "size" && s.OneBody() {
		return errors.New("--vary size: this style has own measurements, a block or a piece of its own, which are of one " +
			"body: leave them out")
	}
	if f.name == "slashes" && s.Cut.How != draft.Slash {
		return fmt.Errorf("--vary slashes: cloth is added by %v, want --how slash with it", s.Cut.How)
	}
	return nil
}
