package read

import (
	"fmt"
	"math"

	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// onSeam is how near the end of a dart leg must lie to the waist (m).
const onSeam = 0.003

// dartInside finds the dart among the lines inside the piece: two legs from
// the waist to the apex, one line of three points or two lines that meet. With
// no dart a drill hole must show the bust point. waist runs from CF to the
// side.
func (h half) dartInside(p paper.Piece, waist []r2.Vec, points map[string][]r2.Vec) error {
	var lines [][]r2.Vec
	for _, l := range p.Lines {
		line := make([]r2.Vec, len(l.Points))
		for i, v := range l.Points {
			line[i] = h.at(v)
		}
		lines = append(lines, line)
	}
	if inner, outer, ok := dartLegs(lines, waist); ok {
		points["dart inner"], points["apex"], points["dart outer"] = inner[:1], inner[1:], outer[:1]
		return nil
	}
	if len(p.Holes) != 1 {
		return fmt.Errorf("no waist dart: want it cut out of the outline, or two legs drawn inside from the waist to the "+
			"bust point, or no dart and one drill hole at the bust point; found %d holes", len(p.Holes))
	}
	apex := h.at(p.Holes[0].At)
	cf, side := waist[0], waist[len(waist)-1]
	t := min(max(apex.X/side.X, 0.1), 0.9)
	foot := r2.Add(cf, r2.Scale(t, r2.Sub(side, cf)))
	points["apex"], points["dart inner"], points["dart outer"] = []r2.Vec{apex}, []r2.Vec{foot}, []r2.Vec{foot}
	return nil
}

// dartLegs returns the legs of the dart among lines, each from the waist to the
// point: two that meet there, the inner one nearer to CF.
func dartLegs(lines [][]r2.Vec, waist []r2.Vec) (inner, outer []r2.Vec, ok bool) {
	onWaist := func(v r2.Vec) bool { return fromLine(v, waist) < onSeam }
	var legs [][]r2.Vec
	for _, l := range lines {
		for i := 1; i < len(l); i++ {
			a, b := l[i-1], l[i]
			switch {
			case onWaist(a) && !onWaist(b):
				legs = append(legs, []r2.Vec{a, b})
			case onWaist(b) && !onWaist(a):
				legs = append(legs, []r2.Vec{b, a})
			}
		}
	}
	for i, a := range legs {
		for _, b := range legs[i+1:] {
			if r2.Norm(r2.Sub(a[1], b[1])) < onSeam && math.Abs(a[0].X-b[0].X) > onSeam {
				if a[0].X > b[0].X {
					a, b = b, a
				}
				return a, b, true
			}
		}
	}
	return nil, nil, false
}

// fromLine returns the distance of v from an open line (m).
func fromLine(v r2.Vec, line []r2.Vec) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		least = min(least, polyline.Off(v, line[i-1], line[i]))
	}
	return least
}

// stretch returns the points of a closed line from one index to another.
func stretch(p []r2.Vec, from, to int) []r2.Vec {
	line := []r2.Vec{p[from]}
	for i := from; i != to; {
		i = (i + 1) % len(p)
		line = append(line, p[i])
	}
	return line
}

// bow returns how far a line stands off the straight between its ends (m).
func bow(line []r2.Vec) float64 {
	most := 0.0
	for _, v := range line {
		most = max(most, polyline.Off(v, line[0], line[len(line)-1]))
	}
	return most
}

func straight(line []r2.Vec) bool { return bow(line) < beside }

const (
	fine       = 0.00005 // m, how far a thinned curve may stand off the drawn one
	mostPoints = 198     // of a curve, its ends not counted
)

// thin returns the inner points of a curve, those left out that stand off less
// than fine (D. Douglas, T. Peucker, Cartographica 10 (1973) 112), and coarser
// ones if too many are left.
func thin(line []r2.Vec) []r2.Vec {
	for tolerance := fine; ; tolerance *= 2 {
		kept := peuck(line, tolerance)
		if len(kept) <= mostPoints {
			return kept
		}
	}
}

// peuck returns the inner points of a line that stand off by the tolerance.
func peuck(line []r2.Vec, tolerance float64) []r2.Vec {
	last := len(line) - 1
	far, at := tolerance, 0
	for i := 1; i < last; i++ {
		if d := polyline.Off(line[i], line[0], line[last]); d > far {
			far, at = d, i
		}
	}
	if at == 0 {
		return nil
	}
	kept := append(peuck(line[:at+1], tolerance), line[at])
	return append(kept, peuck(line[at:], tolerance)...)
}
