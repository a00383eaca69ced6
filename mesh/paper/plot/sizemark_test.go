package plot

import (
	"fmt"
	"math"
	"testing"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// square is a piece of a nest about the origin, m.
func square(size string, half, allow float64) paper.Piece {
	of := func(h float64) []r2.Vec { return []r2.Vec{{X: -h, Y: -h}, {X: h, Y: -h}, {X: h, Y: h}, {X: -h, Y: h}} }
	return paper.Piece{Name: "square " + size, Nest: "square", Size: size, Outline: of(half), CutLine: of(half + allow),
		LabelWide: 0.1}
}

// The number of a size is 5 mm high or more, keeps clear of every line, words and other
// number, and stands nearest to its own cut line, or has a line to it, whether the sizes
// lie far apart or close.
func TestSizeMarks(t *testing.T) {
	for _, step := range []float64{0.012, 0.009, 0.005, 0.003} {
		var pieces []paper.Piece
		for i := range 5 {
			pieces = append(pieces, square(fmt.Sprint(8+2*i), 0.15+step*float64(i), 0.025))
		}
		d := Pieces(pieces)
		for i, p := range pieces {
			k := textOf(d, p.Size)
			if k < 0 {
				t.Errorf("sizes %g mm apart: no number of size %s", step*1000, p.Size)
				continue
			}
			m := d.Texts[k]
			if m.Size < 5 {
				t.Errorf("sizes %g mm apart: %s is %.1f mm high, want 5 mm or more", step*1000, p.Size, m.Size)
			}
			if off := clearance(d, k); off < 0.5 {
				t.Errorf("sizes %g mm apart: %s is %.2f mm off a line or words, want 0.5 mm", step*1000, p.Size, off)
			}
			if own := numbered(d, k); own != i {
				t.Errorf("sizes %g mm apart: %s stands at the cut line of size %s", step*1000, p.Size, pieces[own].Size)
			}
		}
	}
}

func textOf(d Drawing, said string) int {
	for k, t := range d.Texts {
		if t.Said == said {
			return k
		}
	}
	return -1
}

// inked lists places of the digits of text k, a third of a millimetre apart.
func inked(d Drawing, k int) []r2.Vec {
	t := d.Texts[k]
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	long := 0.52 * t.Size * float64(len(t.Said))
	var out []r2.Vec
	for a := -long / 2; a <= long/2; a += 0.33 {
		for b := 0.0; b <= 0.73*t.Size; b += 0.33 {
			out = append(out, r2.Vec{X: t.At.X + a*cos + b*sin, Y: t.At.Y + a*sin - b*cos})
		}
	}
	return out
}

// clearance is how far text k is from the next line or other words, mm.
func clearance(d Drawing, k int) float64 {
	least := math.Inf(1)
	for _, v := range inked(d, k) {
		for _, s := range d.Strokes {
			least = min(least, toLine(v, s))
		}
		for j := range d.Texts {
			if j != k {
				for _, w := range inked(d, j) {
					least = min(least, r2.Norm(r2.Sub(v, w)))
				}
			}
		}
	}
	return least
}

// numbered is the size at whose cut line text k stands: the next, or where the thin line
// beside it ends.
func numbered(d Drawing, k int) int {
	box := d.Texts[k].Box()
	mid := r2.Scale(0.5, r2.Add(box[0][0], box[2][0]))
	at, off := mid, 6.0
	for _, s := range d.Strokes {
		if n := len(s.Points); s.Pen.Width == rulerPen.Width && r2.Norm(r2.Sub(s.Points[n-1], mid)) < off {
			at, off = s.Points[0], r2.Norm(r2.Sub(s.Points[n-1], mid))
		}
	}
	best, least := -1, math.Inf(1)
	for i, p := range d.Placed {
		if off := toLine(at, Stroke{Closed: true, Points: p.all(p.Piece.CutLine)}); off < least {
			best, least = i, off
		}
	}
	return best
}

// toLine is how far a place is from a line, mm.
func toLine(v r2.Vec, s Stroke) float64 {
	least := math.Inf(1)
	n := len(s.Points)
	for i := range n {
		if i == n-1 && !s.Closed {
			break
		}
		a, b := s.Points[i], s.Points[(i+1)%n]
		way := r2.Sub(b, a)
		share := 0.0
		if l := r2.Dot(way, way); l > 0 {
			share = max(0, min(1, r2.Dot(r2.Sub(v, a), way)/l))
		}
		least = min(least, r2.Norm(r2.Sub(v, r2.Add(a, r2.Scale(share, way)))))
	}
	return least
}
