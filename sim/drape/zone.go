package drape

import (
	"math"

	"cowl/mesh/limit"
)

// zone is the part of the centre front in which folds are laid.
type zone struct {
	top, end float64 // m, heights
	flat     float64 // m, length on the flat piece
}

// surplus is the cloth that goes into folds, m.
func (z zone) surplus() float64 { return z.flat - (z.top - z.end) }

// height is what the folds hang over, m.
func (z zone) height() float64 { return z.top - z.end }

// deepZone is the share of the height of a deep edge over the waist in which folds
// are laid.
const deepZone = 1.0 / 3

// zone returns where the hand of the job lays folds: from the edge to the bust
// line. An edge that hangs near the bust or below has folds all the same; they
// lie in the upper third of what hangs below it (our choice).
func (j Job) zone(h hand) zone {
	top := j.edgeHeight(h)
	z := zone{top: top, end: math.Min(j.Form.Apex(1).Y, (1-deepZone)*top)}
	z.flat = j.Cowl.FoldY - j.waistY() - j.wayUp(z.end)
	return z
}

// wayUp is the length of the bridged front from the waist up to height y, m.
func (j Job) wayUp(y float64) float64 {
	const step = 0.001 // m
	way := 0.0
	for at := 0.0; at < y; at += step {
		way += math.Hypot(step, j.frontAt(at+step)-j.frontAt(at))
	}
	return way
}

// frontAt is the z of what the cloth hangs before at height y, m: the bridged front,
// or on a free hang the upright plane through the neck points.
func (j Job) frontAt(y float64) float64 {
	if j.Free {
		return j.Form.NeckPoint(1).Z
	}
	return j.Form.BridgedFront(y)
}

// edgeHeight returns the height at which the edge is led over the centre front, m.
func (j Job) edgeHeight(h hand) float64 {
	return j.hangs(j.cowlPoint(), j.Cowl.HalfEdge*h.sag, valleyAhead).y
}

// rolled is half the way round which front and facing turn in a fold, m: layers
// that lie a gap apart.
func (j Job) rolled() float64 { return math.Pi * j.gap() }

// FoldsThatFit returns how many folds the surplus of the piece feeds. A fold takes
// at least twice the rolled radius of front and facing, of height and of cloth.
func (j Job) FoldsThatFit() int {
	z := j.zone(anyHand)
	room := min(z.height(), z.surplus()) / (2 * j.rolled())
	return max(0, min(MostFolds, int(room)))
}

// checkFolds refuses more folds than the surplus feeds.
func (j Job) checkFolds() error {
	if j.Folds <= 0 {
		return nil
	}
	z := j.zone(anyHand)
	return limit.Range{
		Field: "folds", Value: float64(j.Folds), Hi: float64(j.FoldsThatFit()), Unit: limit.Count,
		Why: limit.Say("%v of surplus over %v of height below the edge feed no more; a wider extension feeds more",
			limit.Metres(z.surplus()), limit.Metres(z.height())),
	}.Check()
}
