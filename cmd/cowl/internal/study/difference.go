package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/study/stats"
	"cowl/sim/drape/measure"
)

// difference is one comparison of two cases in one figure.
type difference struct {
	Figure        *measure.Figure
	First, Second string // names of the cases
	stats.Difference
}

// noDifference is what a difference within the scatter is called.
const noDifference = "no clear difference"

// differ compares cases in a figure; of is how many comparisons of that figure
// stand on the sheet.
func differ(m *measure.Figure, first, second caseResult, of int) difference {
	n := min(first.style.Hang.Placings, second.style.Hang.Placings)
	return difference{m, first.Name, second.Name, stats.Compare(first.values(m.Value)[:n], second.values(m.Value)[:n], of)}
}

// tooFew is what a difference is called that nothing can be said of.
const tooFew = "too few placings"

// verdict says that there is no clear difference or no telling; empty: it is clear.
func (d difference) verdict() string {
	switch {
	case d.Clear:
		return ""
	case math.IsInf(d.Limit, 1):
		return tooFew
	}
	return noDifference
}

// text says a difference, "+1.2 cm", or why it is not clear: a larger one may stand
// beside a smaller that is, as every pair of cuts has a scatter of its own.
func (d difference) text() string {
	switch v := d.verdict(); {
	case v == noDifference:
		return fmt.Sprintf("%s: %s, scatter %s", v, d.Figure.Change(d.Mean), d.Figure.Amount(d.Limit))
	case v != "":
		return v
	case strings.Trim(d.Figure.Number(d.Mean), "−0.") == "":
		return "differs by less than is shown"
	}
	return d.Figure.Change(d.Mean)
}

// statistic says, for the foot of a table, when a difference counts.
func statistic(placings, comparisons int) string {
	if placings < 3 {
		return "With fewer than 3 placings nothing is said of differences: there is no scatter to hold them against. Use " +
			"--placings 5 or more."
	}
	text := fmt.Sprintf("All cuts are placed by the same %d hands, so cuts are compared hand by hand. A difference is "+
		"clear if its mean lies further from zero than %.1f times its standard error (paired t-test, two-sided, 5 %%",
		placings, stats.Student(placings-1, comparisons))
	if comparisons > 1 {
		text += fmt.Sprintf(" shared among the %d comparisons of a column", comparisons)
	}
	return text + "). Anything less is called no clear difference, which does not mean that there is none."
}

// diffRows lists differences, one line a pair and one column a figure.
func diffRows(ds []difference) (list [][]string) {
	at := map[string]int{}
	for _, d := range ds {
		name := d.Second + " less " + d.First
		i, ok := at[name]
		if !ok {
			i = len(list)
			at[name] = i
			list = append(list, []string{name})
		}
		list[i] = append(list[i], d.text())
	}
	return list
}
