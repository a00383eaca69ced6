// Package fold reads a draped cowl off a mesh.Sheet, as a sample room would
// with a ruler: how many folds lie down the centre front, how deep they are,
// how far the edge has dropped, whether it gapes, twists, grows or shows its
// wrong side. It knows shapes only, so a sine sheet of known count and depth
// is as good as a simulated one.
//
// Flat frame: x = 0 is CF, y up; the cowl edge is the line y = FoldY, the
// front layer lies below it and the self-facing above it. Start at Read.
package fold

import (
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// Frame says where the piece and the wearer are. All lengths in metres.
type Frame struct {
	FoldY     float64 // flat y of the cowl edge
	HalfEdge  float64 // flat length of the edge from CF to either end, > 0
	WaistY    float64 // flat y of the CF waist, < FoldY
	NeckL     r3.Vec  // shoulder neck point of the wearer's left
	NeckR     r3.Vec  // shoulder neck point of the wearer's right; the middle plane lies halfway to NeckL
	FrontNeck r3.Vec  // front neck point of the wearer
	BustY     float64 // height of the bust apex in space; parts the zones

	// Clearance is the distance from p to the form; nil on a free hang.
	Clearance func(p r3.Vec) float64
	// Front is the z of the form at height y in the CF plane, with the
	// hollow between the busts bridged. Nil on a free hang: then the upright
	// plane through the middle of the shoulder neck points stands in for it.
	Front func(y float64) float64
}

// Reading is what a sheet shows. A Reading holds finite numbers only.
type Reading struct {
	Folds      []Fold  `json:"folds"`         // down CF from the edge, above and below the bust
	Count      int     `json:"count"`         // folds above the bust: the cowl folds
	CountBelow int     `json:"count_below"`   // folds below the bust: mostly waist ripples
	FoldRadius float64 `json:"fold_radius_m"` // smallest Radius of the folds above the bust; 0 if there is none
	Kinks      int     `json:"kinks"`         // see Cut.Kinks
	Section    []Point `json:"section"`       // image of CF, edge first

	EdgeDrop      float64 `json:"edge_drop_m"`       // CF edge point below the mean of the shoulder neck points
	EdgeBelowNeck float64 `json:"edge_below_neck_m"` // CF edge point below the front neck point
	OnForm        bool    `json:"on_form"`           // Clearance was given, so StandOff means something
	StandOff      float64 `json:"stand_off_m"`       // clearance of the CF edge point; 0 on a free hang
	Forward       float64 `json:"forward_m"`         // farthest the CF section reaches beyond the bridged front

	// Twist is the root mean square distance between the front layer and its
	// own mirror image, in the middle plane: > 0 if the left lies higher, or
	// with level heights if the front lies to the left. Near 0 the sign says
	// little; average its size over placings, and Tilt or Drift with their sign.
	Twist float64 `json:"twist_m"`
	Tilt  float64 `json:"tilt_m"`  // mean height of the left half of the edge above the right half
	Drift float64 `json:"drift_m"` // CF edge point off the middle plane, > 0 to the wearer's left

	CFGrowth   float64 `json:"cf_growth"`     // length of the image of CF over its flat length, − 1
	EdgeGrowth float64 `json:"edge_growth"`   // the same along the edge
	WrongSide  float64 `json:"wrong_side_m2"` // area seen wrong side out from straight in front
}

// Read measures the sheet. It returns an error for an empty sheet, a
// position that is not finite, a frame that contradicts itself, and a flat
// CF or edge line that does not lie on the sheet.
func Read(s *mesh.Sheet, f Frame) (Reading, error) {
	cf, err := Line(s, f, 0)
	if err != nil {
		return Reading{}, err
	}
	edge, err := readEdge(s, f)
	if err != nil {
		return Reading{}, err
	}
	r := Reading{
		Folds: cf.Folds, Kinks: cf.Kinks, Section: cf.Section,
		FoldRadius: cf.FoldRadius, Forward: cf.Forward, CFGrowth: cf.Growth,
		EdgeDrop:      (f.NeckL.Y+f.NeckR.Y)/2 - edge.cf.Y,
		EdgeBelowNeck: f.FrontNeck.Y - edge.cf.Y,
		Drift:         edge.cf.X - f.middle(),
		Tilt:          edge.tilt,
		EdgeGrowth:    edge.growth,
		Twist:         twist(s, f),
		WrongSide:     wrongSide(s),
	}
	r.Count, r.CountBelow = countZones(r.Folds)
	if f.Clearance != nil {
		r.OnForm, r.StandOff = true, f.Clearance(edge.cf)
	}
	if !finite(r.StandOff) {
		return Reading{}, notFinite("clearance of the CF edge point", r.StandOff)
	}
	return r, nil
}

func countZones(folds []Fold) (above, below int) {
	for _, fd := range folds {
		if fd.Zone == AboveBust {
			above++
		}
	}
	return above, len(folds) - above
}

// middle returns the x of the middle plane of the wearer.
func (f Frame) middle() float64 { return (f.NeckL.X + f.NeckR.X) / 2 }

// ahead returns how far p lies in front of the bridged front.
func (f Frame) ahead(p r3.Vec) float64 {
	if f.Front == nil {
		return p.Z - (f.NeckL.Z+f.NeckR.Z)/2
	}
	return p.Z - f.Front(p.Y)
}
