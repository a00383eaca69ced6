package draft

import (
	"errors"
	"fmt"
	"math"
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
	return 0, fmt.Errorf("draft: way to add cloth %q, want pivot, shift or slash", name)
}

// Auto lets the draft choose a DartShare or an Extension.
const Auto = -1

// Cut says how the cowl is cut from the block.
type Cut struct {
	DartShare float64 // 0..1, share of the waist dart closed into CF; Auto (below 0): as much as the extension needs
	Extension float64 // m per half: edge length less the distance of the cowl point from CF on the block; Auto: what the dart gives (the whole dart if DartShare is Auto too)
	How       How     // how cloth is added beyond the dart
	Slashes   int     // number of slashes, 1..6; read for Slash only
	CowlPoint float64 // m down the shoulder seam from the neck point
	Facing    float64 // m, depth of the self-facing, at least 1 cm; 0: none
	Grain     float64 // rad from CF (+Y) to the warp, towards the wearer's left
	Trim      float64 // m, allowance outside the seam line

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

const (
	// leastShoulder must be left between cowl point and tip: clearTip and 1 cm
	// more, in which the facing end is caught.
	leastShoulder = 0.03
	// clearTip keeps the end of the facing out of the armhole seam, where its
	// bulk would show: 1 cm for the seam and as much again.
	clearTip    = 0.02
	mostSlashes = 6
	leastFacing = 1 // cm
)

// limit is a range for one value of a Cut.
type limit struct {
	name   string
	value  float64 // in unit
	lo, hi float64 // in unit
	unit   string
	fix    string
}

// check says which values of c are out of range for the block b.
func (c Cut) check(b Block) error {
	least := math.Max(c.Extension, 0)
	if math.IsNaN(c.Extension) {
		least = c.Extension
	}
	share := math.Max(c.DartShare, 0)
	if math.IsNaN(c.DartShare) {
		share = c.DartShare
	}
	limits := []limit{
		{"dart share", share, 0, 1, "", "0 leaves the dart open, 1 closes it, auto closes as much as the extension needs"},
		{"extension", least * 100, 0, 40, "cm", "deeper than the body is long: deep cowls take 20–30 cm"},
		{"cowl point", c.CowlPoint * 100, 0, (b.ShoulderLength() - leastShoulder) * 100, "cm", "at least 3 cm of shoulder must be left to carry the edge and catch the facing"},
		{"facing", c.Facing * 100, leastFacing, 30, "cm", "5–15 cm is usual, 0 for none; a narrower one does not stay folded"},
		{"grain", deg(c.Grain), -90, 90, "°", "0 is straight grain, 45 true bias"},
		{"trim", c.Trim * 100, 0, 10, "cm", "2.5 cm leaves the inch a muslin is cut with, 1 cm is a plain seam"},
	}
	var errs []error
	for _, l := range limits {
		const slack = 1e-9
		if l.name == "facing" && l.value == 0 {
			continue
		}
		if !(l.value >= l.lo-slack && l.value <= l.hi+slack) {
			errs = append(errs, fmt.Errorf("draft: %s %.1f%s, want %.1f–%.1f%s: %s",
				l.name, l.value, spaced(l.unit), l.lo, l.hi, spaced(l.unit), l.fix))
		}
	}
	if c.How == Slash && (c.Slashes < 1 || c.Slashes > mostSlashes) {
		errs = append(errs, fmt.Errorf("draft: slashes %d, want 1–%d: one slash makes one fold", c.Slashes, mostSlashes))
	}
	if err := c.checkPleats(b); err != nil {
		errs = append(errs, err)
	}
	if c.How < Pivot || c.How > Slash {
		errs = append(errs, fmt.Errorf("draft: way to add cloth %v, want pivot, shift or slash", c.How))
	}
	return errors.Join(errs...)
}

// spaced puts the space before a unit that takes one.
func spaced(unit string) string {
	if unit == "cm" || unit == "g" {
		return " " + unit
	}
	return unit
}
