package draft

import (
	"math"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// What a hem may be.
const (
	// leastHem is a waist seam no longer: shorter, the front ends at the waist.
	leastHem = 0.03
	// belowHip is how far below the hip a hem may hang, m: there the dress form
	// turns in to its end.
	belowHip = 0.03
	// flattestSide is the most that a side seam may lean out below the waist, as a
	// share of its length: at 45° hip and waist do not belong to one body.
	flattestSide = math.Sqrt2 / 2
)

// mostHem returns how far below the waist a front of b may go, m; 0 where the
// block knows no hip.
func (b Block) mostHem() float64 {
	if b.HipDeep == 0 {
		return 0
	}
	return b.HipDeep + belowHip
}

// checkHem says why a front of b cannot go on below its waist.
func (c Cut) checkHem(b Block) error {
	if c.Hem > 0 && b.HipDeep == 0 {
		return limit.Errorf("hem", "hem %v, but this block ends at the waist and shows no hip: leave the hem out, or "+
			"draft the block from measurements", limit.Metres(c.Hem))
	}
	return nil
}

// hipLine returns what is common to front and back below a side waist: the side
// seam from the waist to the hem, straight to the width wide of the hip at deep
// below the waist, measured down the seam, and straight down from there. The hip
// is measured square to the centre line.
func hipLine(waist r2.Vec, wide, deep, hem float64) ([]r2.Vec, error) {
	out := wide - waist.X
	if math.Abs(out) > flattestSide*deep {
		return nil, limit.Errorf("hem", "between waist and hip the side seam would run %v sideways on a length of %v, "+
			"want at most %v: check waist, hip and waist to hip, turn the front less, or let it end at the waist",
			limit.Metres(math.Abs(out)), limit.Metres(deep), limit.Metres(flattestSide*deep))
	}
	hip := r2.Vec{X: wide, Y: waist.Y - math.Sqrt(deep*deep-out*out)}
	if hem <= deep {
		return []r2.Vec{waist, lerp(waist, hip, hem/deep)}, nil
	}
	return []r2.Vec{waist, hip, {X: wide, Y: hip.Y - (hem - deep)}}, nil
}

// hemLine returns the hem from the end of the side seam to the centre line at
// height y: square to the centre line, and trued square to the side seam, with
// half the pull there, so that the turn stays near the seam.
func hemLine(side []r2.Vec, y float64) []r2.Vec { return hemFrom(side, y, 0) }

// hemFrom is hemLine that runs straight from the side seam for a length (m).
func hemFrom(side []r2.Vec, y, straight float64) []r2.Vec {
	n := len(side)
	end, centre := side[n-1], r2.Vec{Y: y}
	down := r2.Unit(r2.Sub(end, side[n-2]))
	square := r2.Vec{X: down.Y, Y: -down.X}
	from := r2.Add(end, r2.Scale(straight, square))
	h := dist(from, centre)
	line := []r2.Vec{end}
	for i := range 2*pointsPerSpan + 1 {
		line = join(line, hermite(from, centre, r2.Scale(h/2, square), r2.Vec{X: -h}, float64(i)/(2*pointsPerSpan)))
	}
	return line
}

// hemmed goes on below the waist of the half front f to a hem: the centre front
// straight down, the side seam by hipLine. A front that is shifted off CF has as much
// more at the hip as at the waist. What is left of the dart has no waist seam to be
// sewn into: it stays as ease, as in any loose front (common practice; a dart with two
// points would want a front that fits). Where that makes it wider than the hip, the
// side seam falls straight.
func (p *Cowl) hemmed(f front, hem float64) error {
	if p.DartLeft != nil {
		p.DartLeft, p.Eased = nil, dist(f.outer, f.inner)
	}
	wide := p.Block.HipWide
	if f.shifted {
		wide += f.cf.X
	}
	if p.Eased > 0 {
		wide = math.Max(wide, f.side.X)
	}
	below, err := hipLine(f.side, wide, p.Block.HipDeep, hem)
	if err != nil {
		return err
	}
	p.Hem, p.WaistLine = hem, p.Waist
	p.sideWaist = polyline.Length(p.Side)
	p.Side = join(p.Side, below...)
	p.Waist = hemLine(p.Side, f.cf.Y-hem)
	return nil
}

// LowerEdge is what the lower edge of p is called: waist or hem.
func (p Cowl) LowerEdge() string {
	if p.Hem > 0 {
		return "hem"
	}
	return "waist"
}

// WaistY returns the flat height of the waist on CF, m.
func (p Cowl) WaistY() float64 { return p.Waist[len(p.Waist)-1].Y + p.Hem }

// SideToWaist returns the length of the side seam from underarm to waist, m.
func (p Cowl) SideToWaist() float64 {
	if p.Hem == 0 {
		return polyline.Length(p.Side)
	}
	return p.sideWaist
}

// rewaisted finds the waist of q, of which p is the piece before: its line runs on
// straight to the new side seam, or to the place nearest to where it was.
func (q *Cowl) rewaisted(p Cowl) {
	if q.Hem == 0 {
		return
	}
	line := p.WaistLine
	share, _ := foot(q.Side, line[0])
	q.sideWaist = share * polyline.Length(q.Side)
	out := r2.Scale(waistReach/dist(line[0], line[1]), r2.Sub(line[0], line[1]))
	if c := meets([]r2.Vec{line[1], r2.Add(line[0], out)}, q.Side); len(c) > 0 {
		q.sideWaist = c[0].down
	}
	at, _ := polyline.Along(q.Side, q.sideWaist)
	q.WaistLine = append(append([]r2.Vec{at}, line[1:len(line)-1]...), r2.Vec{Y: q.WaistY()})
}

// waistReach is how far out a side seam is looked for that was moved, m.
const waistReach = 0.10

// takenIn returns the side seam moved in by a length (m) along the waist, with nothing at
// the underarm, and by as much along the hem.
func (p Cowl) takenIn(by float64) []r2.Vec {
	step := func(line []r2.Vec) r2.Vec { at, _ := polyline.Along(line, by); return r2.Sub(at, line[0]) }
	if p.Hem == 0 {
		at, _ := polyline.Along(p.Waist, by)
		return []r2.Vec{p.Side[0], at}
	}
	waist, hem, down := step(p.WaistLine), step(p.Waist), p.sideWaist
	out := []r2.Vec{p.Side[0]}
	for i, v := range p.Side[1:] {
		s := polyline.Length(p.Side[:i+2])
		move := lerp(waist, hem, math.Max(0, s-down)/(polyline.Length(p.Side)-down))
		out = append(out, r2.Add(v, r2.Scale(math.Min(1, s/down), move)))
	}
	return out
}

// waistNotches mark the waist on the side seam of the wearer's left half, if the
// front goes on below it.
func (p Cowl) waistNotches() []Notch {
	if p.Hem == 0 {
		return nil
	}
	at, i := polyline.Along(p.Side, p.sideWaist)
	return []Notch{{at, outward(p.Side[i], p.Side[i+1]), "side seam, waist"}}
}
