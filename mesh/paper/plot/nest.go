package plot

import (
	"fmt"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// stack is pieces that are drawn over each other: the sizes of a nest, or one piece.
type stack []paper.Piece

// stacks lists the pieces that lie apart, those of a nest together, in their order.
func stacks(pieces []paper.Piece) []stack {
	var out []stack
	at := map[string]int{}
	for _, p := range pieces {
		if k, ok := at[p.Nest]; ok && p.Nest != "" {
			out[k] = append(out[k], p)
			continue
		}
		at[p.Nest] = len(out)
		out = append(out, stack{p})
	}
	return out
}

// box holds the cut lines of all.
func (s stack) box() (lo, hi r2.Vec) {
	var all []r2.Vec
	for _, p := range s {
		all = append(all, p.CutLine...)
	}
	return paper.Box(all)
}

// nestDashes tell the cut lines of a nest apart, mm: solid for the first.
var nestDashes = [][]float64{nil, {9, 2}, {5, 1.5, 1, 1.5}, {3, 1.5}, {7, 1.5, 1, 1.5, 1, 1.5}, {1.2, 1.2},
	{12, 1.5, 3, 1.5}}

// nestPen is the pen of the cut line of the size numbered i from 0.
func nestPen(i int) Pen { return Pen{Ink, 0.5, nestDashes[i%len(nestDashes)]} }

// ring draws a further size of a nest over the first: its cut line by its own pen, seam line
// and notches; what lies inside only where it is sewn.
func (d *Drawing) ring(p Placed, i int) {
	id := func(s string) string { return slug(p.Piece.Name) + "-" + s }
	d.line(id("seam-line"), seamPen, true, p.all(p.Piece.Outline)...)
	d.line(id("cut-line"), nestPen(i), true, p.all(p.Piece.CutLine)...)
	for _, l := range p.Piece.Lines {
		if pen, sewn := map[paper.Kind]Pen{paper.Dart: dartPen, paper.Fold: foldPen, paper.Pleat: linePen}[l.Kind]; sewn {
			d.line(id(slug(l.Name)), pen, false, p.all(l.Points)...)
		}
	}
	for _, h := range p.Piece.Holes {
		d.cross(p.At(h.At))
	}
	for _, n := range p.Piece.Notches {
		from, to := p.Piece.NotchMark(n)
		d.line("", markPen, false, p.At(from), p.At(to))
	}
}

// nestSamples lists the cut lines of the sizes for the legend, none without a nest.
func nestSamples(pieces []paper.Piece) []sample {
	var out []sample
	for _, s := range stacks(pieces) {
		if len(s) < 2 {
			continue
		}
		for i, p := range s {
			out = append(out, sample{pen: nestPen(i), name: fmt.Sprintf("cut line of size %s", p.Size)})
		}
		return out
	}
	return nil
}
