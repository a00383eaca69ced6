package fold

import (
	"fmt"
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// profile is a sampled section with what folds are read from.
type profile struct {
	section []Point   // evenly spaced in S
	ahead   []float64 // m, len = len(section); distance ahead of the bridged front
	turned  bool      // the facing turns inside at the edge
	step    float64   // m between samples
	line
	top   float64 // m, flat y of the first sample
	frame Frame
	sheet *mesh.Sheet
	near  []int32 // vertices of sheet within the reach of a patch
}

// line is an upright flat line on a lattice.
type line struct {
	x       float64 // m
	lattice float64 // m, spacing of the lattice
}

// profileOf samples the trace from the edge down. The profile is not smoothed.
func profileOf(s *mesh.Sheet, tr trace, f Frame, l line) (profile, error) {
	top, bottom := tr.clamp(f.FoldY), max(f.WaistY, tr.first())
	n := int(math.Ceil((top-bottom)/step - same))
	if n < 2 {
		return profile{}, fmt.Errorf("fold: sheet: flat line is %g m long below the edge, want > %g m", top-bottom, step)
	}
	p := profile{
		section: make([]Point, n+1), ahead: make([]float64, n+1),
		step: (top - bottom) / float64(n), top: top, line: l, frame: f, sheet: s, near: l.near(s),
	}
	for i := range p.section {
		q := tr.point(top - float64(i)*p.step)
		p.section[i] = Point{S: float64(i) * p.step, At: r2.Vec{X: q.Z, Y: q.Y}}
		p.ahead[i] = f.level(q)
		if !finite(p.ahead[i]) {
			return profile{}, notFinite(fmt.Sprintf("front at height %g m", q.Y), p.ahead[i])
		}
	}
	p.turned = turnsInside(tr, f, tr.point(top))
	return p, nil
}

// turnsInside tells whether the facing beyond the edge lies behind the edge.
func turnsInside(tr trace, f Frame, edge r3.Vec) bool {
	reach := min(turnReach, tr.last()-f.FoldY)
	return reach > rim && f.ahead(tr.point(f.FoldY+reach)) < f.ahead(edge)
}

// near returns the vertices of s within the reach of patches on the line.
func (l line) near(s *mesh.Sheet) []int32 {
	var near []int32
	for i, q := range s.Flat {
		if math.Abs(q.X-l.x) <= patchReach*l.lattice {
			near = append(near, int32(i))
		}
	}
	return near
}

// folds lists the crests that are deep enough, from the edge down.
func (p profile) folds() []Fold {
	folds := []Fold{} // not nil: no folds is a finding
	smooth := p.smoothed()
	for _, c := range p.summits() {
		if c.prominence < MinDepth {
			continue
		}
		fd := Fold{
			Depth: c.prominence, CF: c.S, Height: c.At.Y, Zone: BelowBust,
			Radius: p.crestRadius(smooth, crest{c.sample, c.prominence}), At: c.At, Rolled: c.sample == 0,
			Before: c.before.Point, After: c.after.Point,
		}
		if fd.Height >= p.frame.BustY {
			fd.Zone = AboveBust
		}
		folds = append(folds, fd)
	}
	return folds
}

// flat returns the flat place s down the line.
func (p profile) flat(s float64) r2.Vec { return r2.Vec{X: p.x, Y: p.top - s} }

// level is ahead, rounded so that no rounding can move a crest along a level top.
func (f Frame) level(q r3.Vec) float64 { return math.Round(f.ahead(q)/same) * same }
