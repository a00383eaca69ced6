package draft

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Report holds the figures a patternmaker asks of a piece: lengths in metres,
// angles in radians, areas in m². Seams are of one half, areas and footprint of
// the whole piece.
type Report struct {
	// seam lengths, Side down to the hem if there is one; Shoulder from the cowl point to the tip,
	// pleats folded
	Shoulder, Armhole, Side float64
	Waist                   float64 // waist line with what is left of the dart lying flat in it
	Hem, HemLine            float64 // Cowl.Hem, and the length of the hem line; 0: the front ends at the waist
	DartAngle               float64 // of the block
	DartIntake              float64 // of the block, at the waist
	DartShare               float64 // 0..1, share closed into CF
	// fullness left at the waist: stitch it as a dart, pleat it or ease it; with a hem it is ease
	IntakeLeft            float64
	Extension             float64 // per half
	FromDart, FromOther   float64 // the two parts of Extension
	HalfEdge              float64
	DropV, DropChain      float64 // drop of the edge on CF below the cowl points: bounds for a V and for a hanging chain
	CFLength              float64 // flat, edge to waist
	SurplusCF             float64 // CFLength less what hangs on the body between edge and waist
	Across, Along         float64 // footprint on the cloth, allowance included
	AreaFront, AreaFacing float64 // below and above the edge, no allowance
}

// Report measures the piece.
//
// SurplusCF is the cloth that must go into folds: the flat CF from edge to
// waist, less the height on the block from the hung edge to the waist, where
// the edge hangs DropChain below the cowl point. It is zero for an edge that
// does not drop, and negative where the edge is let out without adding length.
func (p Cowl) Report() Report {
	b := p.Block
	cowl := b.CowlPoint(p.CowlPoint)
	r := Report{
		Shoulder: p.ShoulderLength(), Armhole: polyline.Length(p.Armhole),
		Side: polyline.Length(p.Side), Waist: polyline.Length(p.Waist),
		DartAngle: b.DartAngle(), DartIntake: b.DartIntake(), DartShare: p.Added.DartShare,
		Extension: p.Extension, FromDart: p.Added.FromDart, FromOther: p.Added.FromOther,
		HalfEdge: p.HalfEdge,
	}
	if p.Hem > 0 {
		r.Waist, r.Hem, r.HemLine = polyline.Length(p.WaistLine), p.Hem, polyline.Length(p.Waist)
	}
	r.IntakeLeft = p.Eased
	if p.DartLeft != nil {
		r.IntakeLeft = dist(p.DartLeft[0], p.DartLeft[2])
	}
	r.DropV, r.DropChain = DropForEdge(cowl.X, p.HalfEdge)
	r.CFLength = p.FoldY - p.WaistY()
	r.SurplusCF = r.CFLength - (cowl.Y - b.CFWaist.Y - r.DropChain)
	r.Across, r.Along = Footprint(p.Outline, p.Grain, p.Trim)
	r.AreaFacing = polyline.Area(p.facingOutline())
	r.AreaFront = polyline.Area(p.Outline) - r.AreaFacing
	return r
}

// facingOutline returns the closed outline of the facing, counter-clockwise.
func (p Cowl) facingOutline() []r2.Vec {
	half := join(nil, p.FacingEnd...)
	half = join(half, p.FacingEdge...)
	out := half
	for i := len(half) - 2; i >= 0; i-- {
		out = append(out, mirrored(half[i]))
	}
	return out
}

// Footprint returns the box on the cloth that an outline takes with CF at
// grain radians from the warp and an allowance of trim metres all round:
// across (along the weft) and along (the warp), in metres. The tips of mitred
// corners are not counted: they may be clipped.
func Footprint(outline []r2.Vec, grain, trim float64) (across, along float64) {
	sin, cos := math.Sincos(grain)
	lo := r2.Vec{X: math.Inf(1), Y: math.Inf(1)}
	hi := r2.Scale(-1, lo)
	for _, p := range outline {
		u, v := p.X*cos-p.Y*sin, p.X*sin+p.Y*cos
		lo = r2.Vec{X: math.Min(lo.X, u), Y: math.Min(lo.Y, v)}
		hi = r2.Vec{X: math.Max(hi.X, u), Y: math.Max(hi.Y, v)}
	}
	return hi.X - lo.X + 2*trim, hi.Y - lo.Y + 2*trim
}
