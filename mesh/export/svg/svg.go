// Package svg draws flat pieces at full size (1:1): width, height and user
// unit of the picture are millimetres, Y runs down the sheet. Start at Write.
package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
)

// Write draws the pieces on one sheet as an SVG 1.1 picture. The lines carry
// ids: cut-line, seam-line and the names of the lines inside, with the name of
// the piece before them if there are several; square-10cm and square-4in. No
// piece, a piece without an outline and a failing w are errors.
func Write(w io.Writer, pieces []paper.Piece, o plot.Options) error {
	if len(pieces) == 0 {
		return errors.New("svg: no piece to draw")
	}
	for _, p := range pieces {
		if len(p.Outline) < 3 || len(p.CutLine) < 3 {
			return fmt.Errorf("svg: piece %q has no outline: draft it first", p.Name)
		}
	}
	d := plot.OnPage(pieces, o)
	title := o.Title
	if title == "" {
		title = pieces[0].Name
	}
	var out bytes.Buffer
	fmt.Fprintf(&out, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%.2fmm" height="%.2fmm" viewBox="0 0 %.2f %.2f" font-family="Liberation Sans, Helvetica, Arial, sans-serif">
<title>%s</title>
<rect width="%.2f" height="%.2f" fill="#ffffff"/>
`, d.Width, d.Height, d.Width, d.Height, escaped(title), d.Width, d.Height)
	for _, s := range d.Strokes {
		stroke(&out, s)
	}
	for _, t := range d.Texts {
		text(&out, t)
	}
	out.WriteString("</svg>\n")
	if _, err := w.Write(out.Bytes()); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	return nil
}

// stroke writes a line of the drawing.
func stroke(out *bytes.Buffer, s plot.Stroke) {
	var d strings.Builder
	for i, v := range s.Points {
		fmt.Fprintf(&d, "%c%.3f,%.3f", "ML"[min(i, 1)], v.X, v.Y)
	}
	if s.Closed {
		d.WriteByte('Z')
	}
	id, dash := "", ""
	if s.ID != "" {
		id = fmt.Sprintf(` id="%s"`, escaped(s.ID))
	}
	if len(s.Pen.Dash) > 0 {
		dash = fmt.Sprintf(` stroke-dasharray="%s"`, strings.Trim(fmt.Sprint(s.Pen.Dash), "[]"))
	}
	fmt.Fprintf(out, "<path%s d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%g\"%s/>\n",
		id, d.String(), hex(s.Pen.Colour), s.Pen.Width, dash)
}

// text writes a line of words.
func text(out *bytes.Buffer, t plot.Text) {
	turn := ""
	if t.Turn != 0 {
		turn = fmt.Sprintf(` transform="rotate(%.2f %.2f %.2f)"`, t.Turn, t.At.X, t.At.Y)
	}
	anchor := map[plot.Anchor]string{plot.Start: "start", plot.Middle: "middle"}[t.Anchor]
	fmt.Fprintf(out, "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%.4g\" text-anchor=\"%s\" fill=\"%s\"%s>%s</text>\n",
		t.At.X, t.At.Y, t.Size, anchor, hex(t.Colour), turn, escaped(t.Said))
}

func hex(c plot.Colour) string { return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2]) }

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a bytes.Buffer never fails
	return b.String()
}
