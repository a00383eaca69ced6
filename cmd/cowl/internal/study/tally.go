package study

import (
	"fmt"
	"math"
	"time"

	"cowl/cmd/cowl/internal/memory"
	"cowl/cmd/cowl/internal/study/rows"
)

// tally counts the drapes of a search to its end, on one line. How many there will be
// nobody knows; how many at most is known before the first.
type tally struct {
	most  int
	done  map[string]bool // by their key: what two rounds share is hung once
	fresh int             // of those, hung now
	began time.Time
	line  *paceLine
}

// A drape of 3916 points took 17.4 s in cowl bench, and from 1203 to 9681 points, 7.1 s to
// 48 s, the time went with their power 0.92 (sim/README, how long it takes). An idle machine
// takes half of that, a busy one three times (seen).
const (
	benchPoints  = 3916
	benchSeconds = 17.4
	benchPower   = 0.92
	idle, busy   = 0.5, 3
)

// newTally begins to count and says what a search may take.
func newTally(w *runner, leads []*lead, goal Want) *tally {
	quiet := w.Quiet || w.JSON
	t := &tally{most: mostDrapes(leads, goal), done: map[string]bool{}, began: time.Now(),
		line: newPaceLine(w.c.Err, quiet, "")}
	if quiet {
		return t
	}
	l := leads[0]
	c := l.at(l.hi)
	points := memory.Points(c.cowl, l.style.Job(c.cowl, nil).FinestSpacing())
	one := benchSeconds * math.Pow(points/benchPoints, benchPower)
	usual := one * float64(t.most) / float64(max(w.Jobs, 1))
	about := func(share float64) string { return spoken(time.Duration(share * usual * float64(time.Second))) }
	fmt.Fprintf(w.c.Err, "cowl: this search takes at most %d drapes of some %.0f points, about %s to %s with %d at a "+
		"time; what %s keeps is not hung again\n",
		t.most, points, about(idle), about(busy), w.Jobs, w.Dir)
	return t
}

// mostDrapes is how many drapes a search takes at most: in each lead the first hand closes
// in on the drop and all hands hang twice (or, where the drop is out of reach, the first hand
// hangs both ends), or six cuts are spread where no drop is wanted.
// More leads follow where more than the drop is wanted: three cowl points in each of the
// two best fabrics, and three shares of the dart.
func mostDrapes(leads []*lead, goal Want) int {
	hands := leads[0].style.Hang.Placings
	_, drop := goal[dropFigure]
	each := mostTries + max(2, 2*hands-1)
	if !drop {
		each = spreadOver * hands
	}
	n := len(leads)
	if !drop || len(goal) > 1 {
		n += min(2, n)*len(pointSteps) + len(shareSteps)
	}
	return n * each
}

// show tells how many are done.
func (t *tally) show(p rows.Pace) {
	if t.line.idle() {
		return
	}
	done := len(t.done) + p.Done
	text := fmt.Sprintf("%d of at most %d drapes", done, t.most)
	if p.Failed > 0 {
		text += fmt.Sprintf(", %d failed", p.Failed)
	}
	if fresh := t.fresh + p.Done; fresh > 0 && done < t.most {
		text += ", at most " + spoken(time.Since(t.began)/time.Duration(fresh)*time.Duration(t.most-done)) + " left"
	}
	t.line.write(text)
}

// add counts what a round has hung or found kept.
func (t *tally) add(list []rows.Row, results []rows.Result[Row]) {
	for i, r := range results {
		if !r.Done || t.done[list[i].Key] {
			continue
		}
		t.done[list[i].Key] = true
		if !r.Kept {
			t.fresh++
		}
	}
}

// pointSteps are the cowl points that are tried beside the given one, m.
var pointSteps = []float64{-0.02, 0.02, 0.04}

// shareSteps are the shares of the dart that are tried.
var shareSteps = []float64{0, 0.5, 1}
