//go:build cgo

package main

import (
	"maps"
	"slices"
	"testing"
)

// reached returns all files that a file uses, directly or through others.
func (u uses) reached(from string) map[string]bool {
	seen := map[string]bool{}
	for next := []string{from}; len(next) > 0; {
		at := next[0]
		next = next[1:]
		for to := range u[at] {
			if !seen[to] {
				seen[to] = true
				next = append(next, to)
			}
		}
	}
	return seen
}

// largestKnot returns the most files that all reach each other; nil: there are no two.
func largestKnot(u uses) (most []string) {
	reached := map[string]map[string]bool{}
	for from := range u {
		reached[from] = u.reached(from)
	}
	for _, a := range slices.Sorted(maps.Keys(u)) {
		var knot []string
		for b := range reached[a] {
			if reached[b][a] {
				knot = append(knot, b)
			}
		}
		if len(knot) > len(most) {
			most = slices.Sorted(slices.Values(knot))
		}
	}
	return most
}

// backUp returns the references that run against the order of the files, as few as a
// simple search finds: files that nobody else uses stand first, those that use nobody
// last, and of the rest the one next that uses more than it is used.
func backUp(u uses) (up [][2]string) {
	place := map[string]int{}
	left := map[string]bool{}
	for from, to := range u {
		left[from] = true
		for f := range to {
			left[f] = true
		}
	}
	first, last := 0, len(left)
	for len(left) > 0 {
		file, out, in := u.next(left)
		delete(left, file)
		if out == 0 && in > 0 {
			last--
			place[file] = last
		} else {
			place[file] = first
			first++
		}
	}
	for from, to := range u {
		for f := range to {
			if place[f] < place[from] {
				up = append(up, [2]string{from, f})
			}
		}
	}
	return up
}

// next returns the file to be placed next, and how many of those left it uses and is used by.
func (u uses) next(left map[string]bool) (file string, out, in int) {
	best := -1 << 30
	for _, f := range slices.Sorted(maps.Keys(left)) {
		o, i := 0, 0
		for g := range left {
			if u[f][g] != "" {
				o++
			}
			if u[g][f] != "" {
				i++
			}
		}
		worth := o - i
		if o == 0 || i == 0 {
			worth = 1 << 20
		}
		if worth > best {
			best, file, out, in = worth, f, o, i
		}
	}
	return file, out, in
}

// The measure itself: a ring of three with a tail is a knot of three, and one reference of
// it runs back up.
func TestKnotOfThree(t *testing.T) {
	u := uses{"a": {"b": "B"}, "b": {"c": "C"}, "c": {"a": "A", "d": "D"}, "e": {"a": "A"}}
	if got, want := largestKnot(u), []string{"a", "b", "c"}; !slices.Equal(got, want) {
		t.Errorf("largestKnot = %v, want %v", got, want)
	}
	if got := backUp(u); len(got) != 1 {
		t.Errorf("backUp = %v, want one reference", got)
	}
	delete(u["c"], "a")
	if got := largestKnot(u); len(got) > 0 {
		t.Errorf("largestKnot without the ring = %v, want none", got)
	}
	if got := backUp(u); len(got) > 0 {
		t.Errorf("backUp without the ring = %v, want none", got)
	}
}
