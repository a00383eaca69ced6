package svg

import (
	"fmt"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// drawMargin draws what lies under the piece: test squares, legend, figures.
func drawMargin(c *canvas, s sheet, p draft.Piece, o Options) {
	drawSquare(c, "square-10cm", r2.Vec{X: margin, Y: s.below}, tenCM, "10 cm test square")
	drawSquare(c, "square-4in", r2.Vec{X: margin + tenCM + gap, Y: s.below}, fourInch, "4 in test square")
	at := r2.Vec{X: margin, Y: s.below + fourInch + lineHeight}
	c.text(label{at: at, size: textSize, anchor: "start", colour: ink},
		"Print at 100 %, then measure: 10 cm must be 10 cm to half a millimetre.")
	y := s.below + 6.5
	c.text(label{at: r2.Vec{X: legendX, Y: y}, size: 9, anchor: "start", colour: ink}, o.Title+", 1:1")
	y += 1.5 * lineHeight
	c.text(label{at: r2.Vec{X: legendX, Y: y}, size: textSize, anchor: "start", colour: accent}, caution)
	y += 0.5 * lineHeight
	for _, item := range legend(p) {
		y += lineHeight
		drawSample(c, item, y)
	}
	y += 0.5 * lineHeight
	for _, f := range figures(p, o) {
		y += lineHeight
		c.text(label{at: r2.Vec{X: legendX, Y: y}, size: textSize, anchor: "start", colour: ink}, f)
	}
}

const caution = "Prediction, not a toile: cut a test in real cloth first."

// drawSquare draws a square of the given side with its name in it.
func drawSquare(c *canvas, id string, at r2.Vec, side float64, name string) {
	x, y := at.X, at.Y
	c.pageLine(id, pen{ink, 0.25, ""}, true, r2.Vec{X: x, Y: y}, r2.Vec{X: x + side, Y: y},
		r2.Vec{X: x + side, Y: y + side}, r2.Vec{X: x, Y: y + side})
	c.text(label{at: r2.Vec{X: x + side/2, Y: y + side/2}, size: textSize, anchor: "middle", colour: grey}, name)
}

// sample is a line of the legend.
type sample struct {
	pen  pen
	twin bool // a double line
	mark bool // a cross instead of a line
	name string
}

// legend lists the lines that p has.
func legend(p draft.Piece) []sample {
	cut, edge := "cut line: no allowance", "cowl edge: no facing"
	if p.Trim > 0 {
		cut = fmt.Sprintf("cut line, %.1f cm outside the seam", p.Trim*100)
	}
	if p.Facing > 0 {
		edge = "cowl edge: the facing folds in along it"
	}
	l := []sample{
		{pen: cutPen, name: cut},
		{pen: seamPen, name: "seam line"},
		{pen: cfPen, name: "centre front (CF)"},
		{pen: foldPen, name: edge},
		{pen: linePen, twin: trueBias(p.Grain), name: "grain line, laid along the selvedge"},
		{pen: markPen, mark: true, name: "apex (bust point)"},
	}
	if p.DartLeft != nil {
		l = append(l, sample{pen: dartPen, name: "dart left open: stitch, pleat or ease it"})
	}
	return l
}

func drawSample(c *canvas, s sample, y float64) {
	const long = 28.0
	y0 := y - textSize*capHeight/2
	switch {
	case s.mark:
		x := legendX + long/2
		c.pageLine("", s.pen, false, r2.Vec{X: x - 3, Y: y0}, r2.Vec{X: x + 3, Y: y0})
		c.pageLine("", s.pen, false, r2.Vec{X: x, Y: y0 - 3}, r2.Vec{X: x, Y: y0 + 3})
	case s.twin:
		c.pageLine("", s.pen, false, r2.Vec{X: legendX, Y: y0 - 1}, r2.Vec{X: legendX + long, Y: y0 - 1})
		c.pageLine("", s.pen, false, r2.Vec{X: legendX, Y: y0 + 1}, r2.Vec{X: legendX + long, Y: y0 + 1})
	default:
		c.pageLine("", s.pen, false, r2.Vec{X: legendX, Y: y0}, r2.Vec{X: legendX + long, Y: y0})
	}
	c.text(label{at: r2.Vec{X: legendX + long + 6, Y: y}, size: textSize, anchor: "start", colour: ink}, s.name)
}

// figures lists the numbers of p, centimetres unless they name their unit.
func figures(p draft.Piece, o Options) []string {
	r := p.Report()
	lines := []string{
		fmt.Sprintf("Half edge %.1f cm, extension %.1f cm a half (dart %.1f, %v %.1f)", r.HalfEdge*100, r.Extension*100, r.FromDart*100, p.How, r.FromOther*100),
		fmt.Sprintf("Dart closed %.0f %%, left open at the waist %.1f cm", r.DartShare*100, r.IntakeLeft*100),
		fmt.Sprintf("Edge hangs %.1f–%.1f cm below the cowl points (chain to V)", r.DropChain*100, r.DropV*100),
		fmt.Sprintf("Seams: shoulder %.1f, armhole %.1f, side %.1f, half waist %.1f cm", r.Shoulder*100, r.Armhole*100, r.Side*100, r.Waist*100),
		fmt.Sprintf("Cloth: %.1f cm across, %.1f cm along the grain", r.Across*100, r.Along*100),
		"All sizes in centimetres; the sheet is drawn in millimetres.",
	}
	return append(lines, o.Notes...)
}
