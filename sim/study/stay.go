package study

import (
	"fmt"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// A stay is a woven cotton tape 1 cm wide (common practice). Firm plain-woven
// cotton gives 2 to 4 % under 500 N/m, the top load of the KES-F tensile test;
// 20 kN/m is taken for the tape. Assumed: no figure for stay tape was found.
const (
	tapeWidth     = 0.010  // m
	tapeModulus   = 20_000 // N/m
	tapeStiffness = tapeModulus * tapeWidth
)

// ties sews the stays of the piece to the lattice.
func (j Job) ties(l *lattice.Lattice) ([]sim.Tie, error) {
	var out []sim.Tie
	for _, line := range j.stayed() {
		for _, q := range cut(line, l.Spacing) {
			a, ok := l.Locate(q.a)
			b, on := l.Locate(q.b)
			if !ok || !on {
				return nil, fmt.Errorf("drape: the stay at (%.1f, %.1f) cm lies off the cloth", q.a.X*100, q.a.Y*100)
			}
			out = append(out, sim.Tie{A: a, B: b, Long: q.long, Stiff: tapeStiffness})
		}
	}
	return out, nil
}

// stayed lists the flat lines that a tape is sewn along.
func (j Job) stayed() [][]r2.Vec {
	var out [][]r2.Vec
	if j.Piece.StayEdge {
		out = append(out, j.edgeLine())
	}
	if j.Piece.StayShoulder {
		for _, side := range [2]float64{1, -1} {
			out = append(out, j.shoulderLine(side))
		}
	}
	return out
}

// edgeLine is the cowl edge, from the wearer's right to the left.
func (j Job) edgeLine() []r2.Vec {
	p := j.Piece
	return []r2.Vec{{X: -p.HalfEdge, Y: p.FoldY}, {X: p.HalfEdge, Y: p.FoldY}}
}

// shoulderLine is the shoulder seam from the cowl point to the tip.
func (j Job) shoulderLine(side float64) []r2.Vec {
	var out []r2.Vec
	for _, q := range j.Piece.Shoulder {
		out = append(out, sided(q, side))
	}
	return out
}

// stretch is a part of a flat line.
type stretch struct {
	a, b r2.Vec
	long float64 // m, along the line
}

// cut divides a flat line into equal parts of at most the given size.
func cut(line []r2.Vec, size float64) []stretch {
	var out []stretch
	s := steps(0, length(line), size)
	for k := 1; k < len(s); k++ {
		out = append(out, stretch{along(line, s[k-1]), along(line, s[k]), s[k] - s[k-1]})
	}
	return out
}

// growth returns by which share a flat line is longer in the drape.
func (d *Drape) growth(line []r2.Vec) float64 {
	var now, flat float64
	for _, q := range cut(line, d.Lattice.Spacing) {
		a, ok := d.Lattice.Locate(q.a)
		b, on := d.Lattice.Locate(q.b)
		if ok && on {
			now, flat = now+r3.Norm(r3.Sub(b.At(d.State.Pos), a.At(d.State.Pos))), flat+q.long
		}
	}
	return now/flat - 1
}

// EdgeGrowth returns by which share the cowl edge hangs longer than cut.
func (d *Drape) EdgeGrowth() float64 { return d.growth(d.Job.edgeLine()) }

// ShoulderGrowth returns by which share the shoulder seams hang longer than
// cut, mean of both.
func (d *Drape) ShoulderGrowth() float64 {
	return (d.growth(d.Job.shoulderLine(1)) + d.growth(d.Job.shoulderLine(-1))) / 2
}

// TapePull returns the largest pull in a stay, N; 0 without one.
func (d *Drape) TapePull() float64 {
	var most float64
	for k := range d.Scene.Ties {
		most = max(most, d.Scene.Ties[k].Pull(d.State.Pos))
	}
	return most
}
