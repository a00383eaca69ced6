package draft

import (
	"math"

	"cowl/mesh/body"
	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// FromBody drafts the one-dart front of b. The steps are those of an
// Aldrich-type close-fitting two-dart bodice (from memory, after W. Aldrich,
// Metric Pattern Cutting for Women's Wear), whose shoulder dart is then closed
// so that all shaping lies in the waist dart.
//
// Three measurements are honoured only if they are given. BustSpan and
// ApexDepth put the apex in their place instead of the draft's. ShoulderSlope
// is the mean of a back and a front seam: both keep the difference they have
// in the draft, are turned alike until their mean is the slope given, and the
// front tip is set at the full shoulder length; without it the tip stays where
// closing the dart leaves it, under a millimetre short.
//
// A body that fails its own Validate, or whose block crosses itself, is an
// error.
func FromBody(b body.Body) (Block, error) {
	if err := b.Validate(); err != nil {
		return Block{}, err
	}
	blk := closeShoulder(twoDarts(b), b)
	blk.HipWide, blk.HipDeep = hipOf(blk.WaistLength(), b), b.WaistToHip
	if err := blk.check(); err != nil {
		return Block{}, limit.Errorf("body", "these measurements do not make a block: %v", err)
	}
	return blk, nil
}

// hipOf returns the half width at the hip of a front or back whose half waist, darts
// stitched, is given (m): it has as much more than a quarter of the body at the hip as
// at the waist, so the ease of the block and the place of its side seam go on down.
func hipOf(waist float64, b body.Body) float64 { return b.Hip/4 + waist - b.Waist/4 }

// twoDart is the front before the shoulder dart is closed; coordinates as Block.
type twoDart struct {
	Block                  // ShoulderTip to DartOuter still lie open
	dartOnShoulder r2.Vec  // far leg of the shoulder dart, on the neck level
	pitch, scoop   r2.Vec  // knots of the armhole between tip and underarm
	backSlope      float64 // rad, slope of the back shoulder seam
}

// Shares of the half-waist suppression taken by the front: the dart and the
// front side seam (worked example of an Aldrich-type draft; from memory).
const (
	dartSuppression = 0.35
	sideSuppression = 0.175
)

// twoDarts follows the steps of the draft. All constants are metres.
func twoDarts(b body.Body) twoDart {
	frame := b.Bust/2 + 0.05
	front := (b.AcrossFront + b.BustDart) / 2 // front width with the dart in it
	depth := -(body.NapeDrop + b.ArmscyeDepth + body.ArmscyeEase)
	waist := -(body.NapeDrop + b.NapeToWaist)
	back := b.BackWidth/2 + 0.005
	suppression := frame - (b.Waist/2 + 0.03)
	backDrop := body.NapeDrop + b.ArmscyeDepth/5 - 0.007 // level of the back tip
	frontDrop := backDrop + 0.015

	var t twoDart
	t.Neck = r2.Vec{X: b.Neck/5 - 0.007}
	t.CFNeck = r2.Vec{Y: -(b.Neck/5 - 0.002)}
	t.Apex = apex(b)
	t.dartOnShoulder = r2.Vec{X: t.Neck.X + b.BustDart}
	t.ShoulderTip = r2.Vec{X: t.dartOnShoulder.X + legOf(b.Shoulder, frontDrop), Y: -frontDrop}
	t.pitch = r2.Vec{X: front, Y: depth + front/3}
	t.scoop = r2.Add(r2.Vec{X: front, Y: depth}, r2.Scale(0.02/math.Sqrt2, r2.Vec{X: 1, Y: 1}))
	t.Underarm = r2.Vec{X: (frame - back + front) / 2, Y: depth}
	t.SideWaist = r2.Vec{X: t.Underarm.X - sideSuppression*suppression, Y: waist}
	t.DartOuter = r2.Vec{X: t.Apex.X + dartSuppression*suppression/2, Y: waist}
	t.DartInner = r2.Vec{X: t.Apex.X - dartSuppression*suppression/2, Y: waist}
	t.CFWaist = r2.Vec{Y: waist}
	t.backSlope = math.Asin(backDrop / (b.Shoulder + 0.01))
	return t
}

// apex returns the place of the bust point: as measured, else by the draft.
func apex(b body.Body) r2.Vec {
	f := b.Filled()
	return r2.Vec{X: f.BustSpan / 2, Y: -f.ApexDepth}
}

// legOf returns the other leg of a right triangle; Validate keeps it real.
func legOf(hypotenuse, leg float64) float64 {
	return math.Sqrt(hypotenuse*hypotenuse - leg*leg)
}

// closeShoulder swings the side of the front about the apex until the shoulder
// dart is closed, sets the shoulder tip and draws the armhole.
func closeShoulder(t twoDart, b body.Body) Block {
	blk := t.Block
	a := turn(r2.Sub(t.dartOnShoulder, blk.Apex), r2.Sub(blk.Neck, blk.Apex))
	swing := func(p r2.Vec) r2.Vec { return r2.Rotate(p, a, blk.Apex) }
	blk.ShoulderTip = swing(blk.ShoulderTip)
	blk.Underarm = swing(blk.Underarm)
	blk.SideWaist = swing(blk.SideWaist)
	blk.DartOuter = swing(blk.DartOuter)
	if b.ShoulderSlope != 0 {
		slope := b.ShoulderSlope - (t.backSlope-blk.ShoulderSlope())/2
		blk.ShoulderTip = r2.Add(blk.Neck, r2.Scale(b.Shoulder, r2.Vec{X: math.Cos(slope), Y: -math.Sin(slope)}))
	}
	// The armhole runs into the side seam level with the depth line, so that
	// front and back join without a point.
	level := r2.Rotate(r2.Vec{X: 1}, a, r2.Vec{})
	curve := smooth([]r2.Vec{blk.ShoulderTip, swing(t.pitch), swing(t.scoop), blk.Underarm}, level)
	blk.Armhole = curve[1 : len(curve)-1]
	return blk
}
