package plot

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Colour is red, green and blue.
type Colour [3]uint8

// The look of the sheet: greys for what is cut and sewn, one colour for what
// tells how the cloth lies.
var (
	Ink    = Colour{0x2b, 0x2b, 0x2b}
	Grey   = Colour{0x6f, 0x6f, 0x6f}
	Accent = Colour{0x0b, 0x6e, 0x75}
)

// Pen is a way to draw a line.
type Pen struct {
	Colour Colour
	Width  float64   // mm
	Dash   []float64 // mm, drawn and left out in turn; none: solid
}

var (
	cutPen   = Pen{Ink, 0.5, nil}
	seamPen  = Pen{Grey, 0.35, []float64{5, 2}}
	cfPen    = Pen{Accent, 0.35, []float64{12, 2, 1.5, 2}}
	foldPen  = Pen{Accent, 0.5, []float64{8, 3}}
	linePen  = Pen{Accent, 0.4, nil}
	dartPen  = Pen{Grey, 0.35, []float64{1.5, 1.5}}
	markPen  = Pen{Ink, 0.5, nil}
	rulerPen = Pen{Ink, 0.25, nil}
)

// Stroke is a line on the page.
type Stroke struct {
	ID     string // may be empty
	Pen    Pen
	Closed bool
	Points []r2.Vec // mm
}

// Anchor says which part of a text lies at its place.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
)

// Text is a line of words on the page.
type Text struct {
	Said   string
	At     r2.Vec  // mm, on the baseline
	Size   float64 // mm
	Turn   float64 // degrees, clockwise on the page
	Anchor Anchor
	Colour Colour
}

// Box returns the four sides of about the room that the words take.
func (t Text) Box() [4][2]r2.Vec {
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	along, up := r2.Vec{X: cos, Y: sin}, r2.Vec{X: sin, Y: -cos}
	from, long := t.At, width(t.Said, t.Size)
	if t.Anchor == Middle {
		from = r2.Sub(from, r2.Scale(long/2, along))
	}
	to := r2.Add(from, r2.Scale(long, along))
	high, low := r2.Scale(t.Size, up), r2.Scale(-0.3*t.Size, up)
	a, b, c, d := r2.Add(from, low), r2.Add(to, low), r2.Add(to, high), r2.Add(from, high)
	return [4][2]r2.Vec{{a, b}, {b, c}, {c, d}, {d, a}}
}

const (
	textSize  = 5.0  // mm
	nameSize  = 9.0  // mm
	capHeight = 0.73 // height of a capital, share of the text size
	runeWidth = 0.52 // mean width of a letter, share of the text size
)

// width returns how long the words are, about (mm).
func width(said string, size float64) float64 {
	return runeWidth * size * float64(len([]rune(said)))
}

func (d *Drawing) line(id string, p Pen, closed bool, points ...r2.Vec) {
	d.Strokes = append(d.Strokes, Stroke{id, p, closed, points})
}

func (d *Drawing) text(t Text) { d.Texts = append(d.Texts, t) }

// beside writes words along the direction from a to b of the page, centred on
// their middle and standing off by off mm to the right of a→b. They always
// read from below or from the right.
func (d *Drawing) beside(a, b r2.Vec, off float64, colour Colour, said string) {
	dir := r2.Unit(r2.Sub(b, a))
	right := r2.Vec{X: -dir.Y, Y: dir.X} // on the page, where Y runs down
	turn := math.Atan2(dir.Y, dir.X) * 180 / math.Pi
	stand := off + textSize*capHeight
	if turn > 90 || turn <= -90 {
		turn = math.Remainder(turn+180, 360)
		stand = off // the baseline is on the near side
	}
	at := r2.Add(r2.Scale(0.5, r2.Add(a, b)), r2.Scale(stand, right))
	d.text(Text{said, at, textSize, turn, Middle, colour})
}
