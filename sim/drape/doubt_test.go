package drape

import (
	"strings"
	"testing"

	"cowl/sim"
)

// A drape that no cloth can do is never plainly settled.
func TestDoubt(t *testing.T) {
	sound := Outcome{Status: sim.Settled, Residual: 5e-4, MaxStrain: 0.04, Inside: 0.5e-3, Spacing: 0.008}
	for _, c := range []struct {
		name    string
		change  func(*Outcome)
		status  sim.Status
		warning string // a part of it; "": none
	}{
		{"sound", func(*Outcome) {}, sim.Settled, ""},
		{"strained by a tenth", func(o *Outcome) { o.MaxStrain = 0.1 }, sim.Settled, ""},
		{"strained by more", func(o *Outcome) { o.MaxStrain = 0.153 }, sim.Settled, "by up to 15 %"},
		{"a knot", func(o *Outcome) { o.MaxStrain = 0.31 }, sim.StepLimit, "knot"},
		{"inside the form", func(o *Outcome) { o.Inside = 1.3e-3 }, sim.Settled, "1.3 mm inside the form, 1.1 mm"},
		{"as deep on 20 mm", func(o *Outcome) { o.Inside, o.Spacing = 1.3e-3, 0.020 }, sim.Settled, ""},
		{"a stretched edge", func(o *Outcome) { o.EdgeGrowth = 0.18 }, sim.Settled, "edge is stretched by 18 %"},
		{"not at rest", func(o *Outcome) { o.Status = sim.StepLimit }, sim.StepLimit, "not come to rest"},
	} {
		o := sound
		c.change(&o)
		o.doubt()
		if o.Status != c.status || !strings.Contains(o.Warning, c.warning) || (c.warning == "") != (o.Warning == "") {
			t.Errorf("%s: %s, %q, want %s and %q", c.name, o.Status, o.Warning, c.status, c.warning)
		}
	}
}
