package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
)

// The look of the sheet: greys for what is cut and sewn, one colour for what
// tells how the cloth lies.
const (
	ink    = "#2b2b2b"
	grey   = "#7d7d7d"
	accent = "#0b6e75"
)

// pen is a way to draw a line.
type pen struct {
	colour string
	width  float64 // mm
	dash   string  // SVG dash pattern, mm; empty: solid
}

var (
	cutPen  = pen{ink, 0.5, ""}
	seamPen = pen{grey, 0.35, "5 2"}
	cfPen   = pen{accent, 0.35, "12 2 1.5 2"}
	foldPen = pen{accent, 0.5, "8 3"}
	linePen = pen{accent, 0.4, ""}
	dartPen = pen{grey, 0.35, "1.5 1.5"}
	markPen = pen{ink, 0.5, ""}
)

func (p pen) String() string {
	s := fmt.Sprintf(`fill="none" stroke="%s" stroke-width="%g"`, p.colour, p.width)
	if p.dash != "" {
		s += fmt.Sprintf(` stroke-dasharray="%s"`, p.dash)
	}
	return s
}

// canvas collects the picture; at maps the piece (m, Y up) to the page (mm, Y down).
type canvas struct {
	out bytes.Buffer
	at  func(r2.Vec) r2.Vec
}

func (c *canvas) open(width, height float64, title string) {
	fmt.Fprintf(&c.out, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%.2fmm" height="%.2fmm" viewBox="0 0 %.2f %.2f" font-family="Liberation Sans, Helvetica, Arial, sans-serif">
<title>%s</title>
<rect width="%.2f" height="%.2f" fill="#ffffff"/>
`, width, height, width, height, escaped(title), width, height)
}

func (c *canvas) close() { c.out.WriteString("</svg>\n") }

// line draws a line of the piece; id may be empty.
func (c *canvas) line(id string, p pen, closed bool, line ...r2.Vec) {
	page := make([]r2.Vec, len(line))
	for i, v := range line {
		page[i] = c.at(v)
	}
	c.pageLine(id, p, closed, page...)
}

// pageLine draws a line given on the page.
func (c *canvas) pageLine(id string, p pen, closed bool, line ...r2.Vec) {
	var d strings.Builder
	for i, v := range line {
		fmt.Fprintf(&d, "%c%.3f,%.3f", "ML"[min(i, 1)], v.X, v.Y)
	}
	if closed {
		d.WriteByte('Z')
	}
	if id != "" {
		id = fmt.Sprintf(` id="%s"`, id)
	}
	fmt.Fprintf(&c.out, "<path%s d=\"%s\" %s/>\n", id, d.String(), p)
}

// label is a line of text on the page.
type label struct {
	at     r2.Vec  // mm, on the baseline
	size   float64 // mm
	turn   float64 // degrees, clockwise on the page
	anchor string  // start, middle or end
	colour string
}

func (c *canvas) text(l label, s string) {
	turn := ""
	if l.turn != 0 {
		turn = fmt.Sprintf(` transform="rotate(%.2f %.2f %.2f)"`, l.turn, l.at.X, l.at.Y)
	}
	fmt.Fprintf(&c.out, "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%g\" text-anchor=\"%s\" fill=\"%s\"%s>%s</text>\n",
		l.at.X, l.at.Y, l.size, l.anchor, l.colour, turn, escaped(s))
}

// beside writes s along the direction from a to b of the piece, centred on
// their middle and standing off them by off mm to the right of a→b. The text
// always reads from below or from the right.
func (c *canvas) beside(a, b r2.Vec, off float64, colour, s string) {
	p, q := c.at(a), c.at(b)
	d := r2.Unit(r2.Sub(q, p))
	right := r2.Vec{X: -d.Y, Y: d.X} // on the page, where Y runs down
	turn := math.Atan2(d.Y, d.X) * 180 / math.Pi
	up := -1.0 // the text's own up, along right
	if turn > 90 || turn <= -90 {
		turn = math.Remainder(turn+180, 360)
		up = 1
	}
	// The baseline lies off away from the line, or off and a text height.
	stand := off
	if up < 0 {
		stand += textSize * capHeight
	}
	at := r2.Add(r2.Scale(0.5, r2.Add(p, q)), r2.Scale(stand, right))
	c.text(label{at: at, size: textSize, turn: turn, anchor: "middle", colour: colour}, s)
}

const (
	textSize  = 5.0  // mm
	capHeight = 0.73 // height of a capital, share of the text size
)

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a bytes.Buffer never fails
	return b.String()
}
