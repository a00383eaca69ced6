package body

import (
	"errors"
	"fmt"
	"math"
)

// field is one measurement with the range the draft can work with.
type field struct {
	name     string
	value    float64 // m, or rad where angle is set
	lo, hi   float64 // cm or degrees
	optional bool    // zero means "not taken"
	angle    bool
	fix      string // what to do when out of range
}

// fields lists the ranges: wide enough for grown women's sizes with a margin
// beyond the chart on both sides, narrow enough to catch inches, millimetres
// and half girths, which are the usual slips.
func (b Body) fields() []field {
	return []field{
		{name: "bust", value: b.Bust, lo: 60, hi: 160, fix: "measure the full girth over the fullest part, not half of it"},
		{name: "waist", value: b.Waist, lo: 45, hi: 150, fix: "measure the full girth at the natural waist"},
		{name: "hip", value: b.Hip, lo: 60, hi: 170, fix: "measure the full girth over the seat"},
		{name: "back width", value: b.BackWidth, lo: 24, hi: 52, fix: "measure from armhole to armhole across the shoulder blades"},
		{name: "across front", value: b.AcrossFront, lo: 22, hi: 52, fix: "measure from armhole to armhole above the bust"},
		{name: "shoulder", value: b.Shoulder, lo: 9, hi: 17, fix: "measure one shoulder from neck point to tip"},
		{name: "neck", value: b.Neck, lo: 28, hi: 52, fix: "measure the girth at the base of the neck"},
		{name: "bust dart", value: b.BustDart, lo: 0, hi: 14, fix: "give the width of the dart at the shoulder (7 cm for a bust of 88 cm)"},
		{name: "armscye depth", value: b.ArmscyeDepth, lo: 15, hi: 30, fix: "measure from the nape down to the level of the underarm"},
		{name: "nape to waist", value: b.NapeToWaist, lo: 32, hi: 52, fix: "measure from the nape down the back to the natural waist"},
		{name: "waist to hip", value: b.WaistToHip, lo: 12, hi: 32, fix: "measure from the natural waist down to the level of the seat"},
		{name: "shoulder slope", value: b.ShoulderSlope, lo: 15, hi: 26, optional: true, angle: true, fix: "give the slope below the horizontal (20° is usual) or leave it out"},
		{name: "bust span", value: b.BustSpan, lo: 12, hi: 32, optional: true, fix: "measure from apex to apex or leave it out"},
		{name: "apex depth", value: b.ApexDepth, lo: 17, hi: 40, optional: true, fix: "measure how far the apex lies below the neck point or leave it out"},
	}
}

// check says what is wrong with one measurement, nil if nothing.
func (f field) check() error {
	if f.optional && f.value == 0 {
		return nil
	}
	v, unit := f.value*100, "cm"
	if f.angle {
		v, unit = f.value*180/math.Pi, "°"
	}
	const slack = 1e-9 // so that a limit itself passes after unit conversion
	if v >= f.lo-slack && v <= f.hi+slack {
		return nil
	}
	return fmt.Errorf("body: %s %.1f %s, want %.1f–%.1f %s: %s", f.name, v, unit, f.lo, f.hi, unit, f.fix)
}

// Validate returns nil if a block can be drafted for b. Otherwise it returns
// one joined error with a line for each measurement that is out of its range;
// if every range holds, the measurements are checked against each other.
func (b Body) Validate() error {
	var errs []error
	for _, f := range b.fields() {
		errs = append(errs, f.check())
	}
	if err := errors.Join(errs...); err != nil {
		return err
	}
	for _, r := range b.relations() {
		errs = append(errs, r.check())
	}
	return errors.Join(errs...)
}

// relation says that a measurement may not exceed what others leave for it.
type relation struct {
	name   string
	value  float64 // m
	lo, hi float64 // m
	fix    string
}

// relations lists where a draft breaks although each measurement is possible.
func (b Body) relations() []relation {
	f := b.Filled()
	inf := math.Inf(1)
	return []relation{
		// Half the bust with its ease of 5 cm must cover half the waist with its ease of 3 cm.
		{"waist", b.Waist, 0, b.Bust + 0.04, "the draft has no room for a waist that much larger than the bust"},
		// A cup deeper than this would put the dart legs through CF and side seam.
		{"waist", b.Waist, b.Bust - 0.40, inf, "the waist dart would be wider than the front: check bust and waist"},
		// What lies between back and front width is the armhole; an arm needs 6 cm of it.
		{"back width + across front + bust dart", b.BackWidth + b.AcrossFront + b.BustDart, 0, b.Bust - 0.03, "no room is left for the armhole: check the widths against the bust"},
		// The front shoulder is struck from the neck level down to a line at a fifth of the armscye.
		{"shoulder", b.Shoulder, b.ArmscyeDepth/5 + 0.04, inf, "the shoulder is too short for the armscye depth"},
		// 8 cm of side seam at the least.
		{"armscye depth", b.ArmscyeDepth, 0, b.NapeToWaist - 0.08, "the side seam would be shorter than 8 cm: check nape to waist"},
		// The dart needs a leg of 8 cm to be a dart.
		{"apex depth", f.ApexDepth, 0, NapeDrop + b.NapeToWaist - 0.08, "the waist dart would be shorter than 8 cm"},
		// The apex lies below the armhole or the dart cuts it.
		{"apex depth", f.ApexDepth, NapeDrop + b.ArmscyeDepth - 0.03, inf, "the apex would lie above the armhole"},
		// The apex must lie on the front and not on the side seam.
		{"bust span", f.BustSpan, 0, b.AcrossFront, "the apex would lie under the arm"},
	}
}

func (r relation) check() error {
	const slack = 1e-9
	switch {
	case r.value >= r.lo-slack && r.value <= r.hi+slack:
		return nil
	case math.IsInf(r.hi, 1):
		return fmt.Errorf("body: %s %.1f cm, want at least %.1f cm: %s", r.name, r.value*100, r.lo*100, r.fix)
	}
	return fmt.Errorf("body: %s %.1f cm, want at most %.1f cm: %s", r.name, r.value*100, r.hi*100, r.fix)
}
