package materials

import (
	"slices"
	"strings"
)

// near returns up to three of names that s may have meant: those within a
// third of its length in edits, or that share a word with it, nearest first.
func near(s string, names []string) []string {
	type scored struct {
		name string
		cost int
	}
	if len(s) > mostNear {
		return nil // no slip of the finger
	}
	var hits []scored
	for _, n := range names {
		d := edits(s, n)
		if d <= max(2, len(s)/3) || sharesWord(s, n) {
			hits = append(hits, scored{n, d})
		}
	}
	slices.SortStableFunc(hits, func(a, b scored) int { return a.cost - b.cost })
	out := make([]string, 0, 3)
	for _, h := range hits[:min(3, len(hits))] {
		out = append(out, h.name)
	}
	return out
}

// mostNear is how long a word may be for others to be near it; twice the longest
// name there is.
const mostNear = 80

// didYouMean returns " (near: a, b)", or nothing if no name is near.
func didYouMean(s string, names []string) string {
	if n := near(s, names); len(n) > 0 {
		return " (near: " + strings.Join(n, ", ") + ")"
	}
	return ""
}

// sharesWord reports whether a and b share a part of three letters or more
// between hyphens or underscores.
func sharesWord(a, b string) bool {
	parts := func(s string) []string {
		return strings.FieldsFunc(s, func(r rune) bool { return r == '-' || r == '_' || r == ' ' })
	}
	for _, p := range parts(a) {
		if len(p) >= 3 && slices.Contains(parts(b), p) {
			return true
		}
	}
	return false
}

// edits returns the Levenshtein distance of a and b in bytes.
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
