package window

import (
	"fmt"
	"math"

	"cowl/sim/drape"
)

// ebb follows how what is out of balance in a drape ebbs away, to say about how long it
// takes to rest. On one lattice it falls by the same share in the same time, but for
// swings; on one of half the spacing it takes some eight times as long: four times the
// points, and twice the steps for a pull to go through the cloth.
type ebb struct {
	points int // of the lattice
	marks  []ebbMark
	every  float64 // s between marks; doubled when there is no more room
	sum    float64 // of logarithms since the last mark,
	many   float64 // and of how many
}

// ebbMark is the logarithm of a residual at a time.
type ebbMark struct{ at, log float64 }

// How an ebb is followed, and to where.
const (
	ebbEvery  = 0.2 // s, at first
	ebbMarks  = 48  // at most
	ebbLeast  = 4.0 // s that must have been seen
	finerTime = 8.0 // how many times as long as on the one before
)

// see takes note of a residual of cloth on a lattice of so many points; now is in s.
func (e *ebb) see(now float64, points int, residual float64) {
	if points != e.points || !(residual > 0 && residual < 1) {
		*e = ebb{points: points, every: ebbEvery}
		return
	}
	v := math.Log(residual)
	if n := len(e.marks); n > 0 && now < e.marks[n-1].at+e.every { // swings even out
		e.sum, e.many = e.sum+v, e.many+1
		return
	}
	e.marks = append(e.marks, ebbMark{now - e.every/2, (e.sum + v) / (e.many + 1)})
	e.sum, e.many = 0, 0
	if n := len(e.marks); n > ebbMarks { // the younger two thirds tell more than what was long ago
		young := e.marks[n/3:]
		for k := range len(young) / 2 {
			a, b := young[2*k], young[2*k+1]
			e.marks[k] = ebbMark{(a.at + b.at) / 2, (a.log + b.log) / 2}
		}
		e.marks, e.every = e.marks[:len(young)/2], 2*e.every
	}
}

// left returns about how long it takes to rest, s, where the spacing is to be halved so
// many times yet; false where that cannot be told.
func (e *ebb) left(halvings int) (float64, bool) {
	n := len(e.marks)
	if n < 8 || e.marks[n-1].at-e.marks[0].at < ebbLeast {
		return 0, false
	}
	slope, last := e.line()
	if slope > -1e-3 { // it swings, or takes longer than anybody waits
		return 0, false
	}
	tau, goal := -1/slope, drape.RestAt
	if halvings > 0 {
		goal = drape.FinerAt
	}
	sum := tau * max(last-math.Log(goal), 0)
	for k := range halvings {
		tau *= finerTime
		goal = drape.FinerAt
		if k == halvings-1 {
			goal = drape.RestAt
		}
		sum += tau * math.Log(finerFrom/goal)
	}
	return sum, true
}

// finerFrom is about the residual of cloth that was just laid on a finer lattice.
const finerFrom = 0.3

// line fits a straight line to the marks; last is where it has come to.
func (e *ebb) line() (slope, last float64) {
	var at, log, xx, xy float64
	n := float64(len(e.marks))
	for _, m := range e.marks {
		at, log = at+m.at/n, log+m.log/n
	}
	for _, m := range e.marks {
		xx += (m.at - at) * (m.at - at)
		xy += (m.at - at) * (m.log - log)
	}
	slope = xy / xx
	return slope, log + slope*(e.marks[len(e.marks)-1].at-at)
}

// halvingsLeft is how often the spacing is still to be halved for a lattice of points on
// so much cloth, m², to be as fine as is asked for, m.
func halvingsLeft(points int, area, spacing float64) int {
	if points == 0 {
		return 0
	}
	return max(int(math.Round(math.Log2(math.Sqrt(area/float64(points))/spacing))), 0)
}

// leftWords tells a time roughly, s.
func leftWords(s float64) string {
	switch {
	case s < 8:
		return "a few seconds left"
	case s < 90:
		return fmt.Sprintf("about %.0f s left", math.Ceil(s/10)*10)
	case s < 90*60:
		return fmt.Sprintf("about %.0f min left", math.Ceil(s/60))
	}
	return fmt.Sprintf("about %.0f h left", math.Ceil(s/3600))
}

// balanceShare is the share of the way to rest that lies behind a residual.
func balanceShare(res float64) float64 { return min(max(-math.Log10(res)/3, 0), 0.98) }
