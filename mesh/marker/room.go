package marker

import (
	"math"

	"cowl/mesh/paper"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	leastText = 1.4  // mm, below it words are not read
	letter    = 0.56 // width of a letter, as a share of its size, rounded up
	farOff    = 40   // mm, words stand no further from the place of the label
	roomStep  = 2.0  // mm
)

// turns are how words may stand, degrees clockwise, the first that goes.
var turns = [...]float64{0, -45, 45, -30, 30, -60, 60, -90}

// room returns where on the page words stand clear of every line of a piece, how they are
// turned, and in which size (mm): the one wanted, or the nearest below it for which there
// is room; of places that nearest to at.
func (p *plan) room(q Placed, src paper.Piece, at r2.Vec, size float64, words string) (r2.Vec, float64, float64) {
	lines, cut := p.drawn(q, src), p.page(q.Cut)
	for ; size > leastText; size -= 0.2 {
		half := letter * size * float64(len([]rune(words))) / 2
		for _, turn := range turns {
			for r := 0.0; r <= farOff; r += roomStep {
				for k := range 12 {
					sin, cos := math.Sincos(float64(k) * math.Pi / 6)
					mid := r2.Add(at, r2.Scale(r, r2.Vec{X: cos, Y: sin}))
					if polyline.Contains(cut, mid) && !crossed(boxOf(mid, turn, half, size), lines) {
						return mid, turn, size
					}
				}
			}
		}
	}
	return at, 0, leastText
}

// boxOf returns the corners of words about a place of their baseline.
func boxOf(at r2.Vec, turn, half, size float64) []r2.Vec {
	const clear = 0.6 // mm
	sin, cos := math.Sincos(turn * math.Pi / 180)
	u, v := r2.Scale(half+clear, r2.Vec{X: cos, Y: sin}), r2.Vec{X: -sin, Y: cos}
	low, high := r2.Add(at, r2.Scale(0.3*size+clear, v)), r2.Sub(at, r2.Scale(size+clear, v))
	return []r2.Vec{r2.Sub(low, u), r2.Add(low, u), r2.Add(high, u), r2.Sub(high, u)}
}

// drawn lists the lines of a piece on the page, closed ones with their first place again.
func (p *plan) drawn(q Placed, src paper.Piece) [][]r2.Vec {
	closed := func(line []r2.Vec) []r2.Vec { return append(line, line[0]) }
	out := [][]r2.Vec{closed(p.page(q.Cut)), closed(p.page(q.all(src.Outline))), p.page(q.all(src.GrainLine[:]))}
	for _, l := range src.Lines {
		out = append(out, p.page(q.all(l.Points)))
	}
	if q.Part != Whole {
		out = append(out, p.page(q.Join))
	}
	return out
}

// page returns the places of a line of the cloth on the page.
func (p *plan) page(line []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[i] = p.at(v)
	}
	return out
}

// crossed reports whether a side of a closed line is crossed by any of the open lines.
func crossed(box []r2.Vec, lines [][]r2.Vec) bool {
	left := func(p, q, v r2.Vec) bool { return r2.Cross(r2.Sub(q, p), r2.Sub(v, p)) > 0 }
	for i, p := range box {
		q := box[(i+1)%len(box)]
		for _, line := range lines {
			for j := 1; j < len(line); j++ {
				u, v := line[j-1], line[j]
				if left(p, q, u) != left(p, q, v) && left(u, v, p) != left(u, v, q) {
					return true
				}
			}
		}
	}
	return false
}
