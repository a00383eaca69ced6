// Package cloths is the verbs that show fabrics and make them from tests: fabrics, [Fabrics],
// and swatch, [Swatch].
package cloths

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
)

// Fabrics is the verb fabrics.
type Fabrics struct {
	Name          string `arg:"" optional:"" help:"Show this fabric in full, as a fabric file."`
	Search        string `placeholder:"WORDS" help:"Only those with all these words in name, title, fibre or weave."`
	Weight        string `placeholder:"A:B" help:"Only those that weigh from A to B, 80gsm:150gsm; either may be left out."`
	BendingLength string `placeholder:"A:B" help:"Only those with a bending length from A to B, 8mm:12mm."`
	Limp          bool   `help:"The limpest first: sorted by bending length."`
	JSON          bool   `name:"json" help:"Print one JSON object and nothing else."`
}

// Run lists the library, a part of it or one fabric.
func (f Fabrics) Run(c console.Console) error {
	list, err := f.pick()
	if err != nil {
		return err
	}
	switch {
	case f.JSON:
		return c.PrintJSON(fabricsJSON(list))
	case f.Name != "":
		fmt.Fprintf(c.Out, "# %s: falls over edges longer than %.1f mm (gravity length)%s\n%s", list[0].Title,
			list[0].GravityLength()*1000, heldFlat(list[0]), list[0].YAML())
	case len(list) == 0:
		fmt.Fprintln(c.Out, "No fabric of the library fits. cowl fabrics lists all; cowl swatch makes one from tests.")
	default:
		fabricTable(c.Out, list)
	}
	return nil
}

// pick returns the fabrics asked for.
func (f Fabrics) pick() ([]materials.Fabric, error) {
	if f.Name != "" {
		if f.Search != "" || f.Weight != "" || f.BendingLength != "" || f.Limp {
			return nil, fmt.Errorf("fabrics %s: one fabric is named, want it without --search, --weight, --bending-length "+
				"and --limp", f.Name)
		}
		one, err := materials.Find(f.Name)
		return []materials.Fabric{one}, err
	}
	q := materials.Query{Words: f.Search, Limp: f.Limp}
	var err error
	if q.Weight, err = span(f.Weight, materials.Weight.Parse, "80gsm:150gsm"); err != nil {
		return nil, fmt.Errorf("--weight: %w", err)
	}
	if q.Length, err = span(f.BendingLength, style.ParseLength, "8mm:12mm"); err != nil {
		return nil, fmt.Errorf("--bending-length: %w", err)
	}
	return q.Pick(materials.Library()), nil
}

// span reads A:B, A: or :B; the zero Interval for nothing.
func span(text string, parse func(string) (float64, error), example string) (out materials.Interval, err error) {
	if text == "" {
		return out, nil
	}
	low, high, ok := strings.Cut(text, ":")
	if !ok || low == "" && high == "" {
		return out, fmt.Errorf("%q is no range, want two values with a colon between, like %s", text, example)
	}
	out.High = math.Inf(1)
	if low != "" {
		if out.Low, err = parse(low); err != nil {
			return out, err
		}
	}
	if high != "" {
		if out.High, err = parse(high); err != nil {
			return out, err
		}
	}
	if !(out.Low >= 0 && out.Low <= out.High && out.High > 0) {
		return out, fmt.Errorf("%q is no range, want the lower value first and none below 0, like %s", text, example)
	}
	return out, nil
}

// signs mark how a value is known; what is measured stands bare.
var signs = map[materials.Kind]string{materials.Measured: " ", materials.Derived: "d", materials.Assumed: "a",
	materials.Memory: "?"}

// knowledge groups the library, the best known first.
var knowledge = []struct {
	kind  materials.Kind
	title string
}{
	{materials.Measured, "Measured: weight, bending and shear read in published tables"},
	{materials.Derived, "Partly derived from measured values"},
	{materials.Assumed, "Partly assumed: a deciding value was not published"},
	{materials.Memory, "From memory: ranges recalled, a starting value from their middle, never evidence"},
}

// fabricTable prints fabrics in groups, in columns that run through all.
func fabricTable(w io.Writer, list []materials.Fabric) {
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "weight\tbend warp\tbend weft\tshear\tbend friction\tbending length\tdrape meter\t  ")
	fmt.Fprintln(t, "g/m²\tµN·m\tµN·m\tN/m\tmN\tmm\t%, rig cm, folds\t  ")
	titles := map[int]string{} // above which line
	line := 2
	for _, g := range knowledge {
		first := true
		for _, f := range list {
			if style.LeastKnown(f) != g.kind {
				continue
			}
			if first {
				titles[line] = g.title
				first = false
			}
			for _, q := range append(style.Deciding[:len(style.Deciding):len(style.Deciding)], materials.BendFriction) {
				fmt.Fprintf(t, "%s\t", cell(f, q))
			}
			fmt.Fprintf(t, "%.1f\t%s\t  %-26s %s\n", f.GravityLength()*1000, drapeCell(f.Drape), f.Name, f.Title)
			line++
		}
	}
	t.Flush()
	i := 0
	for row := range strings.Lines(b.String()) {
		if titles[i] != "" {
			fmt.Fprintf(w, "\n%s\n", titles[i])
		}
		fmt.Fprint(w, row)
		i++
	}
	fmt.Fprintf(w, "\nd derived, a assumed, ? from memory, – not measured, no sign: measured. Used where none is "+
		"named: %s.\n\nSources\n", materials.Default().Name)
	sources(w, list)
	fmt.Fprintln(w, "\ncowl fabrics NAME shows one in full, in the form of a fabric file.")
}

// cell writes a value, or its range where it is known as one, and its sign.
func cell(f materials.Fabric, q materials.Field) string {
	sign := signs[f.Basis[q].Kind]
	if i := q.RangeInUnits(f); i != (materials.Interval{}) {
		return fmt.Sprintf("%.4g–%.4g %s", i.Low, i.High, sign)
	}
	if q == materials.BendFriction && q.Value(f) == 0 {
		return "–  "
	}
	return fmt.Sprintf("%.4g %s", q.InUnits(f), sign)
}

// drapeCell writes a published drape test: "82.9, 25.4/12.7, 2".
func drapeCell(d *materials.DrapeMeter) string {
	if d == nil {
		return "–"
	}
	text := fmt.Sprintf("%.1f, %.3g/%.3g", d.Coefficient*100, d.Specimen*100, d.Disc*100)
	if d.Nodes > 0 {
		text += fmt.Sprintf(", %.3g", d.Nodes)
	}
	return text
}

// sources prints each source once, with its licence and the fabrics from it.
func sources(w io.Writer, list []materials.Fabric) {
	done := map[string]bool{}
	for _, f := range list {
		if done[f.Source] {
			continue
		}
		done[f.Source] = true
		var names []string
		for _, g := range list {
			if g.Source == f.Source {
				names = append(names, g.Name)
			}
		}
		fmt.Fprintf(w, "  %s\n      %s\n      Licence: %s\n", strings.Join(names, ", "), f.Source, f.Licence)
	}
}

// fabricJSON is one fabric under the keys of its file.
type fabricJSON map[string]any

// fabricsJSON lists fabrics for programs.
func fabricsJSON(list []materials.Fabric) map[string][]fabricJSON {
	out := []fabricJSON{}
	for _, f := range list {
		out = append(out, fabricJSONOf(f))
	}
	return map[string][]fabricJSON{"fabrics": out}
}

// fabricJSONOf writes one fabric; what is not known has no key.
func fabricJSONOf(f materials.Fabric) fabricJSON {
	basis, ranges, spreads := map[string]string{}, map[string][2]float64{}, map[string]float64{}
	one := fabricJSON{
		"name": f.Name, "title": f.Title, "fibre": f.Fibre, "weave": f.Weave,
		"gravity_length_mm": f.GravityLength() * 1000, "friction_length_mm": f.FrictionLength() * 1000,
		"bending_length_mm": f.GravityLength() * 1000,
		"basis":             basis, "range": ranges, "spread": spreads,
		"known": style.LeastKnown(f).String(), "confidence": f.Confidence, "source": f.Source, "licence": f.Licence,
		"note": f.Note,
	}
	for _, q := range materials.Fields() {
		one[q.Key()] = q.InUnits(f)
		basis[q.Key()] = f.Basis[q].String()
		if i := q.RangeInUnits(f); i != (materials.Interval{}) {
			ranges[q.Key()] = [2]float64{i.Low, i.High}
		}
		if s := q.SpreadInUnits(f); s > 0 {
			spreads[q.Key()] = s
		}
	}
	if d := f.Drape; d != nil {
		one["drape"] = map[string]any{
			"coefficient_percent": d.Coefficient * 100, "disc_mm": d.Disc * 1000, "specimen_mm": d.Specimen * 1000,
			"nodes": d.Nodes, "note": d.Note,
		}
	}
	return one
}

// heldFlat tells what the friction of bending holds; empty where a fabric has none.
func heldFlat(f materials.Fabric) string {
	l := f.FrictionLength()
	if l == 0 {
		return ""
	}
	return fmt.Sprintf("; its friction alone holds an edge of %.1f mm flat, %.2f of that", l*1000, l/f.GravityLength())
}
