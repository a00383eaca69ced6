package fold

import (
	"sort"

	"gonum.org/v1/gonum/stat"
)

// Modes returns the most frequent of the fold counts of several placings and
// its share, 0–1. Of equally frequent counts the lower is taken. A drape has
// several states of rest and the most frequent number of folds is the one to
// report (Jeong 1998, J. Textile Institute 89). No counts give 0, 0.
func Modes(counts []int) (mode int, share float64) {
	sorted := append([]int(nil), counts...)
	sort.Ints(sorted)
	best := 0
	for i, run := 0, 0; i < len(sorted); i++ {
		run++
		if i > 0 && sorted[i] != sorted[i-1] {
			run = 1
		}
		if run > best {
			best, mode = run, sorted[i]
		}
	}
	if best == 0 {
		return 0, 0
	}
	return mode, float64(best) / float64(len(counts))
}

// Spread returns the sample standard deviation (n − 1) of a quantity over
// several placings, in its own unit; 0 for fewer than two.
func Spread(v []float64) float64 {
	if len(v) < 2 {
		return 0
	}
	return stat.StdDev(v, nil)
}
