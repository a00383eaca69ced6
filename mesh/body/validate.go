package body

import (
	"math"

	"cowl/mesh/limit"
)

// Measure is one measurement: its name, where a Body holds it and what the
// draft can work with.
type Measure struct {
	Name     string
	Unit     limit.Unit
	lo, hi   float64 // in Unit
	In       func(*Body) *float64
	optional bool        // zero means "not taken"
	fix      limit.Words // what to do when out of range
}

// Measures lists all measurements. Their ranges are wide enough for grown
// women's sizes with a margin beyond the chart on both sides, narrow enough to
// catch inches, millimetres and half girths, which are the usual slips.
func Measures() []Measure {
	return []Measure{
		{"bust", limit.Length, 60, 160, func(b *Body) *float64 { return &b.Bust }, false,
			limit.Say("measure the full girth over the fullest part, not half of it")},
		{"waist", limit.Length, 45, 150, func(b *Body) *float64 { return &b.Waist }, false,
			limit.Say("measure the full girth at the natural waist")},
		{"hip", limit.Length, 60, 170, func(b *Body) *float64 { return &b.Hip }, false,
			limit.Say("measure the full girth over the seat")},
		{"back width", limit.Length, 24, 52, func(b *Body) *float64 { return &b.BackWidth }, false,
			limit.Say("measure from armhole to armhole across the shoulder blades")},
		{"across front", limit.Length, 22, 52, func(b *Body) *float64 { return &b.AcrossFront }, false,
			limit.Say("measure from armhole to armhole above the bust")},
		{"shoulder", limit.Length, 9, 17, func(b *Body) *float64 { return &b.Shoulder }, false,
			limit.Say("measure one shoulder from neck point to tip")},
		{"neck", limit.Length, 28, 52, func(b *Body) *float64 { return &b.Neck }, false,
			limit.Say("measure the girth at the base of the neck")},
		{"bust dart", limit.Length, 0, 14, func(b *Body) *float64 { return &b.BustDart }, false,
			limit.Say("give the width of the dart at the shoulder (%.0f for a bust of %.0f)", limit.Metres(0.07),
				limit.Metres(0.88))},
		{"armscye depth", limit.Length, 15, 30, func(b *Body) *float64 { return &b.ArmscyeDepth }, false,
			limit.Say("measure from the nape down to the level of the underarm")},
		{"nape to waist", limit.Length, 32, 52, func(b *Body) *float64 { return &b.NapeToWaist }, false,
			limit.Say("measure from the nape down the back to the natural waist")},
		{"waist to hip", limit.Length, 12, 32, func(b *Body) *float64 { return &b.WaistToHip }, false,
			limit.Say("measure from the natural waist down to the level of the seat")},
		{"shoulder slope", limit.Angle, 15, 26, func(b *Body) *float64 { return &b.ShoulderSlope }, true,
			limit.Say("give the slope below the horizontal (20° is usual) or leave it out")},
		{"bust span", limit.Length, 12, 32, func(b *Body) *float64 { return &b.BustSpan }, true,
			limit.Say("measure from apex to apex or leave it out")},
		{"apex depth", limit.Length, 17, 40, func(b *Body) *float64 { return &b.ApexDepth }, true,
			limit.Say("measure how far the apex lies below the neck point or leave it out")},
	}
}

// Ranges returns every measurement of b with what it may be by itself.
func (b Body) Ranges() []limit.Range {
	var out []limit.Range
	for _, m := range Measures() {
		out = append(out, limit.Range{
			Field: m.Name, Value: *m.In(&b), Lo: m.lo / m.Unit.PerSI, Hi: m.hi / m.Unit.PerSI, Unit: m.Unit,
			Why: m.fix, None: m.optional,
		})
	}
	return out
}

// Validate returns nil if a block can be drafted for b. Otherwise it returns
// one joined error, a limit.Error for each measurement that is out of its
// range; if every range holds, the measurements are checked against each other.
func (b Body) Validate() error {
	if err := limit.Check(b.Ranges()); err != nil {
		return err
	}
	return limit.Check(b.relations())
}

// relations lists where a draft breaks although each measurement is possible.
func (b Body) relations() []limit.Range {
	f := b.Filled()
	most := func(name string, value, hi float64, fix limit.Words) limit.Range {
		return limit.Range{Field: name, Value: value, Lo: math.Inf(-1), Hi: hi, Unit: limit.Length, Why: fix}
	}
	least := func(name string, value, lo float64, fix limit.Words) limit.Range {
		return limit.Range{Field: name, Value: value, Lo: lo, Hi: math.Inf(1), Unit: limit.Length, Why: fix}
	}
	return []limit.Range{
		// Half the bust with its ease of 5 cm must cover half the waist with its ease of 3 cm.
		most("waist", b.Waist, b.Bust+0.04, limit.Say("the draft has no room for a waist that much larger than the bust: "+
			"it would want front and back waist measured apart, which it does not take; give a block of your own")),
		// A cup deeper than this would put the dart legs through CF and side seam.
		least("waist", b.Waist, b.Bust-0.40, limit.Say("the waist dart would be wider than the front: check bust and waist")),
		// What lies between back and front width is the armhole; an arm needs 6 cm of it.
		most("back width + across front + bust dart", b.BackWidth+b.AcrossFront+b.BustDart, b.Bust-0.03,
			limit.Say("no room is left for the armhole: check the widths against the bust")),
		// The front shoulder is struck from the neck level down to a line at a fifth of the armscye.
		least("shoulder", b.Shoulder, b.ArmscyeDepth/5+0.04, limit.Say("the shoulder is too short for the armscye depth")),
		// 8 cm of side seam at the least.
		most("armscye depth", b.ArmscyeDepth, b.NapeToWaist-leastSide,
			limit.Say("the side seam would be shorter than %.0f: check nape to waist", limit.Metres(leastSide))),
		// The dart needs a leg of 8 cm to be a dart.
		most("apex depth", f.ApexDepth, NapeDrop+b.NapeToWaist-leastLeg,
			limit.Say("the waist dart would be shorter than %.0f", limit.Metres(leastLeg))),
		// The apex lies below the armhole or the dart cuts it.
		least("apex depth", f.ApexDepth, NapeDrop+b.ArmscyeDepth-0.03, limit.Say("the apex would lie above the armhole")),
		// The apex must lie on the front and not on the side seam.
		most("bust span", f.BustSpan, b.AcrossFront, limit.Say("the apex would lie under the arm")),
	}
}

// The shortest side seam and dart leg that can be sewn, m.
const leastSide, leastLeg = 0.08, 0.08
