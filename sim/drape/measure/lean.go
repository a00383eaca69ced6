package measure

import (
	"fmt"

	"cowl/mesh/ruler"
	"cowl/sim/drape"
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

// LeanLines say what became of the cloth while its wearer bent; nil: nobody did.
func LeanLines(o *drape.Outcome) []string {
	l := o.Lean
	if l == nil {
		return nil
	}
	u := ruler.Spoken()
	of := func(p drape.Posture) string {
		text := fmt.Sprintf("edge %s off the form, %s open between them", u.Small(p.StandOff), u.Area(p.Opening, 0))
		if o.Laid > 0 {
			text += fmt.Sprintf(", %d of %d laid folds there", p.Kept, o.Laid)
		}
		if !p.Settled {
			text += " (not at rest)"
		}
		return text
	}
	return []string{"upright: " + of(l.Upright), fmt.Sprintf("%.0f° forward: ", Degree.From(l.Angle)) + of(l.Bent),
		"upright again: " + of(l.Back)}
}
