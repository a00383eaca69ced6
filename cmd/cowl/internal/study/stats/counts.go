package stats

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Share is how often a count came.
type Share struct{ Count, Times int }

// Counts lists the counts that came, the most frequent first; of equally
// frequent ones the lower.
func Counts(v []float64) []Share {
	var out []Share
	for _, x := range present(v) {
		c := int(math.Round(x))
		i := slices.IndexFunc(out, func(s Share) bool { return s.Count == c })
		if i < 0 {
			out = append(out, Share{c, 0})
			i = len(out) - 1
		}
		out[i].Times++
	}
	slices.SortFunc(out, func(a, b Share) int {
		if a.Times != b.Times {
			return b.Times - a.Times
		}
		return a.Count - b.Count
	})
	return out
}

// Brief is Spoken for a narrow column: "3 (17 of 20)".
func Brief(v []float64) string {
	shares, total := Counts(v), len(present(v))
	switch {
	case total == 0:
		return "–"
	case len(shares) == 1:
		return fmt.Sprint(shares[0].Count)
	}
	return fmt.Sprintf("%d (%d of %d)", shares[0].Count, shares[0].Times, total)
}

// Spoken says a distribution of folds: "3 folds in 17 of 20, else 4".
func Spoken(v []float64) string {
	shares, total := Counts(v), len(present(v))
	if total == 0 {
		return "no count"
	}
	noun := "folds"
	if shares[0].Count == 1 {
		noun = "fold"
	}
	first := fmt.Sprintf("%d %s", shares[0].Count, noun)
	if total == 1 {
		return first
	}
	if len(shares) == 1 {
		return fmt.Sprintf("%s in all %d", first, total)
	}
	var rest []string
	for _, s := range shares[1:] {
		rest = append(rest, fmt.Sprint(s.Count))
	}
	return fmt.Sprintf("%s in %d of %d, else %s", first, shares[0].Times, total, strings.Join(rest, " or "))
}
