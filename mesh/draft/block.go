package draft

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Block is a one-dart bodice front, wearer's left half: all shaping lies in
// the waist dart. Points are metres, X from the centre front (CF) to the side,
// Y up, origin on CF at the level of the shoulder neck point.
type Block struct {
	Neck        r2.Vec   // shoulder neck point
	CFNeck      r2.Vec   // front neck point, on CF
	Apex        r2.Vec   // bust point, where the dart ends
	ShoulderTip r2.Vec   // where shoulder seam and armhole meet
	Armhole     []r2.Vec // curve points between ShoulderTip and Underarm, in that order
	Underarm    r2.Vec   // where armhole and side seam meet
	SideWaist   r2.Vec   // side seam at the waist
	DartOuter   r2.Vec   // waist end of the dart leg towards the side
	DartInner   r2.Vec   // waist end of the dart leg towards CF
	CFWaist     r2.Vec   // waist on CF

	// What a front needs that goes on below the waist, m; 0: not known.
	HipWide float64 // half the front at the hip, CF to side seam
	HipDeep float64 // waist to hip, down the side seam
}

// DartAngle returns the angle between the dart legs at the apex (rad), zero
// for a block without a dart.
func (b Block) DartAngle() float64 {
	return turn(r2.Sub(b.DartInner, b.Apex), r2.Sub(b.DartOuter, b.Apex))
}

// DartIntake returns the width of the dart at the waist (m).
func (b Block) DartIntake() float64 { return dist(b.DartOuter, b.DartInner) }

// DartLegs returns the lengths of the inner and the outer dart leg (m).
func (b Block) DartLegs() (inner, outer float64) {
	return dist(b.Apex, b.DartInner), dist(b.Apex, b.DartOuter)
}

// ShoulderLength returns the length of the shoulder seam (m).
func (b Block) ShoulderLength() float64 { return dist(b.Neck, b.ShoulderTip) }

// ShoulderSlope returns how far the shoulder seam falls below the horizontal (rad).
func (b Block) ShoulderSlope() float64 {
	d := r2.Sub(b.ShoulderTip, b.Neck)
	return math.Atan2(-d.Y, d.X)
}

// ArmholeLength returns the length of the armhole, shoulder tip to underarm (m).
func (b Block) ArmholeLength() float64 { return polyline.Length(b.armhole()) }

// SideLength returns the length of the side seam (m).
func (b Block) SideLength() float64 { return dist(b.Underarm, b.SideWaist) }

// WaistLength returns the length of the half waist with the dart stitched (m).
func (b Block) WaistLength() float64 {
	return dist(b.SideWaist, b.DartOuter) + dist(b.DartInner, b.CFWaist)
}

// CowlPoint returns the place along metres down the shoulder seam from the
// neck point.
func (b Block) CowlPoint(along float64) r2.Vec {
	return lerp(b.Neck, b.ShoulderTip, along/b.ShoulderLength())
}

// armhole returns the whole armhole line, shoulder tip to underarm.
func (b Block) armhole() []r2.Vec {
	line := append([]r2.Vec{b.ShoulderTip}, b.Armhole...)
	return append(line, b.Underarm)
}

// turn returns the angle from a to b, counter-clockwise positive (rad).
func turn(a, b r2.Vec) float64 {
	return math.Atan2(r2.Cross(a, b), r2.Dot(a, b))
}
