package draft

import (
	"math"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// facing returns the end of the self-facing (cowl point to free corner) and
// its free edge (free corner to CF) for a depth below the edge on CF.
//
// The end mirrors the shoulder seam about the edge, so that it folds onto the
// seam and is caught in it. Where the shoulder is too short for the depth, the
// end stops clearTip before the tip and the free edge slants from there to the
// full depth, which it reaches above the cowl point or, where it would stand
// out into the armhole there, as near to it as it can. Folded down, the facing
// must lie on the front, or it is too deep.
func facing(f front, depth float64) (end, edge []r2.Vec, err error) {
	if depth == 0 {
		return []r2.Vec{f.edge()}, []r2.Vec{f.edge(), {Y: f.edge().Y}}, nil
	}
	end = foldedEnd(f, depth)
	edge, ok := foldedEdge(f, end, depth)
	if !ok {
		most := solve(depth, 0, func(d float64) float64 {
			if _, ok := foldedEdge(f, foldedEnd(f, d), d); ok {
				return -1
			}
			return 1
		})
		return nil, nil, limit.Errorf("facing", "facing %v, want 0–%v: folded in, it would stand out past the armhole or "+
			"the waist; make it shallower",
			limit.Metres(depth), limit.Metres(most))
	}
	up := func(p r2.Vec) r2.Vec { return r2.Vec{X: p.X, Y: 2*f.edge().Y - p.Y} }
	return movedLine(end, up), movedLine(edge, up), nil
}

// foldedEnd returns the end of the facing as it lies on the shoulder seam,
// folded down: to the depth, or to clearTip before the tip.
func foldedEnd(f front, depth float64) []r2.Vec {
	floor := f.edge().Y - depth
	stop := polyline.Length(f.shoulder) - clearTip
	if f.pleats != nil {
		first, _ := f.pleats[0].lies()
		stop = first - pleatClear
	}
	end := []r2.Vec{f.edge()}
	for i := 1; i < len(f.shoulder); i++ {
		p, q := f.shoulder[i-1], f.shoulder[i]
		t := min(1, (stop-polyline.Length(end))/dist(p, q))
		if q.Y < floor {
			t = min(t, (p.Y-floor)/(p.Y-q.Y))
		}
		end = join(end, lerp(p, q, t))
		if t < 1 {
			break
		}
	}
	return end
}

// foldedEdge returns the free edge of the facing as it lies on the front, folded down, and
// whether the front carries it: clear of the armhole, or where it is too deep for that
// just within.
func foldedEdge(f front, end []r2.Vec, depth float64) ([]r2.Vec, bool) {
	for _, clear := range []float64{clearArmhole, 0} {
		if e, ok := f.edgeClear(end, depth, clear); ok {
			return e, true
		}
	}
	return nil, false
}

// edgeClear is foldedEdge that keeps clear of the armhole (m).
func (f front) edgeClear(end []r2.Vec, depth, clear float64) ([]r2.Vec, bool) {
	floor := f.edge().Y - depth
	corner := end[len(end)-1]
	edge := func(x float64) []r2.Vec {
		line := []r2.Vec{corner}
		if corner.Y > floor+samePoint {
			line = join(line, r2.Vec{X: x, Y: floor})
		}
		return join(line, r2.Vec{Y: floor})
	}
	full := f.edge().X
	if e := edge(full); f.carries(e, clear) {
		return e, true
	}
	least := leastPlateau * full
	if !f.carries(edge(least), clear) {
		return nil, false
	}
	cut := solve(full-least, 0, func(cut float64) float64 {
		if f.carries(edge(full-cut), clear) {
			return 1
		}
		return -1
	})
	return edge(full - cut - offArmhole), true
}

const (
	// leastPlateau is the least share of the half edge over which the facing
	// has its full depth.
	leastPlateau = 0.25
	// clearArmhole is how far the free edge keeps from the armhole, m: nearer, its corner
	// can show there as the cloth rolls (common practice).
	clearArmhole = 0.010
	// offArmhole moves a slanted free edge off the line it grazes, m.
	offArmhole = 0.001
)

// carries reports whether a line from the shoulder seam to CF lies on the
// front: it meets neither armhole nor side seam nor waist, and keeps clear of the
// armhole (m).
func (f front) carries(line []r2.Vec, clear float64) bool {
	bottom := append([]r2.Vec{f.armhole[len(f.armhole)-1]}, f.waist()...)
	return !linesMeet(line, f.armhole) && !linesMeet(line, bottom) &&
		line[len(line)-1].Y > bottom[len(bottom)-1].Y && apart(line, f.armhole) >= clear
}

// apart returns how far two lines that do not meet are from each other, m.
func apart(a, b []r2.Vec) float64 {
	least := math.Inf(1)
	for _, l := range [2][2][]r2.Vec{{a, b}, {b, a}} {
		for _, v := range l[0] {
			_, off := foot(l[1], v)
			least = math.Min(least, off)
		}
	}
	return least
}
