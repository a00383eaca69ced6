package drape

import (
	"fmt"
	"math"

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
		for _, q := range line.cut(l.Spacing) {
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

// course is a line of the flat piece as it is sewn, by the length along it, m.
type course struct {
	long float64
	at   func(s float64) r2.Vec
}

// stayed lists the lines that a tape is sewn along.
func (j Job) stayed() []course {
	var out []course
	if j.Cowl.StayEdge {
		out = append(out, j.edgeLine())
	}
	if j.Cowl.StayShoulder {
		for _, side := range [2]float64{1, -1} {
			out = append(out, j.shoulderLine(side))
		}
	}
	return out
}

// edgeLine is the cowl edge, from the wearer's right to the left.
func (j Job) edgeLine() course {
	p := j.Cowl
	return course{2 * p.HalfEdge, func(s float64) r2.Vec { return r2.Vec{X: s - p.HalfEdge, Y: p.FoldY} }}
}

// shoulderLine is the shoulder seam from the cowl point to the tip, its pleats
// folded.
func (j Job) shoulderLine(side float64) course {
	p := j.Cowl
	return course{p.ShoulderLength(), func(s float64) r2.Vec { return sided(along(p.Shoulder, p.Unfolded(s)), side) }}
}

// stretch is a part of a course between two places.
type stretch struct {
	a, b r2.Vec
	long float64 // m, along the line
}

// cut divides a line into equal parts of at most the given size.
func (c course) cut(size float64) []stretch {
	var out []stretch
	s := steps(0, c.long, size)
	for k := 1; k < len(s); k++ {
		out = append(out, stretch{c.at(s[k-1]), c.at(s[k]), s[k] - s[k-1]})
	}
	return out
}

// window is the length over which the growth of a line is read where it is most, m.
const window = 0.030

// growth returns by which share a flat line is longer in the drape, as a whole
// and over the window that has grown most.
func (d *Drape) growth(line course) (whole, most float64) {
	parts := line.cut(d.Lattice.Spacing)
	now := make([]float64, len(parts))
	var sum float64
	for k, q := range parts {
		a, ok := d.Lattice.Locate(q.a)
		b, on := d.Lattice.Locate(q.b)
		if !ok || !on {
			return 0, 0
		}
		now[k] = r3.Norm(r3.Sub(b.At(d.State.Pos), a.At(d.State.Pos)))
		sum += now[k]
	}
	n := min(len(parts), int(math.Ceil(window/parts[0].long)))
	most = math.Inf(-1)
	for k := 0; k+n <= len(parts); k++ {
		var long float64
		for _, l := range now[k : k+n] {
			long += l
		}
		most = max(most, long/(float64(n)*parts[0].long)-1)
	}
	return sum/line.long - 1, most
}

// EdgeGrowth returns by which share the cowl edge hangs longer than cut, and
// the three centimetres of it that have grown most.
func (d *Drape) EdgeGrowth() (whole, most float64) { return d.growth(d.Job.edgeLine()) }

// ShoulderGrowth returns the same of the shoulder seams: the mean of both, and
// the three centimetres that have grown most.
func (d *Drape) ShoulderGrowth() (whole, most float64) {
	l, lm := d.growth(d.Job.shoulderLine(1))
	r, rm := d.growth(d.Job.shoulderLine(-1))
	return (l + r) / 2, max(lm, rm)
}

// TapePull returns the largest pull in a stay, N; 0 without one.
func (d *Drape) TapePull() float64 {
	var most float64
	for k := range d.System.Ties[:d.tapes] {
		most = max(most, d.System.Ties[k].Pull(d.State.Pos))
	}
	return most
}
