package study

import (
	"math"
	"runtime"

	"cowl/cmd/cowl/internal/memory"
)

// tooLarge refuses, before anything is hung, cases of which so many drapes at the same
// time need more memory than this machine has.
func tooLarge(cases []oneCase, jobs int) error {
	most, drapes, each := 0.0, 0, 1
	for _, c := range cases {
		if c.wrong != nil {
			continue
		}
		most = math.Max(most, memory.Points(c.cowl, c.style.Job(c.cowl, nil).FinestSpacing()))
		drapes += c.style.Hang.Placings
		if c.finds() {
			each = memory.Tries
		}
	}
	jobs = min(drapes, jobs)
	return memory.Afford(most, jobs*each, jobs*min(each, runtime.GOMAXPROCS(0)), "a wider --spacing or fewer --jobs")
}
