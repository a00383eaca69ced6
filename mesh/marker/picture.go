package marker

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

// The look of the picture: as a cutter's marker, selvedges above and below,
// the cloth running to the right, 1:5.
const (
	scale    = 200.0 // mm of picture a metre of cloth
	margin   = 12.0  // mm
	textSize = 4.0   // mm
	line     = 6.0   // mm between lines of text
	leastW   = 190.0 // mm, room for the words
	ink      = "#2b2b2b"
	grey     = "#7d7d7d"
	accent   = "#0b6e75"
	warning  = "#a8480b"
	ground   = "#eef1ee"
	selvedge = "#cdd5d0"
)

// Words are written under the picture; Title above it.
type Words struct {
	Title string
	Notes []string
}

// Picture draws the marker as an SVG 1.1 picture, 1:5. pieces are those that were
// laid. A failing w is an error.
func (l Marker) Picture(w io.Writer, pieces []paper.Piece, words Words) error {
	p := plan{marker: l, pieces: pieces}
	width := math.Max(l.Length*scale, leastW) + 2*margin
	top := margin + 2*line
	p.origin = r2.Vec{X: margin, Y: top + Selvedge*scale}
	below := top + (l.Cloth.Width+2*Selvedge)*scale + 2*line
	height := below + float64(len(words.Notes))*line + margin
	fmt.Fprintf(&p.out, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%.2fmm" height="%.2fmm" viewBox="0 0 %.2f %.2f" font-family="Liberation Sans, Helvetica, Arial, sans-serif">
<title>%s</title>
<rect width="%.2f" height="%.2f" fill="#ffffff"/>
`, width, height, width, height, escaped(words.Title), width, height)
	p.text(r2.Vec{X: margin, Y: margin + line}, 6, "start", ink, words.Title)
	p.cloth()
	for i := range l.Placed {
		p.piece(i)
	}
	p.ruler()
	for i, s := range words.Notes {
		p.text(r2.Vec{X: margin, Y: below + float64(i+1)*line}, textSize, "start", ink, s)
	}
	p.out.WriteString("</svg>\n")
	if _, err := w.Write(p.out.Bytes()); err != nil {
		return fmt.Errorf("lay: %w", err)
	}
	return nil
}

// plan is the picture while it is drawn.
type plan struct {
	out    bytes.Buffer
	marker Marker
	pieces []paper.Piece
	origin r2.Vec // mm, on the page, of the first place between the selvedges
}

// at turns the cloth so that it runs to the right, seen from its right side.
func (p *plan) at(v r2.Vec) r2.Vec {
	return r2.Vec{X: p.origin.X + v.Y*scale, Y: p.origin.Y + v.X*scale}
}

// cloth draws the cloth with its selvedges.
func (p *plan) cloth() {
	long, wide, edge := p.marker.Length*scale, p.marker.Cloth.Width*scale, Selvedge*scale
	rect := func(id string, y, h float64, fill string) {
		fmt.Fprintf(&p.out, "<rect id=\"%s\" x=\"%.3f\" y=\"%.3f\" width=\"%.3f\" height=\"%.3f\" fill=\"%s\"/>\n", id,
			p.origin.X, p.origin.Y+y, long, h, fill)
	}
	rect("cloth", 0, wide, ground)
	rect("selvedge-1", -edge, edge, selvedge)
	rect("selvedge-2", wide, edge, selvedge)
	p.text(r2.Vec{X: p.origin.X + 2, Y: p.origin.Y - 0.6}, 2.4, "start", ink, "selvedge")
	p.text(r2.Vec{X: p.origin.X + 2, Y: p.origin.Y + wide + edge - 0.6}, 2.4, "start", ink, "selvedge")
}

// piece draws a piece: the cut line with the mitres that the paper has, thin where their
// tips were clipped to lay it, and within it seam line, lines and grain.
func (p *plan) piece(i int) {
	q := p.marker.Placed[i]
	src := p.pieces[q.Piece]
	cut := p.path(q.Cut, true)
	fmt.Fprintf(&p.out, "<clipPath id=\"within-%d\"><path d=\"%s\"/></clipPath>\n", i+1, cut)
	pen := 0.5
	if q.Part == Whole {
		pen = 0.2
	}
	fmt.Fprintf(&p.out, "<path id=\"piece-%d\" d=\"%s\" fill=\"#ffffff\" stroke=\"%s\" stroke-width=\"%g\"/>\n", i+1, cut,
		ink, pen)
	if q.Part == Whole {
		fmt.Fprintf(&p.out, "<path id=\"cut-%d\" d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"0.5\"/>\n",
			i+1, p.path(q.all(src.CutLine), true), ink)
	}
	fmt.Fprintf(&p.out, "<g clip-path=\"url(#within-%d)\" fill=\"none\">\n", i+1)
	p.stroke(p.path(q.all(src.Outline), true), grey, 0.25, "2 1")
	for _, l := range src.Lines {
		p.stroke(p.path(q.all(l.Points), false), accent, 0.25, "3 1 0.6 1")
	}
	p.out.WriteString("</g>\n")
	if q.Part != Corner {
		p.grain(q.On(src.GrainLine[0]), q.On(src.GrainLine[1]))
	}
	p.name(q, src)
}

// all returns where the places of a line of the paper lie on the cloth.
func (p Placed) all(line []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for k, v := range line {
		out[k] = p.On(v)
	}
	return out
}

// grain draws the grain line with a head at either end.
func (p *plan) grain(a, b r2.Vec) {
	p.stroke(p.path([]r2.Vec{a, b}, false), accent, 0.4, "")
	d := r2.Unit(r2.Sub(b, a))
	for _, end := range []struct {
		at  r2.Vec
		way float64
	}{{a, 1}, {b, -1}} {
		back := r2.Scale(end.way*0.012, d)
		side := r2.Scale(0.005, r2.Vec{X: -d.Y, Y: d.X})
		p.stroke(p.path([]r2.Vec{r2.Add(r2.Add(end.at, back), side), end.at, r2.Sub(r2.Add(end.at, back), side)}, false),
			accent, 0.4, "")
	}
}

// small is the area below which a name is written small, m².
const small = 0.06

// name writes what a part is, and draws the join of a corner.
func (p *plan) name(q Placed, src paper.Piece) {
	colour, words, size := ink, src.Name, textSize
	at := p.at(q.On(src.Label))
	if area(q.Cut) < small {
		size = 2.6
	}
	if q.Part != Whole {
		colour, words = warning, src.Name+", "+q.Part.String()
		p.stroke(p.path(q.Join, false), warning, 0.4, "2 1")
	}
	if q.Part == Corner {
		at, words = p.at(middle(q.Cut)), "corner"
	}
	at, turn, size := p.room(q, src, at, size, words)
	about := ""
	if turn != 0 {
		about = fmt.Sprintf(` transform="rotate(%g %.2f %.2f)"`, turn, at.X, at.Y)
	}
	fmt.Fprintf(&p.out, "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%g\" text-anchor=\"middle\" fill=\"%s\"%s>%s</text>\n",
		at.X, at.Y, size, colour, about, escaped(words))
}

// middle is the mean of the points of a line.
func middle(line []r2.Vec) r2.Vec {
	var m r2.Vec
	for _, v := range line {
		m = r2.Add(m, r2.Scale(1/float64(len(line)), v))
	}
	return m
}

// ruler draws marks along the cloth, every 10 cm or 4 inches, and numbers every other.
func (p *plan) ruler() {
	step, one, unit := 0.1, 10, "cm"
	if ruler.Spoken() == ruler.Inches {
		step, one, unit = 4*ruler.Inch, 4, "in"
	}
	y := p.origin.Y + (p.marker.Cloth.Width+Selvedge)*scale + 1
	for k := 0; float64(k)*step <= p.marker.Length+1e-9; k++ {
		x := p.origin.X + float64(k)*step*scale
		p.stroke(fmt.Sprintf("M%.3f,%.3fL%.3f,%.3f", x, y, x, y+1.5), ink, 0.25, "")
		if k%2 == 0 {
			p.text(r2.Vec{X: x, Y: y + 5}, 3, "middle", grey, fmt.Sprint(one*k))
		}
	}
	p.text(r2.Vec{X: p.origin.X + math.Max(p.marker.Length*scale, 0), Y: y + 9}, 3, "end", grey, unit+" along the warp")
}

func (p *plan) path(line []r2.Vec, closed bool) string {
	var d strings.Builder
	for i, v := range line {
		q := p.at(v)
		fmt.Fprintf(&d, "%c%.3f,%.3f", "ML"[min(i, 1)], q.X, q.Y)
	}
	if closed {
		d.WriteByte('Z')
	}
	return d.String()
}

func (p *plan) stroke(d, colour string, width float64, dash string) {
	if dash != "" {
		dash = fmt.Sprintf(` stroke-dasharray="%s"`, dash)
	}
	fmt.Fprintf(&p.out, "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%g\"%s/>\n", d, colour, width, dash)
}

func (p *plan) text(at r2.Vec, size float64, anchor, colour, s string) {
	fmt.Fprintf(&p.out, "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%g\" text-anchor=\"%s\" fill=\"%s\">%s</text>\n", at.X,
		at.Y, size, anchor, colour, escaped(s))
}

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a bytes.Buffer never fails
	return b.String()
}
