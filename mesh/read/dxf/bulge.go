package dxf

import (
	"math"

	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// turnPerChord is the angle of an arc that one chord stands for (rad): chords
// stay within a thousandth of the radius of it.
const turnPerChord = 5 * math.Pi / 180

// curve adds a polyline, its arcs broken into chords.
func (f *file) curve(d *drawing, layer string, line []r2.Vec, bulges []float64, closed bool) error {
	var out []r2.Vec
	for i, v := range line {
		out = append(out, v)
		if next := (i + 1) % len(line); bulges[i] != 0 && (next != 0 || closed) {
			arc := chords(v, line[next], bulges[i])
			if err := f.counted(len(arc)); err != nil {
				return err
			}
			out = append(out, arc...)
		}
	}
	if len(out) > 1 {
		d.add(layer, outline.Chain{Points: out, Closed: closed})
	}
	return nil
}

// chords returns the points between a and b of the arc whose bulge, the
// tangent of a quarter of its angle, is given; it turns left for a bulge above
// 0.
func chords(a, b r2.Vec, bulge float64) []r2.Vec {
	angle := 4 * math.Atan(bulge)
	n := int(math.Ceil(math.Abs(angle) / turnPerChord))
	if n < 2 {
		return nil
	}
	half := r2.Scale(0.5, r2.Sub(b, a))
	// The centre lies beside the middle of the chord.
	off := r2.Scale(1/math.Tan(angle/2), r2.Vec{X: -half.Y, Y: half.X})
	centre := r2.Add(r2.Add(a, half), off)
	var out []r2.Vec
	for i := 1; i < n; i++ {
		out = append(out, r2.Rotate(a, angle*float64(i)/float64(n), centre))
	}
	return out
}
