package cloths

import (
	"fmt"
	"io"
	"strconv"
	"text/tabwriter"

	"cowl/materials"
)

// lengthNames are the directions of Sample.Lengths.
var lengthNames = []string{"warp", "weft", "bias", "mean"}

// swatchReport prints values, uncertainties and what they mean.
func swatchReport(w io.Writer, m materials.Sample) {
	f := m.Fabric
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "property\tvalue\t±\thow\n")
	for _, q := range materials.Fields() {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\n", q, q.Format(f), plusMinus(q.SpreadInUnits(f)), f.Basis[q])
	}
	if d := f.Drape; d != nil {
		fmt.Fprintf(t, "drape coefficient\t%.4g %%\t\t%s, %s\n", d.Coefficient*100, rig(d), d.Note)
	}
	t.Flush()
	fmt.Fprintln(w, "\nBending length, below which the cloth is stiff and above which it falls")
	for i, l := range m.Lengths {
		fmt.Fprintf(w, "  %s  %4.1f ± %.1f mm  (%.1f %%)\n", lengthNames[i], l.Value*1000, l.Spread*1000, 100*l.Relative())
	}
	fmt.Fprintln(w, "\nWhat that does to the drape")
	fmt.Fprintf(w, "  Folds              width and number uncertain by %.1f %%, on the bias by %.1f %% (¾ power of "+
		"the length; from memory)\n",
		100*materials.FoldSpread(m.Lengths[3]), 100*materials.FoldSpread(m.Lengths[2]))
	fmt.Fprintf(w, "  Drape coefficient  uncertain by %.1f points (Cusick 1965, from memory); one cloth scatters by "+
		"1–7 on a drape meter\n", 100*m.DrapeSpread())
	if len(m.Shares) > 0 {
		top := m.Shares[0]
		fmt.Fprintf(w, "  To do better       read %s more finely or more often: %.0f %% of the uncertainty is its\n",
			top.Trial.Key(), 100*top.Part)
	}
	if len(m.Warnings) > 0 {
		fmt.Fprintln(w, "\nTo note")
	}
	for _, n := range m.Warnings {
		fmt.Fprintf(w, "  %s\n", n)
	}
}

// plusMinus writes an uncertainty with two figures; nothing for none.
func plusMinus(v float64) string {
	if v == 0 {
		return ""
	}
	if v >= 10 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 2, 64)
}

// rig writes the sizes of a drape meter: "30/18 cm".
func rig(d *materials.DrapeMeter) string {
	if d.Specimen == 0 || d.Disc == 0 {
		return "size unknown"
	}
	return fmt.Sprintf("%.3g/%.3g cm", d.Specimen*100, d.Disc*100)
}

// estimateJSON is a value with one standard uncertainty.
type estimateJSON struct {
	Value  float64 `json:"value"`
	Spread float64 `json:"spread"`
}

// propertyJSON is a row of the table.
type propertyJSON struct {
	Key      string  `json:"key"`
	Property string  `json:"property"`
	Unit     string  `json:"unit,omitempty"`
	Value    float64 `json:"value"`
	Spread   float64 `json:"spread"`
	Known    string  `json:"known"`
	How      string  `json:"how"`
}

// swatchJSON is a swatch worked out, for programs.
type swatchJSON struct {
	Fabric       fabricJSON              `json:"fabric"`
	Properties   []propertyJSON          `json:"properties"`
	Lengths      map[string]estimateJSON `json:"bending_length_mm"`
	LengthPct    float64                 `json:"bending_length_spread_percent"`
	FoldsPct     float64                 `json:"fold_width_spread_percent"`
	FoldsBiasPct float64                 `json:"fold_width_spread_bias_percent"`
	DrapePoints  float64                 `json:"drape_coefficient_spread_points"`
	Shares       map[string]float64      `json:"uncertainty_shares"`
	Warnings     []string                `json:"warnings"`
	File         string                  `json:"file,omitempty"`
}

func swatchJSONOf(m materials.Sample, file string) swatchJSON {
	out := swatchJSON{
		Fabric: fabricJSONOf(m.Fabric), Lengths: map[string]estimateJSON{}, Shares: map[string]float64{},
		LengthPct: 100 * m.Lengths[len(m.Lengths)-1].Relative(), FoldsPct: 100 * materials.FoldSpread(m.Lengths[3]),
		FoldsBiasPct: 100 * materials.FoldSpread(m.Lengths[2]), DrapePoints: 100 * m.DrapeSpread(),
		Warnings: append([]string{}, m.Warnings...), File: file,
	}
	for _, q := range materials.Fields() {
		e := m.Fabric.Basis[q]
		out.Properties = append(out.Properties, propertyJSON{q.Key(), q.String(), q.Unit(), q.InUnits(m.Fabric),
			q.SpreadInUnits(m.Fabric), e.Kind.String(), e.How})
	}
	for i, l := range m.Lengths {
		out.Lengths[lengthNames[i]] = estimateJSON{l.Value * 1000, l.Spread * 1000}
	}
	for _, s := range m.Shares {
		out.Shares[s.Trial.Key()] = s.Part
	}
	return out
}
