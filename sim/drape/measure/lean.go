package measure

import (
	"fmt"
	"math"

	"cowl/mesh/ruler"
	"cowl/sim/drape"
)

// The least changes that are told: less is rounded away, m and m².
const (
	leastFall = 0.0005
	leastOpen = 0.5e-4
)

// postureJSON is what shows at one angle as result.json has it.
type postureJSON struct {
	StandOff float64 `json:"stand_off_mm"`
	Opening  float64 `json:"opening_mm2"`
	Kept     int     `json:"kept"`
	First    float64 `json:"first_fold_cf_mm,omitempty"`
	Settled  bool    `json:"settled"`
}

func leanJSON(l *drape.Lean) any {
	if l == nil {
		return nil
	}
	of := func(p drape.Posture) postureJSON {
		return postureJSON{1000 * p.StandOff, 1e6 * p.Opening, p.Kept, 1000 * p.First, p.Settled}
	}
	return struct {
		Angle   float64     `json:"angle_deg"`
		Upright postureJSON `json:"upright"`
		Bent    postureJSON `json:"bent"`
		Back    postureJSON `json:"back"`
	}{Degree.From(l.Angle), of(l.Upright), of(l.Bent), of(l.Back)}
}

// bent takes a figure off a lean; NaN: nobody bent.
func bent(of func(*drape.Lean) float64) func(*drape.Outcome) float64 {
	return func(o *drape.Outcome) float64 {
		if o.Lean == nil {
			return math.NaN()
		}
		return of(o.Lean)
	}
}

// LeanLines say what became of the cloth while its wearer bent; nil: nobody did.
func LeanLines(o *drape.Outcome) []string {
	if o.Lean == nil {
		return nil
	}
	return Leaning(o.Lean, o.Laid, ruler.Spoken())
}

// Leaning are the lines of a lean of cloth into which so many folds were laid.
func Leaning(l *drape.Lean, laid int, u ruler.Units) []string {
	of := func(p drape.Posture) string {
		text := fmt.Sprintf("edge %s off the form, %s open between them", u.Small(p.StandOff), u.Area(p.Opening, 0))
		if laid > 0 {
			text += fmt.Sprintf(", %d of %d laid folds there", p.Kept, laid)
		}
		if !p.Settled {
			text += " (not at rest)"
		}
		return text
	}
	return []string{"upright: " + of(l.Upright), fmt.Sprintf("%.0f° forward: ", Degree.From(l.Angle)) + of(l.Bent),
		"so " + falls(l.Bent.StandOff-l.Upright.StandOff, u) + ", and " + opens(l.Bent.Opening-l.Upright.Opening, u),
		"upright again: " + of(l.Back)}
}

// falls says how much farther from the chest the edge lies once its wearer has bent, m.
func falls(by float64, u ruler.Units) string {
	switch {
	case by >= leastFall:
		return "the edge falls " + u.Small(by) + " from the chest"
	case by <= -leastFall:
		return "the edge comes " + u.Small(-by) + " nearer to the chest"
	}
	return "the edge stays about as near to the chest"
}

// opens says how much more is seen into the neck then, m².
func opens(by float64, u ruler.Units) string {
	const seen = " for who looks from the front and above"
	switch {
	case by >= leastOpen:
		return "the neck opens by " + u.Area(by, 0) + seen
	case by <= -leastOpen:
		return "the neck closes by " + u.Area(-by, 0) + seen
	}
	return "the neck is about as open" + seen
}
