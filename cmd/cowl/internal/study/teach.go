package study

import (
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/style"
)

// taught are the angles of the class sheet, degrees from the centre front to
// the warp.
var taught = []float64{0, 22.5, 45, 67.5, 90}

// planTeach makes one case an angle. All lay the same number of folds.
func planTeach(a Spec, s style.Style) (*plan, error) {
	f, err := parseFactor("grain=0,22.5,45,67.5,90")
	if err != nil {
		return nil, err
	}
	p := &plan{spec: a, style: s, vary: []factor{f}, page: teachPage, pairs: teachDiffs}
	for _, deg := range taught {
		one := s
		one.Cut.Grain = deg * math.Pi / 180
		c := newCase(fmt.Sprintf("%.4g°", deg), one)
		c.Values, c.steady, c.lined = []float64{deg}, true, true
		p.cases = append(p.cases, c)
	}
	return p, nil
}

// teachDiffs compares every angle with the true bias.
func teachDiffs(_ *plan, rs []caseResult) []difference {
	var out []difference
	for i, c := range rs {
		if i == bias {
			continue
		}
		for _, m := range leadingFigures {
			out = append(out, differ(m, rs[bias], c, len(rs)-1))
		}
	}
	return out
}
