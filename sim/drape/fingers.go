package drape

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// finger presses a place of the cloth to where a fold is laid.
type finger struct {
	flat r2.Vec // m, on the piece
	at   r3.Vec // m, in space
}

// The fingers of the laying hand.
const (
	fingerStep  = 0.010 // m, between them, down the centre front and along the lines of the folds
	fingerReach = 0.070 // m, from the centre front to either side
	fingerGrip  = 1.0   // N/m
)

// fingers lists the places that a hand presses to lay the folds of the job: along
// lines from the centre front to the shoulder, which hang in nested curves. The
// facing is stroked into the first fold behind the front.
func (j Job) fingers(h hand) []finger {
	if j.Folds <= 0 {
		return nil
	}
	l := j.laying(h)
	var out []finger
	for _, down := range steps(fingerStep, l.end(), fingerStep) {
		out = append(out, l.fingers(down, 1)...)
	}
	for _, up := range steps(fingerStep, math.Min(j.Cowl.Facing, l.valley[0]-fingerStep), fingerStep) {
		out = append(out, l.fingers(up, -1)...)
	}
	return out
}

// fingers lists those along the line from a place down the centre front: of the
// front, or with layer −1 of the facing, which mirrors it.
func (l laying) fingers(down, layer float64) []finger {
	line := l.line(down)
	from, to, _ := l.flat(down)
	long := r2.Norm(r2.Sub(to, from))
	var inside r3.Vec
	if layer < 0 {
		from.Y, to.Y = 2*l.job.Cowl.FoldY-from.Y, 2*l.job.Cowl.FoldY-to.Y
		inside = l.inside(down)
	}
	var out []finger
	for _, t := range steps(0, math.Min(fingerReach, 0.8*long), fingerStep) {
		for _, side := range [2]float64{1, -1} {
			if t == 0 && side < 0 {
				continue
			}
			flat := sided(r2.Add(from, r2.Scale(t/long, r2.Sub(to, from))), side)
			share := t * l.hand.sag / line.curve.arc
			out = append(out, finger{flat, l.job.freed(r3.Add(line.at(share, side, l.hand.aside), inside), inside)})
		}
	}
	return out
}

// inside is the way from the front to the facing at a place down the first fold, m:
// two gaps back from the crest, and one into the fold.
func (l laying) inside(down float64) r3.Vec {
	gap := l.job.gap()
	if down < l.crest[0] {
		return r3.Vec{Y: -gap, Z: -2 * gap}
	}
	return r3.Vec{Y: gap, Z: -2 * gap}
}

// freed moves a place out of the form, in front of which a layer lies.
func (j Job) freed(at, inside r3.Vec) r3.Vec {
	if j.Free {
		return at
	}
	return j.clear(at, at.Z, valleyAhead+inside.Z)
}

// edgeLaid returns where a hand that lays folds leads the guided places of the edge.
func (j Job) edgeLaid(h hand) []r3.Vec {
	line := j.hangs(j.cowlPoint(), j.Cowl.HalfEdge*h.sag, valleyAhead)
	lies := j.overForm(line, lineParts)
	var out []r3.Vec
	for _, q := range j.edge() {
		share := math.Abs(q.X) / j.Cowl.HalfEdge
		to := lies.at(share * lies.length())
		to.X = math.Copysign(to.X, q.X) + h.aside*(1-share)
		out = append(out, to)
	}
	return out
}

// ledEdge is where a hand leads the edge; it is worked out once.
type ledEdge struct {
	by hand
	to []r3.Vec // m
}

// edgeOnTheWay returns where the guided places of the edge are led at share e of the way
// by a hand that lays folds.
func (d *Drape) edgeOnTheWay(h hand, e float64) []r3.Vec {
	if d.edge.to == nil || d.edge.by != h {
		d.edge = ledEdge{h, d.Job.edgeLaid(h)}
	}
	out := make([]r3.Vec, len(d.edge.to))
	for k, q := range d.Job.edge() {
		from := d.Job.start(q)
		out[k] = r3.Add(from, r3.Scale(e, r3.Sub(d.edge.to[k], from)))
	}
	return out
}
