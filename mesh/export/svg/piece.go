package svg

import (
	"fmt"
	"math"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// drawPiece draws the piece with all that is marked on it.
func drawPiece(c *canvas, p draft.Piece, o Options) {
	c.line("seam-line", seamPen, true, p.Outline...)
	c.line("cut-line", cutPen, true, p.CutLine...)
	waist := p.Waist[len(p.Waist)-1]
	top := p.FacingEdge[len(p.FacingEdge)-1]
	c.line("centre-front", cfPen, false, waist, top)
	c.line("facing-fold", foldPen, false, r2.Vec{X: -p.HalfEdge, Y: p.FoldY}, r2.Vec{X: p.HalfEdge, Y: p.FoldY})
	drawGrain(c, p, o)
	for _, half := range []func(r2.Vec) r2.Vec{same, mirror} {
		drawApex(c, p, half)
	}
	for _, n := range p.Notches {
		drawNotch(c, n, p.Trim)
	}
	drawNames(c, p, o)
}

func same(v r2.Vec) r2.Vec   { return v }
func mirror(v r2.Vec) r2.Vec { return r2.Vec{X: -v.X, Y: v.Y} }

// room returns the half width of the front at its narrowest and the length of
// CF below the edge (m): the space in which to put marks and words.
func room(p draft.Piece) (wide, long float64) {
	wide = math.Inf(1)
	for _, v := range p.Armhole {
		wide = min(wide, v.X)
	}
	return wide, p.FoldY - p.Waist[len(p.Waist)-1].Y
}

// drawGrain draws the grain line with an arrow at either end on the wearer's
// right half. On the true bias it is a double line (common practice).
func drawGrain(c *canvas, p draft.Piece, o Options) {
	wide, long := room(p)
	sin, cos := math.Sincos(p.Grain)
	half := min(0.07, 0.38*wide/max(math.Abs(sin), 1e-9), 0.28*long/max(math.Abs(cos), 1e-9))
	dir := r2.Vec{X: sin, Y: cos}
	mid := mirror(place(p, bar(mirror(r2.Scale(half, dir)))))
	a, b := r2.Sub(mid, r2.Scale(half, dir)), r2.Add(mid, r2.Scale(half, dir))
	side := r2.Vec{X: cos, Y: -sin}
	offs := []float64{0}
	if trueBias(p.Grain) {
		offs = []float64{-0.001, 0.001}
	}
	tip := r2.Scale(0.003, dir) // twin lines end inside the arrows
	if len(offs) == 1 {
		tip = r2.Vec{}
	}
	for _, s := range offs {
		off := r2.Scale(s, side)
		c.line("", linePen, false, r2.Add(r2.Add(a, tip), off), r2.Add(r2.Sub(b, tip), off))
	}
	for i, end := range []r2.Vec{a, b} {
		back := r2.Scale(0.007*float64(1-2*i), dir)
		c.line("", linePen, false,
			r2.Add(r2.Add(end, back), r2.Scale(0.003, side)), end,
			r2.Add(r2.Add(end, back), r2.Scale(-0.003, side)))
	}
	c.beside(b, a, 3.5, accent, o.GrainLabel)
}

// trueBias reports whether the grain lies 45° from CF, to half a degree.
func trueBias(grain float64) bool { return math.Abs(math.Abs(degrees(grain))-45) < 0.5 }

func grainLabel(grain float64) string {
	switch d := math.Abs(degrees(grain)); {
	case trueBias(grain):
		return "grain: true bias, 45° to CF"
	case d < 0.5:
		return "grain: along CF"
	case d > 89.5:
		return "grain: across CF"
	default:
		return fmt.Sprintf("grain: %.0f° to CF", d)
	}
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// drawApex draws the bust point of one half and the dart left open below it.
func drawApex(c *canvas, p draft.Piece, half func(r2.Vec) r2.Vec) {
	a := half(p.Apex)
	const arm = 0.004
	c.line("", markPen, false, r2.Vec{X: a.X - arm, Y: a.Y}, r2.Vec{X: a.X + arm, Y: a.Y})
	c.line("", markPen, false, r2.Vec{X: a.X, Y: a.Y - arm}, r2.Vec{X: a.X, Y: a.Y + arm})
	at := c.at(a)
	c.text(label{at: r2.Vec{X: at.X, Y: at.Y - 6}, size: textSize, anchor: "middle", colour: ink}, "apex")
	if p.DartLeft == nil {
		return
	}
	outer, inner := half(p.DartLeft[0]), half(p.DartLeft[2])
	c.line("", dartPen, false, outer, a, inner)
	off := 3.5 // on the side seam's side of the outer leg
	if outer.X < 0 {
		c.beside(a, outer, off, grey, "dart left open")
	} else {
		c.beside(outer, a, off, grey, "dart left open")
	}
}

// drawNotch draws a notch across the allowance, into the piece if there is none.
func drawNotch(c *canvas, n draft.Notch, trim float64) {
	reach := min(trim, 0.006)
	if trim == 0 {
		reach = -0.004
	}
	c.line("", markPen, false, n.At, r2.Add(n.At, r2.Scale(reach, n.Dir)))
}

// drawNames writes the names of piece, seams and lines.
func drawNames(c *canvas, p draft.Piece, o Options) {
	_, long := room(p)
	mid := c.at(place(p, bar(r2.Vec{X: 0.04})))
	for i, s := range []string{o.Title, "cut 1, whole piece, single layer", "right side up, never on the fold"} {
		l := label{at: r2.Vec{X: mid.X, Y: mid.Y + float64(i)*lineHeight}, size: textSize, anchor: "middle", colour: grey}
		if i == 0 {
			l.size, l.colour, l.at.Y = 9, ink, mid.Y-3
		}
		c.text(l, s)
	}
	for _, s := range []struct {
		name string
		line []r2.Vec
	}{{"shoulder", p.Shoulder}, {"armhole", p.Armhole}, {"side", p.Side}, {"waist", p.Waist}} {
		a, b := middle(s.line)
		c.beside(a, b, 4, grey, s.name)
		c.beside(mirror(b), mirror(a), 4, grey, s.name)
	}
	waist := p.Waist[len(p.Waist)-1]
	c.beside(r2.Add(waist, r2.Vec{Y: 0.4 * long}), waist, 2.5, accent, "centre front")
	fold := r2.Vec{X: p.HalfEdge, Y: p.FoldY}
	edge := "cowl edge"
	if p.Facing > 0 {
		edge = "cowl edge: fold facing in"
	}
	c.beside(r2.Vec{Y: p.FoldY}, fold, 3, accent, edge)
	if p.Facing > 0.025 {
		at := c.at(r2.Vec{X: -p.HalfEdge / 2, Y: p.FoldY + p.Facing/2})
		c.text(label{at: at, size: textSize, anchor: "middle", colour: grey}, fmt.Sprintf("self-facing %.1f cm", p.Facing*100))
	}
}

// middle returns the ends of the longest straight part of a line: where its
// name has most room.
func middle(line []r2.Vec) (a, b r2.Vec) {
	if len(line) > 8 { // a curve: half way along it
		return line[len(line)/2-1], line[len(line)/2]
	}
	for i := 1; i < len(line); i++ {
		if r2.Norm(r2.Sub(line[i], line[i-1])) > r2.Norm(r2.Sub(b, a)) {
			a, b = line[i-1], line[i]
		}
	}
	return a, b
}
