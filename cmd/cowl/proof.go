package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"cowl/cmd/cowl/internal/console"
	"cowl/sim/proof"
)

type proofCmd struct {
	Only     string `placeholder:"WORD" help:"Only the checks whose name holds the word, small or capital."`
	JSON     bool   `name:"json" help:"Print one JSON object and nothing else."`
	Markdown bool   `help:"Print the table in Markdown."`
	Quiet    bool   `short:"q" help:"No line of progress."`
}

// Run runs the checks and prints them, misses and all.
func (p proofCmd) Run(ctx context.Context, c console.Console) error {
	trials, err := only(proof.All(), p.Only)
	if err != nil {
		return err
	}
	line := console.NewLine(c.Err, p.Quiet || p.JSON)
	defer console.Heed()()
	checks := proof.Run(ctx, trials, func(ended int, begun string) {
		line.Show(console.Progress{
			Stage: fmt.Sprintf("%d of %d checks done, now %s", ended, len(trials), begun),
			Share: float64(ended) / float64(len(trials)),
		})
	})
	line.Clear()
	checks = slices.DeleteFunc(checks, proof.Check.Cancelled)
	return errors.Join(p.print(c, checks), ctx.Err())
}

// print prints the rows that have ended: all, unless the run was called off.
func (p proofCmd) print(c console.Console, checks []proof.Check) error {
	switch {
	case p.JSON:
		return c.PrintJSON(map[string]any{"checks": checks})
	case len(checks) == 0:
	case p.Markdown:
		markdown(c.Out, checks)
	default:
		proofTable(c.Out, checks)
	}
	return nil
}

// only returns the trials whose name holds the word, small or capital: all for none.
func only(all []proof.Pending, word string) ([]proof.Pending, error) {
	var out []proof.Pending
	var names strings.Builder
	for _, t := range all {
		if strings.Contains(strings.ToLower(t.Name), strings.ToLower(word)) {
			out = append(out, t)
		}
		fmt.Fprintf(&names, "\n  %s", t.Name)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("--only: no check has %q in its name; there are%s", word, names.String())
	}
	return out, nil
}

// proofTable prints a row a check, then how many pass.
func proofTable(w io.Writer, checks []proof.Check) {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "\tcheck\tours\tpublished\ttolerance\tsource")
	for _, c := range checks {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t± %s\t%s\n", verdict(c), c.Name, amount(c.Got, c.Unit), amount(c.Want, c.Unit),
			amount(c.Tolerance, c.Unit), c.Source)
	}
	t.Flush()
	for _, c := range checks {
		if c.Note != "" {
			fmt.Fprintf(w, "\n%s: %s", c.Name, c.Note)
		}
	}
	pass := passed(checks)
	fmt.Fprintf(w, "\n\n%d of %d pass, %d miss.\n", pass, len(checks), len(checks)-pass)
}

// markdown prints the table of sim/proof/README.md.
func markdown(w io.Writer, checks []proof.Check) {
	fmt.Fprintln(w, "| check | ours | published or closed form | tolerance | | source |")
	fmt.Fprintln(w, "|---|---|---|---|---|---|")
	for _, c := range checks {
		fmt.Fprintf(w, "| %s | %s | %s | ± %s | %s | %s |\n", c.Name, amount(c.Got, c.Unit), amount(c.Want, c.Unit),
			amount(c.Tolerance, c.Unit), verdict(c), c.Source)
	}
	fmt.Fprintf(w, "\n%d of %d pass.\n", passed(checks), len(checks))
}

// verdict is pass or miss.
func verdict(c proof.Check) string {
	if c.Pass {
		return "pass"
	}
	return "MISS"
}

// amount prints a figure to four places with its unit.
func amount(v float64, unit string) string {
	if unit == "" {
		return fmt.Sprintf("%.4g", v)
	}
	return fmt.Sprintf("%.4g %s", v, unit)
}

// passed counts the checks that pass.
func passed(checks []proof.Check) int {
	n := 0
	for _, c := range checks {
		if c.Pass {
			n++
		}
	}
	return n
}
