package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/study/stats"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// Figures of a wearer who bends, in the units of the sheet.
var (
	bentOff  = measure.Named("bent_stand_off_mm")
	bentOpen = measure.Named("bent_opening_mm2")
)

// leanTable lists what every case did while its wearer bent and came up; nothing where
// nobody bent.
func leanTable(first string, rs []caseResult) []page.Block {
	t := &page.Table{Head: []string{first, "Upright: " + bentOff.People().Sign, bentOpen.People().Sign,
		"Bent: " + bentOff.People().Sign, bentOpen.People().Sign, "Upright again: " + bentOff.People().Sign,
		bentOpen.People().Sign, "Laid folds there"},
		Note: "Means over the hands: how far the edge stands off the form on the centre front, how large the opening " +
			"between edge and form is, and how many of the laid folds are still there upright, bent and upright again."}
	angle, leans := 0.0, false
	for _, c := range rs {
		row := []string{c.Name}
		for _, of := range postures {
			off := c.posture(of, func(p drape.Posture) float64 { return bentOff.In(p.StandOff) })
			open := c.posture(of, func(p drape.Posture) float64 { return bentOpen.In(p.Opening) })
			row = append(row, bentOff.Number(off), bentOpen.Number(open))
			leans = leans || !math.IsNaN(off)
		}
		var folds []string
		for _, of := range postures {
			folds = append(folds, number(c.posture(of, func(p drape.Posture) float64 { return float64(p.Kept) })))
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: append(row, strings.Join(folds, ", "))})
		angle = max(angle, c.style.Hang.Lean)
	}
	if !leans {
		return nil
	}
	return []page.Block{{Heading: fmt.Sprintf("Bent forward by %.0f° and up again", say.Degrees(angle)), Table: t}}
}

// postures are the three moments of a lean.
var postures = []func(*drape.Lean) drape.Posture{
	func(l *drape.Lean) drape.Posture { return l.Upright },
	func(l *drape.Lean) drape.Posture { return l.Bent },
	func(l *drape.Lean) drape.Posture { return l.Back },
}

// posture is the mean of a figure of one moment over the hands; NaN: nobody bent.
func (c caseResult) posture(at func(*drape.Lean) drape.Posture, of func(drape.Posture) float64) float64 {
	mean, _ := stats.Summary(c.values(func(o *drape.Outcome) float64 {
		if o.Lean == nil {
			return math.NaN()
		}
		return of(at(o.Lean))
	}))
	return mean
}

// number writes a mean of counts.
func number(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return fmt.Sprintf("%.3g", v)
}
