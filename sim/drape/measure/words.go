package measure

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"cowl/sim/drape"
)

// Group is the figures that are told under one title, in their order.
type Group struct {
	Title   string
	Figures []*Figure
}

// InReport and InWindow are the groups of report and window, in the order of
// their first figures.
var (
	InReport = grouped(func(f *Figure) Words { return f.Report })
	InWindow = grouped(func(f *Figure) Words { return f.Window })
)

func grouped(words func(*Figure) Words) []Group {
	var out []Group
	for _, f := range All {
		w := words(f)
		if w.Says == "" {
			continue
		}
		k := slices.IndexFunc(out, func(g Group) bool { return g.Title == w.Under })
		if k < 0 {
			k, out = len(out), append(out, Group{Title: w.Under})
		}
		out[k].Figures = append(out[k].Figures, f)
	}
	for _, g := range out {
		slices.SortStableFunc(g.Figures, func(a, b *Figure) int { return words(a).At - words(b).At })
	}
	return out
}

// Told lists the figures of the group that there are.
func (g Group) Told(o *drape.Outcome) []*Figure {
	var out []*Figure
	for _, f := range g.Figures {
		if !(f.OnForm && o.Free) && !math.IsNaN(f.SI(o)) {
			out = append(out, f)
		}
	}
	return out
}

// Line is the line of the report; empty: there is nothing to tell. Words that
// begin with a comma go on from those before.
func (g Group) Line(o *drape.Outcome) string {
	text := ""
	for _, f := range g.Told(o) {
		says, v := f.Report.Pick(f.Value(o))
		if text != "" && !strings.HasPrefix(says, ",") {
			text += "; "
		}
		text += fmt.Sprintf(says, f.Amount(v))
	}
	return text
}

var named = regexp.MustCompile(`\{\w+\}`)

// Say fills the keys in braces of a text with the amounts of an outcome.
func Say(o *drape.Outcome, text string) string {
	return named.ReplaceAllStringFunc(text, func(key string) string {
		f := Named(key[1 : len(key)-1])
		return f.Amount(f.Value(o))
	})
}

// worded puts a word behind the amount.
func worded(says, word string) string { return strings.Replace(says, "%s", "%s "+word, 1) }
