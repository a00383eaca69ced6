package draft

import (
	"fmt"
	"math"

	"cowl/mesh/body"
	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// BackBlock is a bodice back, wearer's left half. Points are metres, X from
// the centre back (CB) to the side, Y up, origin on CB at the level of the
// shoulder neck point.
type BackBlock struct {
	Neck        r2.Vec   // shoulder neck point
	Nape        r2.Vec   // on CB
	ShoulderTip r2.Vec   // where shoulder seam and armhole meet
	Armhole     []r2.Vec // curve points between ShoulderTip and Underarm, in that order
	Underarm    r2.Vec   // where armhole and side seam meet
	SideWaist   r2.Vec   // side seam at the waist
	DartOuter   r2.Vec   // waist end of the dart leg towards the side
	DartPoint   r2.Vec   // where the waist dart ends
	DartInner   r2.Vec   // waist end of the dart leg towards CB
	CBWaist     r2.Vec   // waist on CB

	ease float64 // m, what its shoulder is longer than that of the piece it is sewn to

	// What a back needs that goes on below the waist, m, as in Block.
	HipWide, HipDeep float64
}

// Steps of the back (common practice for an Aldrich-type close-fitting bodice,
// from memory; the worked example of the draft has the same).
const (
	backEase      = 0.010 // m, what the back shoulder is longer than the front's
	backSideShare = 0.175 // of the half-waist suppression, in the back side seam
	backDartShare = 0.30  // of it, in the back waist dart
	backNeckWider = 0.005 // m, what the back neck is wider than the front's
	backScoop     = 0.025 // m, from the corner of back width and depth line to the armhole
)

// BackFromBody drafts the back of b, by the steps of the draft that FromBody
// takes the front from. Its side seam is as long as the front's and its
// shoulder 1 cm longer: the ease that a shoulder dart or a cut-off takes up.
// A shoulder slope that was taken turns both seams alike. A body that fails
// its own Validate, or whose back crosses itself, is an error.
func BackFromBody(b body.Body) (BackBlock, error) {
	if err := b.Validate(); err != nil {
		return BackBlock{}, err
	}
	t := twoDarts(b)
	depth, waist := t.Underarm.Y, t.CFWaist.Y
	width := b.BackWidth/2 + 0.005
	suppression := b.Bust/2 + 0.05 - (b.Waist/2 + 0.03)
	k := BackBlock{ease: backEase}
	k.Nape, k.CBWaist = r2.Vec{Y: -body.NapeDrop}, r2.Vec{Y: waist}
	k.Neck = r2.Vec{X: t.Neck.X + backNeckWider}
	slope := backSlope(t, b)
	k.ShoulderTip = r2.Add(k.Neck, r2.Scale(b.Shoulder+backEase, r2.Vec{X: math.Cos(slope), Y: -math.Sin(slope)}))
	// The frame is as wide as bust/2 + 5 cm; front and back share what lies
	// between their width lines.
	front := (b.AcrossFront + b.BustDart) / 2
	k.Underarm = r2.Vec{X: (b.Bust/2 + 0.05 + width - front) / 2, Y: depth}
	k.SideWaist = r2.Vec{X: k.Underarm.X - backSideShare*suppression, Y: waist}
	half := backDartShare * suppression / 2
	k.DartPoint = r2.Vec{X: width / 2, Y: depth}
	k.DartOuter, k.DartInner = r2.Vec{X: width/2 + half, Y: waist}, r2.Vec{X: width/2 - half, Y: waist}
	k.HipWide, k.HipDeep = hipOf(k.SideWaist.X-2*half, b), b.WaistToHip
	// The pitch lies on the back width line, half way from the level of the
	// drafted tip to the depth line.
	pitch := r2.Vec{X: width, Y: (depth - (b.Shoulder+backEase)*math.Sin(t.backSlope)) / 2}
	scoop := r2.Add(r2.Vec{X: width, Y: depth}, r2.Scale(backScoop/math.Sqrt2, r2.Vec{X: 1, Y: 1}))
	curve := smooth([]r2.Vec{k.ShoulderTip, pitch, scoop, k.Underarm}, r2.Vec{X: 1})
	k.Armhole = curve[1 : len(curve)-1]
	return k, k.check()
}

// cowl returns the block of which a back cowl is cut: k without the ease of its
// shoulder, which falls away with the neck that is cut off, as in MatchBack. The nape
// stands for the front neck point and the dart point for the apex.
func (k BackBlock) cowl() Block {
	k = k.shouldered(dist(k.Neck, k.ShoulderTip) - k.ease)
	return Block{
		Neck: k.Neck, CFNeck: k.Nape, Apex: k.DartPoint, ShoulderTip: k.ShoulderTip, Armhole: k.Armhole, Underarm: k.Underarm,
		SideWaist: k.SideWaist, DartOuter: k.DartOuter, DartInner: k.DartInner, CFWaist: k.CBWaist, HipWide: k.HipWide,
		HipDeep: k.HipDeep,
	}
}

// plain returns the block of which the plain front of a back cowl is cut.
func (b Block) plain() BackBlock {
	return BackBlock{
		Neck: b.Neck, Nape: b.CFNeck, ShoulderTip: b.ShoulderTip, Armhole: b.Armhole, Underarm: b.Underarm,
		SideWaist: b.SideWaist,
		DartOuter: b.DartOuter, DartPoint: b.Apex, DartInner: b.DartInner, CBWaist: b.CFWaist, HipWide: b.HipWide,
		HipDeep: b.HipDeep,
	}
}

// CowlFromBody drafts the block of b of which a cowl is cut that is worn at side s: the
// one-dart front of FromBody, or the back of BackFromBody with a shoulder as long as the
// front's. A body of which neither can be drafted is an error.
func CowlFromBody(b body.Body, s Side) (Block, error) {
	if s == AtFront {
		return FromBody(b)
	}
	k, err := BackFromBody(b)
	if err != nil {
		return Block{}, err
	}
	blk := k.cowl()
	if err := blk.check(); err != nil {
		return Block{}, limit.Errorf("body", "these measurements do not make a block for a back cowl: %v", err)
	}
	return blk, nil
}

// PlainFromBody drafts the block of b of which the plain piece is cut that is sewn to a
// cowl worn at side s: back or front. Errors are those of BackFromBody and FromBody.
func PlainFromBody(b body.Body, s Side) (BackBlock, error) {
	if s == AtFront {
		return BackFromBody(b)
	}
	blk, err := FromBody(b)
	return blk.plain(), err
}

// backSlope returns how far the back shoulder falls (rad): as drafted, or as
// much steeper than the front as in the draft about the slope that was taken.
func backSlope(t twoDart, b body.Body) float64 {
	if b.ShoulderSlope == 0 {
		return t.backSlope
	}
	taken := b.ShoulderSlope
	b.ShoulderSlope = 0
	front := closeShoulder(t, b).ShoulderSlope()
	return taken + (t.backSlope-front)/2
}

// corners returns the outline of the back, counter-clockwise from the waist on CB.
func (k BackBlock) corners() []corner {
	c := []corner{{"cb waist", k.CBWaist}, {"dart inner", k.DartInner}, {"dart point", k.DartPoint},
		{"dart outer", k.DartOuter},
		{"side waist", k.SideWaist}, {"underarm", k.Underarm}}
	for i := len(k.Armhole) - 1; i >= 0; i-- {
		c = append(c, corner{fmt.Sprintf("armhole %d", i+1), k.Armhole[i]})
	}
	return append(c, corner{"shoulder tip", k.ShoulderTip}, corner{"neck", k.Neck}, corner{"nape", k.Nape})
}

// check returns what keeps k from being cut, nil if nothing.
func (k BackBlock) check() error {
	if err := checkOutline(k.corners()); err != nil {
		return limit.Errorf("body", "these measurements do not make a back: %v", err)
	}
	return nil
}
