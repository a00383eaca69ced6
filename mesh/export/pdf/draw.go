package pdf

import (
	"cowl/mesh/paper/plot"

	"codeberg.org/go-pdf/fpdf"
	"gonum.org/v1/gonum/spatial/r2"
)

// draw draws d with its corner at origin (mm), scaled. Below full size lines
// keep a width that prints.
func draw(f *fpdf.Fpdf, d plot.Drawing, origin r2.Vec, scale float64) {
	at := func(v r2.Vec) r2.Vec { return r2.Add(origin, r2.Scale(scale, v)) }
	for _, s := range d.Strokes {
		stroke(f, s, at, scale)
	}
	if scale < 1 {
		return // words cannot be read there
	}
	for _, t := range d.Texts {
		t.At = at(t.At)
		text(f, plain, t)
	}
}

// stroke draws a line whose points at maps to the page.
func stroke(f *fpdf.Fpdf, s plot.Stroke, at func(r2.Vec) r2.Vec, scale float64) {
	f.SetDrawColor(int(s.Pen.Colour[0]), int(s.Pen.Colour[1]), int(s.Pen.Colour[2]))
	f.SetLineWidth(s.Pen.Width * max(scale, 0.5))
	dash := make([]float64, len(s.Pen.Dash))
	for i, l := range s.Pen.Dash {
		dash[i] = l * max(scale, 0.25)
	}
	f.SetDashPattern(dash, 0)
	for i, v := range s.Points {
		p := at(v)
		if i == 0 {
			f.MoveTo(p.X, p.Y)
		} else {
			f.LineTo(p.X, p.Y)
		}
	}
	if s.Closed {
		f.ClosePath()
	}
	f.DrawPath("D")
	f.SetDashPattern(nil, 0)
}

// text writes a line of words in a font.
func text(f *fpdf.Fpdf, font string, t plot.Text) {
	f.SetFont(font, "", 1)
	f.SetFontUnitSize(t.Size)
	f.SetTextColor(int(t.Colour[0]), int(t.Colour[1]), int(t.Colour[2]))
	x := t.At.X
	if t.Anchor == plot.Middle {
		x -= f.GetStringWidth(t.Said) / 2
	}
	if t.Turn == 0 {
		f.Text(x, t.At.Y, t.Said)
		return
	}
	f.TransformBegin()
	f.TransformRotate(-t.Turn, t.At.X, t.At.Y)
	f.Text(x, t.At.Y, t.Said)
	f.TransformEnd()
}
