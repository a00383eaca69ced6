package dxf

import (
	"bytes"
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
)

// file collects the text; at maps the piece (m) to the drawing (mm).
type file struct {
	out bytes.Buffer
	at  func(r2.Vec) r2.Vec
}

// pair writes a group code and its value, each on a line.
func (f *file) pair(code int, value string) {
	fmt.Fprintf(&f.out, "%3d\r\n%s\r\n", code, value)
}

// number writes a group code and a length (mm).
func (f *file) number(code int, v float64) {
	s := fmt.Sprintf("%.4f", v)
	if s == "-0.0000" {
		s = "0.0000"
	}
	f.pair(code, s)
}

// point writes the first place of an entity, given on the drawing.
func (f *file) point(v r2.Vec) {
	f.number(10, v.X)
	f.number(20, v.Y)
}

// end writes the second place of an entity, given on the drawing.
func (f *file) end(v r2.Vec) {
	f.number(11, v.X)
	f.number(21, v.Y)
}

// mark writes a POINT at a place of the piece.
func (f *file) mark(layer string, v r2.Vec) {
	f.pair(0, "POINT")
	f.pair(8, layer)
	f.point(f.at(v))
}

// polyline writes a line of the piece.
func (f *file) polyline(layer string, closed bool, line []r2.Vec) {
	flag := "0"
	if closed {
		flag = "1"
	}
	f.pair(0, "POLYLINE")
	f.pair(8, layer)
	f.pair(66, "1")
	f.pair(70, flag)
	f.point(r2.Vec{})
	for _, v := range line {
		f.pair(0, "VERTEX")
		f.pair(8, layer)
		f.point(f.at(v))
	}
	f.pair(0, "SEQEND")
	f.pair(8, layer)
}

// text writes a line of words, 5 mm high, at a place on the drawing.
func (f *file) text(layer string, at r2.Vec, said string) {
	f.pair(0, "TEXT")
	f.pair(8, layer)
	f.point(at)
	f.pair(40, "5.0")
	f.pair(1, plainText(said))
}
