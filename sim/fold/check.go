package fold

import (
	"fmt"
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// maxExtent bounds the sheet in space: a cowl is under a metre, and a run that
// has blown up should say so rather than ask for a huge picture.
const maxExtent = 10.0 // m

// minSpacing keeps out a sheet whose flat piece has no area.
const minSpacing = 1e-6 // m

func check(s *mesh.Sheet, f Frame) error {
	if err := checkFrame(f); err != nil {
		return err
	}
	return checkSheet(s)
}

func checkFrame(f Frame) error {
	for _, v := range []struct {
		name string
		val  float64
	}{
		{"FoldY", f.FoldY}, {"HalfEdge", f.HalfEdge}, {"WaistY", f.WaistY}, {"BustY", f.BustY},
		{"NeckL", sum(f.NeckL)}, {"NeckR", sum(f.NeckR)}, {"FrontNeck", sum(f.FrontNeck)},
	} {
		if !finite(v.val) {
			return notFinite("frame: "+v.name, v.val)
		}
	}
	if f.WaistY >= f.FoldY {
		return fmt.Errorf("fold: frame: WaistY %g m, want below FoldY %g m", f.WaistY, f.FoldY)
	}
	if f.HalfEdge <= 0 {
		return fmt.Errorf("fold: frame: HalfEdge %g m, want > 0", f.HalfEdge)
	}
	return nil
}

func checkSheet(s *mesh.Sheet) error {
	if s == nil || len(s.Tris) == 0 || len(s.Pos) == 0 {
		return fmt.Errorf("fold: sheet: empty, want at least one triangle")
	}
	if len(s.Flat) != len(s.Pos) {
		return fmt.Errorf("fold: sheet: %d flat places, want one for each of %d vertices", len(s.Flat), len(s.Pos))
	}
	for i, p := range s.Pos {
		if !finite(sum(p)) || !finite(s.Flat[i].X+s.Flat[i].Y) {
			return fmt.Errorf("fold: sheet: vertex %d at %v (flat %v), want finite", i, p, s.Flat[i])
		}
	}
	for i, t := range s.Tris {
		for _, v := range t {
			if v < 0 || int(v) >= len(s.Pos) {
				return fmt.Errorf("fold: sheet: triangle %d names vertex %d, want 0–%d", i, v, len(s.Pos)-1)
			}
		}
	}
	if h := spacing(s); h < minSpacing {
		return fmt.Errorf("fold: sheet: mean flat spacing %g m, want ≥ %g m", h, minSpacing)
	}
	lo, hi := bounds(s.Pos)
	if d := r3.Sub(hi, lo); max(d.X, d.Y, d.Z) > maxExtent {
		return fmt.Errorf("fold: sheet: extent %.3g × %.3g × %.3g m, want ≤ %g m each way", d.X, d.Y, d.Z, maxExtent)
	}
	return nil
}

// bounds returns the corners of the box around pos, len(pos) > 0.
func bounds(pos []r3.Vec) (lo, hi r3.Vec) {
	lo, hi = pos[0], pos[0]
	for _, p := range pos[1:] {
		lo = r3.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = r3.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	return lo, hi
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

func sum(p r3.Vec) float64 { return p.X + p.Y + p.Z }

func notFinite(what string, v float64) error {
	return fmt.Errorf("fold: %s %v, want finite", what, v)
}
