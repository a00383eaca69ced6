package plot

import (
	"fmt"
	"math"
	"strings"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// piece draws a piece with all that is marked on it. Where there are many, the
// ids of its lines begin with its name.
func (d *Drawing) piece(p Placed, many bool) {
	id := func(s string) string { return s }
	if many {
		id = func(s string) string { return slug(p.Piece.Name) + "-" + s }
	}
	d.line(id("seam-line"), seamPen, true, p.all(p.Piece.Outline)...)
	d.line(id("cut-line"), cutPen, true, p.all(p.Piece.CutLine)...)
	for _, l := range p.Piece.Lines {
		d.inner(p, l, id(slug(l.Name)))
	}
	d.grain(p, id("grain-line"))
	for _, h := range p.Piece.Holes {
		d.hole(p.At(h.At), short(h.Name))
	}
	for _, n := range p.Piece.Notches {
		from, to := p.Piece.NotchMark(n)
		d.line("", markPen, false, p.At(from), p.At(to))
	}
	d.edgeNames(p)
	d.words(p)
}

// all returns the places on the page of a line of the piece.
func (p Placed) all(line []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[i] = p.At(v)
	}
	return out
}

// slug turns a name into an id of letters, digits and hyphens.
func slug(name string) string {
	name, _, _ = strings.Cut(name, ":")
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	}), "-")
}

// short leaves out which half of the wearer a name speaks of: the place shows it.
func short(name string) string {
	if s, ok := strings.CutPrefix(name, "left "); ok {
		return s
	}
	return strings.TrimPrefix(name, "right ")
}

// inner draws a line inside the piece and writes its name beside it.
func (d *Drawing) inner(p Placed, l paper.Line, id string) {
	pen := map[paper.Kind]Pen{paper.Centre: cfPen, paper.Fold: foldPen, paper.Dart: dartPen, paper.Pleat: linePen,
		paper.Slash: cutPen, paper.Guide: linePen}[l.Kind]
	line := p.all(l.Points)
	if l.Kind == paper.Slash {
		line = p.all(p.Piece.SlashFromCut(l))
	}
	d.line(id, pen, false, line...)
	a, b := line[0], line[len(line)-1]
	switch l.Kind {
	case paper.Centre: // beside its lower part
		low, top := a, b
		if top.Y > low.Y {
			low, top = b, a
		}
		if width(l.Name, textSize) < 0.9*r2.Norm(r2.Sub(top, low)) {
			share := max(0.3, 1.1*width(l.Name, textSize)/r2.Norm(r2.Sub(top, low)))
			d.beside(r2.Add(low, r2.Scale(share, r2.Sub(top, low))), low, 2.5, Accent, l.Name)
		}
	case paper.Fold:
		if b.X < a.X {
			a, b = b, a
		}
		d.beside(r2.Scale(0.5, r2.Add(a, b)), b, 3, Accent, l.Name)
	case paper.Dart: // outside the outer leg
		outer, apex := line[0], line[1]
		if r2.Cross(r2.Sub(apex, outer), r2.Sub(b, outer)) > 0 { // the inner leg lies to the right
			outer, apex = apex, outer
		}
		d.beside(outer, apex, 3.5, Grey, short(l.Name))
	case paper.Slash: // above its end, clear of what stands along the seam
		d.text(Text{short(l.Name), r2.Vec{X: b.X, Y: b.Y - textSize/2}, textSize, 0, Middle, Accent})
	default:
		a, b := longest(line)
		d.beside(a, b, 2.5, Accent, short(l.Name))
	}
}

// grain draws the grain line with an arrow at either end. On the true bias it
// is a double line (common practice).
func (d *Drawing) grain(p Placed, id string) {
	a, b := p.At(p.Piece.GrainLine[0]), p.At(p.Piece.GrainLine[1])
	if a == b {
		return // not known
	}
	dir := r2.Unit(r2.Sub(b, a))
	side := r2.Vec{X: -dir.Y, Y: dir.X}
	bias := trueBias(p.Piece.Grain())
	if bias { // twin lines end inside the arrows
		in := r2.Scale(3, dir)
		d.line(id, linePen, false, r2.Add(r2.Add(a, in), side), r2.Add(r2.Sub(b, in), side))
		d.line("", linePen, false, r2.Sub(r2.Add(a, in), side), r2.Sub(r2.Sub(b, in), side))
	}
	for i, end := range []r2.Vec{a, b} {
		back := r2.Scale(7*float64(1-2*i), dir)
		d.line("", linePen, false,
			r2.Add(r2.Add(end, back), r2.Scale(3, side)), end,
			r2.Add(r2.Add(end, back), r2.Scale(-3, side)))
	}
	if !bias {
		d.line(id, linePen, false, a, b)
	}
	if said := GrainWords(p.Piece); width(said, textSize) < 1.2*r2.Norm(r2.Sub(b, a)) {
		d.beside(b, a, 3.5, Accent, said)
	} else {
		d.beside(b, a, 3.5, Accent, "grain")
	}
}

// trueBias reports whether the grain lies 45° from upright, to half a degree.
func trueBias(grain float64) bool { return math.Abs(math.Abs(degrees(grain))-45) < 0.5 }

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// GrainWords says how the warp lies to the centre of the piece.
func GrainWords(p paper.Piece) string {
	centre := p.Centre()
	if centre == "" {
		centre = "upright"
	}
	switch d := math.Abs(degrees(p.Grain())); {
	case trueBias(p.Grain()):
		return "grain: true bias, 45° to " + centre
	case d < 0.5:
		return "grain: along " + centre
	case d > 89.5:
		return "grain: across " + centre
	default:
		return fmt.Sprintf("grain: %.0f° to %s", d, centre)
	}
}

// hole draws a cross with its name above.
func (d *Drawing) hole(at r2.Vec, name string) {
	d.cross(at)
	d.text(Text{name, r2.Vec{X: at.X, Y: at.Y - 6}, textSize, 0, Middle, Ink})
}

func (d *Drawing) cross(at r2.Vec) {
	const arm = 4.0
	d.line("", markPen, false, r2.Vec{X: at.X - arm, Y: at.Y}, r2.Vec{X: at.X + arm, Y: at.Y})
	d.line("", markPen, false, r2.Vec{X: at.X, Y: at.Y - arm}, r2.Vec{X: at.X, Y: at.Y + arm})
}
