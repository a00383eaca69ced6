package fold

import (
	"fmt"
	"math"
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
)

// MinDepth is the least prominence that counts as a fold. A roll of cloth a
// few millimetres deep is a ripple that a draper strokes flat; 5 mm is also
// about the spacing of the lattices in use, below which a crest is one node.
const MinDepth = 5e-3 // m

// step is the largest flat distance between samples of a section.
const step = 1e-3 // m

// turnReach is how far past the edge the facing is looked at to tell whether
// it turns inside: beyond the roll, short of the shallowest facing in trade
// use (5 cm).
const turnReach = 0.02 // m

// Zone says on which side of the bust apex a fold lies.
type Zone string

// The zones of a fold.
const (
	AboveBust Zone = "above bust"
	BelowBust Zone = "below bust"
)

// Fold is one crest of a section.
//
// A crest is a local maximum, along the cloth, of the distance ahead of the
// bridged front; its depth is its topographic prominence. Because the section
// is followed along the cloth and not by height, a fold that overhangs is
// still one crest. Where the facing turns inside, the edge is an open end: the
// crest of the rolled edge, at the edge or just below it, is measured against
// the valley below it only. A raw edge, or one whose facing stands up, is a
// plain end: it is no crest itself, and a crest near it must rise from it.
//
// Place and depth are read below the cell, on a smooth surface through the
// crossings near the crest and near the valleys beside it. On sine folds on
// 10 mm, at any grain and wherever the lattice lies, CF came out to 1 mm, and
// Depth to 1 mm where the radius of the crest is 0.8 spacings or more. Radius
// is read on the section, and reads high on a coarse lattice:
// on a sine crest by 7 % where the radius is 3.6 spacings and by 15 % where it
// is 2.3; compare radii on one lattice only.
type Fold struct {
	Depth  float64 `json:"depth_m"`   // prominence, ≥ MinDepth
	CF     float64 `json:"cf_m"`      // flat distance down the line from the edge
	Height float64 `json:"height_m"`  // y of the crest in space
	Zone   Zone    `json:"zone"`      // by Height against Frame.BustY
	Radius float64 `json:"radius_m"`  // smallest radius of the section over the crest, ≤ MaxRadius
	At     r2.Vec  `json:"at_zy_m"`   // the crest in space: X holds z, Y holds y
	Rolled bool    `json:"is_rolled"` // the crest is the edge itself

	// Before and After are the deepest places on the way to the crest before
	// and the crest after, or to the end of the line; crests of less than half
	// of MinDepth are passed over. Before is the edge if Rolled.
	Before Point `json:"before"`
	After  Point `json:"after"`
}

// Point is a place on a section.
type Point struct {
	S  float64 `json:"s_m"`     // flat distance down the line from the edge
	At r2.Vec  `json:"at_zy_m"` // place in space: X holds z, Y holds y
}

// Cut is what one upright flat line shows, from the edge down.
type Cut struct {
	X          float64 `json:"x_m"` // flat x of the line
	Section    []Point `json:"section"`
	Folds      []Fold  `json:"folds"`         // down the line
	Forward    float64 `json:"forward_m"`     // farthest reach beyond Frame.Front; < 0 if wholly behind it
	Growth     float64 `json:"growth"`        // length in space over flat length, − 1
	FoldRadius float64 `json:"fold_radius_m"` // smallest Radius of the folds above the bust; 0 if there is none
	// places where the section turns by more than 60° within 16 mm, edge roll left out
	Kinks int `json:"kinks"`
}

// Line reads the image of the flat line at x, |x| ≤ HalfEdge, from the edge
// down to WaistY, or to the rim of the sheet where that comes first and x is
// not CF. Distances are taken to Frame.Front as on CF. Errors are those of
// Read.
func Line(s *mesh.Sheet, f Frame, x float64) (Cut, error) {
	if err := check(s, f); err != nil {
		return Cut{}, err
	}
	if !(math.Abs(x) <= f.HalfEdge) {
		return Cut{}, fmt.Errorf("fold: line at x %g m, want within the edge, ±%g m", x, f.HalfEdge)
	}
	tr, err := traceLine(s, upright, x, f.FoldY)
	if err != nil {
		return Cut{}, err
	}
	if x == 0 && tr.first() > f.WaistY+rim {
		return Cut{}, fmt.Errorf("fold: sheet: CF ends at flat y %g m, want down to the waist at %g m", tr.first(), f.WaistY)
	}
	p, err := profileOf(s, tr, f, line{x, spacing(s)})
	if err != nil {
		return Cut{}, err
	}
	c := Cut{
		X: x, Section: p.section, Folds: p.folds(), Kinks: p.kinks(),
		Growth: tr.growth(max(f.WaistY, tr.first()), f.FoldY), Forward: slices.Max(p.ahead),
	}
	for _, fd := range c.Folds {
		if fd.Zone == AboveBust && (c.FoldRadius == 0 || fd.Radius < c.FoldRadius) {
			c.FoldRadius = fd.Radius
		}
	}
	return c, nil
}
