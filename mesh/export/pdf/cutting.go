package pdf

import (
	"fmt"
	"io"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/ruler"

	"codeberg.org/go-pdf/fpdf"
	"gonum.org/v1/gonum/spatial/r2"
)

// WriteCutting writes the cutting sheet: each piece small, with what to know
// of it, then what to mind and the steps of the work. The notes say for whom
// and from what cloth it is cut.
func WriteCutting(w io.Writer, pieces []paper.Piece, o plot.Options, on Paper) error {
	if err := check(pieces); err != nil {
		return err
	}
	if o.Title == "" {
		o.Title = pieces[0].Name
	}
	pages := cuttingPages(pieces, o, on, 0).PageNo() // once to count them
	return finish(cuttingPages(pieces, o, on, pages), w)
}

// cuttingPages writes the pages; of is how many there are.
func cuttingPages(pieces []paper.Piece, o plot.Options, on Paper, of int) *fpdf.Fpdf {
	f := newDocument(fpdf.SizeType{Wd: on.Width, Ht: on.Height}, "Cutting sheet: "+o.Title)
	c := &column{f: f, on: on, of: of, title: o.Title}
	c.next()
	c.say(strong, 6.5, plot.Ink, "Cutting sheet: "+o.Title)
	c.y += 2
	c.say(plain, fine, plot.Grey, strings.Join(o.Notes, " · "))
	c.y++
	c.say(plain, fine, plot.Accent, "A prediction is not a toile: cut a test in real cloth before cutting the good one.")
	c.head("Pieces")
	for _, p := range pieces {
		c.piece(p)
	}
	c.head("Mind")
	for _, s := range minding(pieces) {
		c.item("–", s)
	}
	c.head("Steps")
	for i, s := range steps(pieces) {
		c.item(fmt.Sprintf("%d.", i+1), s)
	}
	return f
}

// column writes text down a page and goes on to the next one where it is full.
type column struct {
	f     *fpdf.Fpdf
	on    Paper
	of    int
	title string
	y     float64 // mm, where the next line begins
}

const (
	side    = 16.0 // mm, margin left, right and above
	foot    = 16.0 // mm, margin below
	fine    = 3.2  // mm, size of the letters
	bullet  = 6.0  // mm, before the words of an item
	leading = 1.32 // height of a line over the size of its letters
)

func (c *column) wide() float64 { return c.on.Width - 2*side }

// next begins a page.
func (c *column) next() {
	c.f.AddPage()
	c.y = side
	foot := fmt.Sprintf("%s, cutting sheet, page %d of %d", c.title, c.f.PageNo(), c.of)
	text(c.f, plain, plot.Text{Said: foot, At: r2.Vec{X: side, Y: c.on.Height - 10}, Size: 3, Colour: plot.Grey})
}

// room goes on to the next page if high mm are not left.
func (c *column) room(high float64) {
	if c.y+high > c.on.Height-foot {
		c.next()
	}
}

// say writes words from the margin.
func (c *column) say(font string, size float64, colour plot.Colour, said string) {
	for _, line := range wrap(c.f, font, size, c.wide(), said) {
		c.room(leading * size)
		c.y += leading * size
		text(c.f, font, plot.Text{Said: line, At: r2.Vec{X: side, Y: c.y}, Size: size, Colour: colour})
	}
}

// head writes the head of a section and keeps it with what follows.
func (c *column) head(said string) {
	c.room(25)
	c.y += 4
	c.say(strong, 4.6, plot.Ink, said)
	c.y += 1
}

// item writes words with a mark before them.
func (c *column) item(mark, said string) {
	lines := wrap(c.f, plain, fine, c.wide()-bullet, said)
	c.room(float64(len(lines)) * leading * fine)
	for i, line := range lines {
		c.y += leading * fine
		if i == 0 {
			text(c.f, plain, plot.Text{Said: mark, At: r2.Vec{X: side, Y: c.y}, Size: fine, Colour: plot.Grey})
		}
		text(c.f, plain, plot.Text{Said: line, At: r2.Vec{X: side + bullet, Y: c.y}, Size: fine, Colour: plot.Ink})
	}
	c.y += 0.8
}

const (
	thumbWide = 48.0 // mm, room for a small drawing
	thumbHigh = 50.0
)

// piece draws a piece small, upright and as it lies on the cloth, with what to
// know of it beside.
func (c *column) piece(p paper.Piece) {
	c.room(thumbHigh + 10)
	top := c.y + 3
	high := max(c.thumb(p, r2.Vec{X: side, Y: top}, false), c.thumb(onCloth(p), r2.Vec{X: side + thumbWide + 4, Y: top},
		true))
	x := side + 2*thumbWide + 10
	text(c.f, strong, plot.Text{Said: p.Name, At: r2.Vec{X: x, Y: top + 4}, Size: 4.2, Colour: plot.Ink})
	y := top + 4
	for _, s := range facts(p) {
		for _, line := range wrap(c.f, plain, fine, c.on.Width-side-x, s) {
			y += leading * fine
			text(c.f, plain, plot.Text{Said: line, At: r2.Vec{X: x, Y: y}, Size: fine, Colour: plot.Ink})
		}
		y += 0.8
	}
	c.y = max(top+high+5, y+4)
}

// thumb draws a piece in its room, with a selvedge to either side if it lies on
// the cloth, and returns how high it is (mm).
func (c *column) thumb(p paper.Piece, at r2.Vec, lies bool) float64 {
	d := plot.Pieces([]paper.Piece{p})
	scale := min((thumbWide-4)/d.Width, thumbHigh/d.Height)
	high, said := scale*d.Height, "as worn"
	draw(c.f, d, r2.Add(at, r2.Vec{X: (thumbWide - scale*d.Width) / 2}), scale)
	if lies {
		pen := plot.Pen{Colour: plot.Accent, Width: 0.3}
		for _, x := range []float64{0, thumbWide} {
			stroke(c.f, plot.Stroke{Pen: pen, Points: []r2.Vec{{X: at.X + x, Y: at.Y}, {X: at.X + x, Y: at.Y + high}}},
				func(v r2.Vec) r2.Vec { return v }, 1)
		}
		said = "on the cloth, selvedges left and right"
	}
	text(c.f, plain, plot.Text{Said: said, At: r2.Vec{X: at.X + thumbWide/2, Y: at.Y + high + 4.5}, Size: 2.6,
		Anchor: plot.Middle, Colour: plot.Grey})
	return high
}

// onCloth returns the piece turned until its warp is upright.
func onCloth(p paper.Piece) paper.Piece {
	grain := p.Grain()
	turned := func(line []r2.Vec) []r2.Vec {
		out := make([]r2.Vec, len(line))
		for i, v := range line {
			out[i] = r2.Rotate(v, grain, r2.Vec{})
		}
		return out
	}
	q := paper.Piece{Name: p.Name, Outline: turned(p.Outline), CutLine: turned(p.CutLine)}
	for _, l := range p.Lines {
		q.Lines = append(q.Lines, paper.Line{Name: l.Name, Kind: l.Kind, Points: turned(l.Points)})
	}
	g := turned(p.GrainLine[:])
	q.GrainLine = [2]r2.Vec{g[0], g[1]}
	return q
}

// facts lists what to know of a piece.
func facts(p paper.Piece) []string {
	lo, hi := paper.Box(onCloth(p).CutLine)
	out := append([]string(nil), p.Words...)
	out = append(out, ruler.Capital(plot.GrainWords(p)),
		fmt.Sprintf("Takes %s across and %s along the cloth, allowance included", ruler.Spoken().Enough(hi.X-lo.X),
			ruler.Spoken().Enough(hi.Y-lo.Y)))
	for _, t := range p.Texts {
		out = append(out, ruler.Capital(t.Said))
	}
	return append(out, allowanceFacts(p)...)
}
