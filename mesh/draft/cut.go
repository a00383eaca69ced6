package draft

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"cowl/mesh/limit"
)

// How names the way in which cloth is added beyond what the dart gives.
type How int

// The ways to add cloth, from common practice of flat pattern cutting.
const (
	Pivot How = iota // turn the front about the waist on CF: adds at the edge only
	Shift            // move the front away from CF: adds at edge and waist alike
	Slash            // slash from CF to the shoulder seam and spread: adds length along CF
)

// String returns the name used in reports and files.
func (h How) String() string {
	if h < Pivot || h > Slash {
		return fmt.Sprintf("How(%d)", int(h))
	}
	return [...]string{"pivot", "shift", "slash"}[h]
}

// ParseHow returns the How of a name that String gives.
func ParseHow(name string) (How, error) {
	for h := Pivot; h <= Slash; h++ {
		if h.String() == name {
			return h, nil
		}
	}
	return 0, wayError(strconv.Quote(name))
}

// Auto lets the draft choose a DartShare or an Extension.
const Auto = -1

// Cut says how the cowl is cut from the block.
type Cut struct {
	Worn      Side    // where the cowl is worn
	DartShare float64 // 0..1, share of the waist dart closed into CF; Auto (below 0): as much as the extension needs
	// m per half: edge length less the distance of the cowl point from CF on the block; Auto: what
	// the dart gives (the whole dart if DartShare is Auto too)
	Extension float64
	How       How     // how cloth is added beyond the dart
	Slashes   int     // number of slashes, 1..6; read for Slash only
	CowlPoint float64 // m down the shoulder seam from the neck point
	Facing    float64 // m, depth of the self-facing, at least 1 cm; 0: none
	Grain     float64 // rad from CF (+Y) to the warp, towards the wearer's left
	Trim      float64 // m, allowance outside the seam line
	Hem       float64 // m below the waist on CF and down the side seam; 0: the front ends at the waist

	Pleats     int     // in each shoulder seam, 0..4
	PleatDepth float64 // m, each takes twice that of cloth; read if there are Pleats
	PleatsTo   Towards // where their folds point
}

// DefaultCut is a mid-depth cowl on the true bias. Its allowance leaves an
// inch to spare, as a muslin is cut: bias seams are trimmed after it has hung.
func DefaultCut() Cut {
	return Cut{
		DartShare: Auto, Extension: 0.08, How: Pivot, Slashes: 2,
		CowlPoint: 0.04, Facing: 0.10, Grain: math.Pi / 4, Trim: 0.025,
		PleatDepth: 0.02,
	}
}

// What a cut may be.
const (
	// leastShoulder must be left between cowl point and tip: clearTip and 1 cm
	// more, in which the facing end is caught.
	leastShoulder = 0.03
	// clearTip keeps the end of the facing out of the armhole seam, where its
	// bulk would show: 1 cm for the seam and as much again.
	clearTip = 0.02

	MostExtension           = 0.40 // m
	leastFacing, mostFacing = 0.01, 0.30
	MostTrim                = 0.10 // m, widest allowance
	MostSlashes             = 6
)

// Ranges returns the numbers of c with what each may be by itself on the block
// b; how they go together the draft tells.
func (c Cut) Ranges(b Block) []limit.Range {
	return []limit.Range{
		{Field: "dart share", Value: given(c.DartShare), Hi: 1, Unit: limit.Share,
			Why: limit.Say("0 leaves the dart open, 1 closes it, auto closes as much as the extension needs")},
		{Field: "extension", Value: given(c.Extension), Hi: MostExtension, Unit: limit.Length,
			Why: limit.Say("deeper than the body is long: deep cowls take %.0f", limit.Between(0.20, 0.30, limit.Length))},
		{Field: "cowl point", Value: c.CowlPoint, Hi: b.ShoulderLength() - leastShoulder, Unit: limit.Length,
			Why: limit.Say("at least %.0f of shoulder must be left to carry the edge and catch the facing",
				limit.Metres(leastShoulder))},
		{Field: "facing", Value: c.Facing, Lo: leastFacing, Hi: mostFacing, Unit: limit.Length, None: true,
			Why: limit.Say("%.0f is usual, 0 for none; a narrower one does not stay folded",
				limit.Between(0.05, 0.15, limit.Length))},
		{Field: "grain", Value: c.Grain, Lo: -math.Pi / 2, Hi: math.Pi / 2, Unit: limit.Angle,
			Why: limit.Say("0 is straight grain, 45 true bias")},
		{Field: "allowance", Value: c.Trim, Hi: MostTrim, Unit: limit.Length,
			Why: limit.Say("%v leaves the inch a muslin is cut with, %.0f is a plain seam", limit.Metres(0.025),
				limit.Metres(0.01))},
		{Field: "hem", Value: c.Hem, Lo: math.Min(leastHem, b.mostHem()), Hi: b.mostHem(), Unit: limit.Length, None: true,
			Why: limit.Say("0 ends the front at the waist; below %v it is a waist seam all the same, and a little below the "+
				"hip, %v down, the dress form ends", limit.Metres(leastHem), limit.Metres(b.HipDeep))},
		{Field: "slashes", Value: float64(c.Slashes), Lo: 1, Hi: MostSlashes, Unit: limit.Count,
			Why: limit.Say("one slash makes one fold")},
		{Field: "pleats", Value: float64(c.Pleats), Hi: MostPleats, Unit: limit.Count, Why: limit.Say("more is a gather")},
		{Field: "pleat depth", Value: c.PleatDepth, Lo: leastPleat, Hi: mostPleat, Unit: limit.Length,
			Why: limit.Say("%.1f is usual", limit.Between(0.015, 0.025, limit.Length))},
	}
}

// given is v, or zero where the draft is to choose.
func given(v float64) float64 {
	if v < 0 {
		return 0
	}
	return v
}

// check says which values of c are out of range for the block b.
func (c Cut) check(b Block) error {
	var errs []error
	for _, r := range c.Ranges(b) {
		if r.Field == "slashes" && c.How != Slash || r.Field == "pleat depth" && c.Pleats == 0 || r.Field == "hem" &&
			b.HipDeep == 0 {
			continue // not read
		}
		errs = append(errs, r.Check())
	}
	errs = append(errs, c.checkHem(b), c.checkPleats(b))
	if c.How < Pivot || c.How > Slash {
		errs = append(errs, wayError(c.How))
	}
	return errors.Join(errs...)
}

func wayError(way any) error {
	return limit.Errorf("how", "way to add cloth %v, want pivot, shift or slash", way)
}
