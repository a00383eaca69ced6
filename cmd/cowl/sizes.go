package main

import (
	"fmt"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/body"
	"cowl/mesh/limit"
	"cowl/mesh/ruler"
)

type sizesCmd struct {
	Chart string `placeholder:"FILE" help:"Size chart of your own in YAML, in place of the built-in one; see cowl help style."`
	JSON  bool   `name:"json" help:"Print one JSON object and nothing else."`
}

// sizesJSON is the chart, millimetres and degrees.
type sizesJSON struct {
	Source string    `json:"source"`
	Sizes  []int     `json:"sizes"`
	Rows   []sizeRow `json:"rows"`
	Height float64   `json:"height_mm,omitempty"` // none: the chart does not say
}

type sizeRow struct {
	Name   string    `json:"name"`
	Values []float64 `json:"values"` // one a size, mm or degrees
}

// Run prints the size chart and how a body is scaled from it.
func (z sizesCmd) Run(c console.Console) error {
	var chart *body.Chart
	head := "British sizes"
	if z.Chart != "" {
		var err error
		if chart, err = style.ChartFromFile(z.Chart); err != nil {
			return limit.Under("--chart", err)
		}
		head = "Sizes of " + z.Chart
	}
	sizes := chart.Numbers()
	out := sizesJSON{Source: chart.From(), Sizes: sizes, Height: say.MM(chart.For())}
	var text strings.Builder
	fmt.Fprintf(&text, "%s, %s\n\n  %-14s", head, ruler.Spoken(), "size")
	for _, n := range sizes {
		fmt.Fprintf(&text, "%8d", n)
	}
	text.WriteString("\n")
	for _, m := range body.Measures() {
		row := sizeRow{Name: m.Name}
		fmt.Fprintf(&text, "  %-14s", m.Name)
		for _, n := range sizes {
			b, err := chart.At(n)
			if err != nil {
				return err
			}
			b = b.Filled()
			v := *m.In(&b)
			if m.Unit == limit.Angle {
				row.Values = append(row.Values, say.Degrees(v))
				fmt.Fprintf(&text, "%7.1f°", say.Degrees(v))
				continue
			}
			row.Values = append(row.Values, say.MM(v))
			fmt.Fprintf(&text, "%8.2f", v*ruler.Spoken().PerMetre())
		}
		text.WriteString("\n")
		out.Rows = append(out.Rows, row)
	}
	if z.JSON {
		return c.PrintJSON(out)
	}
	if chart != nil {
		text.WriteString(ownChartWords(chart))
	} else {
		fmt.Fprintf(&text, `
Source: %s. Bust span, apex depth and shoulder slope follow the rules of the draft.
It is no chart of another country: take the line of your bust, not the number on a label.

cowl draft --bust 94cm reads the chart's line at that bust: the rows are linear in the size, so between two sizes it is read, beyond %d and %d drawn on, which is said. --waist-girth, --hip and the measurements of the style file go before it. --height scales armscye depth, nape to waist and waist to hip from the %s of the chart (%s to %s); that is common practice.
`, body.Source, body.SmallestSize, body.LargestSize, say.Round(body.ChartHeight), say.Round(1.6), say.Round(1.72))
	}
	fmt.Fprint(c.Out, text.String())
	return nil
}

// ownChartWords say how a chart of the user's own is read.
func ownChartWords(c *body.Chart) string {
	text := "\n"
	if c.Source != "" {
		text += "Source: " + c.Source + ". "
	}
	text += "Bust span, apex depth and shoulder slope follow the rules of the draft where the chart has none.\n"
	if len(c.Sizes) > 1 {
		text += "--bust reads the chart at that bust, between two sizes on the line from one to the other, beyond the last " +
			"drawn on.\n"
	}
	if c.Height == 0 {
		return text + "It does not say for which height it is made: --height is refused.\n"
	}
	return text + "--height scales what is measured upright from the " + say.Round(c.Height) + " of the chart.\n"
}
