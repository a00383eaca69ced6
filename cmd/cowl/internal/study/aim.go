package study

import (
	"math"
	"slices"
)

// aim finds where a rising function meets a wanted value in few steps, each of
// which costs a hanging. It works on a grid, because a pattern is cut to the
// millimetre: places are whole numbers.
type aim struct {
	want   float64
	lo, hi int               // where the function may be asked
	plane  func(int) float64 // a rising guess of its shape; the function is close to a multiple of it
	tries  []try
	lost   []int // where the cloth did not come to rest, and so says nothing
}

// try is one place and what the function is there.
type try struct {
	at    int
	value float64
}

// closeEnough is how near a value is good enough, mm, and mostTries the number of tries
// after which the nearest is taken.
const (
	closeEnough = 1.5
	mostTries   = 6
)

// asideBy is how far beside a lost place the next is asked, mm: as little tells as much as
// the place itself would, and may come to rest.
const asideBy = 3

// usualShare is the drop on the form over that of the plane: seen 0.6 to 0.8.
const usualShare = 0.7

// next returns where to ask next; false: done, or no place is left to ask.
func (a *aim) next() (int, bool) {
	if len(a.tries)+len(a.lost) >= mostTries || len(a.tries) > 0 && math.Abs(a.best().value-a.want) <= closeEnough {
		return 0, false
	}
	at := min(max(a.guess(), a.lo), a.hi)
	if slices.Contains(a.lost, at) {
		return a.aside(at)
	}
	if !a.tried(at) {
		return at, true
	}
	// The guess falls on a place that was asked: halve what is left about the want.
	p, q := a.two()
	if (p.value < a.want) != (q.value < a.want) {
		at = (p.at + q.at) / 2
	} else if p.value < a.want {
		at = (max(p.at, q.at) + a.hi + 1) / 2
	} else {
		at = (min(p.at, q.at) + a.lo) / 2
	}
	return at, !a.tried(at)
}

// guess follows the line through the two tries about the want, or the nearest
// two, over plane.
func (a *aim) guess() int {
	switch len(a.tries) {
	case 0:
		return a.where(a.want / usualShare)
	case 1:
		t := a.tries[0]
		if t.value <= 0 {
			return (t.at + a.hi + 1) / 2
		}
		return a.where(a.plane(t.at) * a.want / t.value)
	}
	p, q := a.two()
	about := p.value < a.want && q.value >= a.want
	switch {
	case about && len(a.tries) >= 4 && len(a.tries)%2 == 0:
		return (p.at + q.at) / 2 // a line through a bend creeps: halve in between
	case p.value == q.value:
		return (a.lo + a.hi) / 2
	}
	if at := a.along(p, q); !about || len(a.tries) < mostTries-1 || math.Abs(a.best().value-a.want) < 2*closeEnough {
		return at
	}
	return a.beyond(p, q)
}

// along follows the line through two tries, over plane.
func (a *aim) along(p, q try) int {
	x, y := a.plane(p.at), a.plane(q.at)
	return a.where(x + (a.want-p.value)*(y-x)/(q.value-p.value))
}

// beyond is for the last try, about which the line from p to q has crept: the function is
// flat at first and then rises, so the line through the two tries above the want is carried
// on down, but not past p.
func (a *aim) beyond(p, q try) int {
	next := try{value: math.Inf(1)}
	for _, t := range a.tries {
		if t.at > q.at && t.value > q.value && t.value < next.value {
			next = t
		}
	}
	if math.IsInf(next.value, 1) {
		return a.along(p, q)
	}
	return min(max(a.along(q, next), p.at+1), q.at-1)
}

// two returns the tries next to the want by their place: the last below and the
// first above; if all lie on one side, the two nearest.
func (a *aim) two() (p, q try) {
	if len(a.tries) == 1 {
		return a.tries[0], a.tries[0]
	}
	sorted := slices.Clone(a.tries)
	slices.SortFunc(sorted, func(s, t try) int { return s.at - t.at })
	k := slices.IndexFunc(sorted, func(t try) bool { return t.value >= a.want })
	switch {
	case k < 0:
		k = len(sorted) - 1
	case k == 0:
		k = 1
	}
	return sorted[k-1], sorted[k]
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// where returns the place at which plane comes nearest to u.
func (a *aim) where(u float64) int {
	lo, hi := a.lo, a.hi
	for lo < hi {
		if mid := (lo + hi) / 2; a.plane(mid) < u {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo > a.lo && u-a.plane(lo-1) < a.plane(lo)-u {
		lo--
	}
	return lo
}

// aside returns the nearest place beside a lost one that was not asked; false: there is none.
func (a *aim) aside(at int) (int, bool) {
	for d := asideBy; at-d >= a.lo || at+d <= a.hi; d += asideBy {
		for _, beside := range []int{at + d, at - d} {
			if beside >= a.lo && beside <= a.hi && !a.tried(beside) {
				return beside, true
			}
		}
	}
	return at, false
}

func (a *aim) tried(at int) bool {
	return slices.Contains(a.lost, at) || slices.ContainsFunc(a.tries, func(t try) bool { return t.at == at })
}

// tell adds what was found at a place; NaN: nothing.
func (a *aim) tell(at int, value float64) {
	if math.IsNaN(value) {
		a.lost = append(a.lost, at)
		return
	}
	a.tries = append(a.tries, try{at, value})
}

// shift moves the function up by so much: the tries were one hand's, and all hands differ.
func (a *aim) shift(by float64) {
	for i := range a.tries {
		a.tries[i].value += by
	}
}

// best returns the nearest try; without a value, if all that were asked are lost.
func (a *aim) best() try {
	if len(a.tries) == 0 {
		return try{a.lost[0], math.NaN()}
	}
	return slices.MinFunc(a.tries, func(s, t try) int {
		return cmpFloat(math.Abs(s.value-a.want), math.Abs(t.value-a.want))
	})
}

// out reports whether the want lies beyond an end that was asked.
func (a *aim) out() bool {
	for _, t := range a.tries {
		if t.at == a.lo && t.value > a.want+closeEnough || t.at == a.hi && t.value < a.want-closeEnough {
			return true
		}
	}
	return false
}
