package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"cowl/materials"
)

type fabricsCmd struct {
	Name string `arg:"" optional:"" help:"Show this fabric in full, as a fabric file."`
	JSON bool   `name:"json" help:"Print one JSON object and nothing else."`
}

// Run lists the library or shows one fabric.
func (f fabricsCmd) Run(c console) error {
	list := materials.Library()
	if f.Name != "" {
		one, err := materials.Find(f.Name)
		if err != nil {
			return err
		}
		list = []materials.Fabric{one}
	}
	switch {
	case f.JSON:
		return printJSON(c, fabricsJSON(list))
	case f.Name != "":
		fmt.Fprintf(c.out, "# %s: falls over edges longer than %.1f mm (gravity length)\n%s", list[0].Title, list[0].GravityLength()*1000, list[0].YAML())
	default:
		fabricTable(c.out, list)
	}
	return nil
}

// deciding are the values that decide how a cloth falls.
var deciding = []materials.Field{materials.Weight, materials.BendWarp, materials.BendWeft, materials.Shear}

// signs mark how a value is known; what is measured stands bare.
var signs = map[materials.Kind]string{materials.Measured: " ", materials.Derived: "d", materials.Assumed: "a", materials.Memory: "?"}

// worst is how the least known of the deciding values is known.
func worst(f materials.Fabric) materials.Kind {
	k := materials.Measured
	for _, q := range deciding {
		k = max(k, f.Basis[q].Kind)
	}
	return k
}

// fabricTable prints the library in groups, the best known first.
func fabricTable(w io.Writer, list []materials.Fabric) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "weight\tbend warp\tbend weft\tshear\tgravity length\t  ")
	fmt.Fprintln(t, "g/m²\tµN·m\tµN·m\tN/m\tmm\t  ")
	for _, g := range []struct {
		kind  materials.Kind
		title string
	}{
		{materials.Measured, "Measured: every value read in a published table"},
		{materials.Derived, "Partly derived from measured values"},
		{materials.Assumed, "Partly assumed: a deciding value was not published"},
		{materials.Memory, "From memory: a starting value, never evidence"},
	} {
		first := true
		for _, f := range list {
			if worst(f) != g.kind {
				continue
			}
			if first {
				fmt.Fprintf(t, "\n%s\n", g.title)
				first = false
			}
			for _, q := range deciding {
				fmt.Fprintf(t, "%.4g %s\t", q.InUnits(f), signs[f.Basis[q].Kind])
			}
			fmt.Fprintf(t, "%.1f\t  %-26s %s\n", f.GravityLength()*1000, f.Name, f.Title)
		}
	}
	t.Flush()
	fmt.Fprintf(w, "\nd derived, a assumed, ? from memory, no sign: measured. Used where none is named: %s.\n\nSources\n", materials.Default().Name)
	sources(w, list)
	fmt.Fprintln(w, "\ncowl fabrics NAME shows one in full, in the form of a fabric file.")
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
		basis := map[string]string{}
		one := fabricJSON{
			"name": f.Name, "title": f.Title, "fibre": f.Fibre, "weave": f.Weave, "gravity_length_mm": f.GravityLength() * 1000,
			"basis": basis, "known": worst(f).String(), "confidence": f.Confidence, "source": f.Source, "licence": f.Licence, "note": f.Note,
		}
		for _, q := range materials.Fields() {
			one[q.Key()] = q.InUnits(f)
			basis[q.Key()] = f.Basis[q].String()
		}
		out = append(out, one)
	}
	return map[string][]fabricJSON{"fabrics": out}
}
