// Package body describes a person by the measurements a patternmaker takes.
// Lengths are metres and angles radians. Start at Body and FromChart.
package body

import "math"

// Body holds body measurements in metres (angle in radians), without ease.
// BustSpan, ApexDepth and ShoulderSlope may be zero, which means "not taken":
// the draft then follows its own rule for them and Filled puts in a value.
type Body struct {
	Bust, Waist, Hip float64 // girths
	BackWidth        float64 // across the back, armhole to armhole
	AcrossFront      float64 // across the front ("chest"), armhole to armhole
	Shoulder         float64 // neck point to shoulder tip
	Neck             float64 // girth at the neck base
	BustDart         float64 // width of the bust dart taken at the shoulder in the two-dart draft
	ArmscyeDepth     float64 // nape to the level of the armscye
	NapeToWaist      float64
	ShoulderSlope    float64 // rad below the horizontal
	BustSpan         float64 // apex to apex
	ApexDepth        float64 // apex below the level of the shoulder neck point
	WaistToHip       float64 // waist level to hip level
}

// Fixed steps of the draft that a body needs to find its own apex: the nape
// lies NapeDrop below the level of the shoulder neck point, the depth line is
// ArmscyeEase below the armscye and the apex ApexBelow under the depth line
// (m; steps of an Aldrich-type close-fitting bodice draft, from memory).
const (
	NapeDrop    = 0.015
	ArmscyeEase = 0.005
	ApexBelow   = 0.025
)

// MeanSlope is the shoulder slope used where none was taken (rad): the rounded
// mean of the front and back shoulder of common blocks, which run from 19° to
// 20° (from memory).
const MeanSlope = 20 * math.Pi / 180

// RuleBustSpan returns the apex distance of the draft (m): the apex halves
// half the across front with half the dart.
func (b Body) RuleBustSpan() float64 { return (b.AcrossFront + b.BustDart) / 2 }

// RuleApexDepth returns the depth of the apex of the draft below the level of
// the shoulder neck point (m).
func (b Body) RuleApexDepth() float64 {
	return NapeDrop + b.ArmscyeDepth + ArmscyeEase + ApexBelow
}

// Filled returns b with the three measurements that may be zero filled in:
// bust span and apex depth by the rules of the draft, the slope by MeanSlope.
func (b Body) Filled() Body {
	if b.BustSpan == 0 {
		b.BustSpan = b.RuleBustSpan()
	}
	if b.ApexDepth == 0 {
		b.ApexDepth = b.RuleApexDepth()
	}
	if b.ShoulderSlope == 0 {
		b.ShoulderSlope = MeanSlope
	}
	return b
}
