package plot

import (
	"fmt"
	"math"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

// Caution stands on every sheet.
const Caution = "Prediction, not a toile: cut a test in real cloth first."

// margin draws what lies under the pieces: test squares, legend, notes.
func (d *Drawing) margin(below float64, pieces []paper.Piece, o Options) {
	d.Square("square-10cm", r2.Vec{X: Margin, Y: below}, tenCM, "10 cm test square")
	d.Square("square-4in", r2.Vec{X: Margin + tenCM + gap, Y: below}, fourInch, "4 in test square")
	say := func(x, y, size float64, c Colour, said string) {
		d.text(Text{said, r2.Vec{X: x, Y: y}, size, 0, Start, c})
	}
	say(Margin, below+fourInch+lineHeight, textSize, Ink, measureWords())
	y := below + 6.5
	say(legendX, y, nameSize, Ink, o.Title+", 1:1")
	y += 1.5 * lineHeight
	say(legendX, y, textSize, Accent, Caution)
	y = d.Legend(pieces, r2.Vec{X: legendX, Y: y + 1.5*lineHeight}, textSize) - 0.5*lineHeight
	for _, n := range o.Notes {
		y += lineHeight
		say(legendX, y, textSize, Ink, n)
	}
}

// Square draws a square of the given side (mm) with its name in it.
func (d *Drawing) Square(id string, at r2.Vec, side float64, name string) {
	x, y := at.X, at.Y
	d.line(id, rulerPen, true, at, r2.Vec{X: x + side, Y: y}, r2.Vec{X: x + side, Y: y + side}, r2.Vec{X: x, Y: y + side})
	d.text(Text{name, r2.Vec{X: x + side/2, Y: y + side/2}, textSize, 0, Middle, Grey})
}

// measureWords says how the print is measured.
func measureWords() string {
	side := "10 cm"
	if ruler.Spoken() == ruler.Inches {
		side = "4 in"
	}
	return fmt.Sprintf("Print at 100 %%, then measure: %s must be %s to %s.", side, side, PrintError())
}

// PrintError is how far a test square of either unit may be off.
func PrintError() string {
	if ruler.Spoken() == ruler.Inches {
		return "1/64 in"
	}
	return "half a millimetre"
}

// sample is a line of the legend.
type sample struct {
	pen  Pen
	twin bool // a double line
	mark bool // a cross instead of a line
	name string
}

// legend lists the lines that the pieces have.
func legend(pieces []paper.Piece) []sample {
	l := []sample{{pen: cutPen, name: cutWords(pieces)}, {pen: seamPen, name: "seam line"}}
	if sizes := nestSamples(pieces); sizes != nil {
		l = append(sizes, sample{pen: seamPen, name: "seam line, " + strings.TrimPrefix(cutWords(pieces), "cut line, ")})
	}
	var centre, fold, dart, open, pleat, slash, guide, bias, hole bool
	cowl := pieces[0].Worn // a suit begins with its cowl
	for _, p := range pieces {
		for _, in := range p.Lines {
			centre, fold = centre || in.Kind == paper.Centre, fold || in.Kind == paper.Fold
			left := strings.HasSuffix(in.Name, "left open")
			dart, open = dart || in.Kind == paper.Dart && !left, open || in.Kind == paper.Dart && left
			pleat, slash, guide = pleat || in.Kind == paper.Pleat, slash || in.Kind == paper.Slash, guide ||
				in.Kind == paper.Guide
		}
		bias, hole = bias || trueBias(p.Grain()), hole || len(p.Holes) > 0
	}
	for _, s := range []struct {
		has bool
		sample
	}{
		{centre, sample{pen: cfPen, name: "centre line"}},
		{fold, sample{pen: foldPen, name: "fold: the facing folds in along it"}},
		{true, sample{pen: linePen, twin: bias, name: "grain line, laid along the selvedge"}},
		{pleat, sample{pen: linePen, name: "pleat: bring its fold onto its place"}},
		{slash, sample{pen: cutPen, name: "release slash: cut it, on both halves"}},
		{guide, sample{pen: linePen, name: "line to be marked on the cloth"}},
		{hole, sample{pen: markPen, mark: true, name: cowl.Say("apex (bust point)")}},
		{open, sample{pen: dartPen, name: "dart left open: stitch, pleat or ease it"}},
		{dart, sample{pen: dartPen, name: "dart: stitch it, press it to the centre"}},
	} {
		if s.has {
			l = append(l, s.sample)
		}
	}
	return l
}

// cutWords says how far the cut line lies from the seam.
func cutWords(pieces []paper.Piece) string {
	least, most := allowances(pieces)
	switch {
	case most == 0:
		return "cut line: no allowance"
	case most-least < 1e-6:
		return fmt.Sprintf("cut line, %s outside the seam", ruler.Spoken().Length(most))
	}
	return fmt.Sprintf("cut line, %s to %s outside the seam", ruler.Spoken().Length(least), ruler.Spoken().Length(most))
}

// allowances returns the least and the most allowance (m).
func allowances(pieces []paper.Piece) (least, most float64) {
	least = math.Inf(1)
	for _, p := range pieces {
		for _, e := range p.Edges {
			least, most = min(least, e.Allowance), max(most, e.Allowance)
		}
	}
	return least, most
}

// Legend says what the lines of the pieces stand for, in letters of the given
// size, from the baseline at down, and returns the next baseline (mm).
func (d *Drawing) Legend(pieces []paper.Piece, at r2.Vec, size float64) float64 {
	for _, s := range legend(pieces) {
		d.sample(s, at, size)
		at.Y += lineHeight / textSize * size
	}
	return at.Y
}

// sample draws a line of the legend on the baseline at.
func (d *Drawing) sample(s sample, at r2.Vec, size float64) {
	long, arm, half := 5.6*size, 0.6*size, 0.2*size
	y := at.Y - size*capHeight/2
	stroke := func(x0, y0, x1, y1 float64) {
		d.line("", s.pen, false, r2.Vec{X: x0, Y: y0}, r2.Vec{X: x1, Y: y1})
	}
	switch {
	case s.mark:
		x := at.X + long/2
		stroke(x-arm, y, x+arm, y)
		stroke(x, y-arm, x, y+arm)
	case s.twin:
		stroke(at.X, y-half, at.X+long, y-half)
		stroke(at.X, y+half, at.X+long, y+half)
	default:
		stroke(at.X, y, at.X+long, y)
	}
	d.text(Text{s.name, r2.Vec{X: at.X + long + 1.2*size, Y: at.Y}, size, 0, Start, Ink})
}
