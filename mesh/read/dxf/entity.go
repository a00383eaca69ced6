package dxf

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// state is where the reader stands in the file.
type state struct {
	section string
	in      *drawing
	layer   string // of the polyline that is open
	line    []r2.Vec
	bulges  []float64
	closed  bool
	open    bool // between POLYLINE and SEQEND
}

// outside is the drawing of what stands in no block.
const outside = "\x00"

const mostBlocks = 200

// read goes through the entities of a file.
func (f *file) read(data []byte) error {
	s := &state{in: f.drawing(outside, "Piece")}
	return records(data, func(r record) error {
		if s.open && r.kind != "VERTEX" && r.kind != "SEQEND" {
			return fmt.Errorf("%.20q within a polyline, want VERTEX or SEQEND", r.kind)
		}
		switch r.kind {
		case "SECTION":
			s.section = r.text[2]
			if s.section == "HEADER" {
				f.header(r)
			}
		case "ENDSEC":
			s.section = ""
		case "BLOCK":
			return f.begin(s, r.text[2])
		case "ENDBLK":
			s.in = f.drawings[outside]
		case "INSERT":
			return fullSize(r)
		default:
			if s.section == "BLOCKS" || s.section == "ENTITIES" {
				return f.entity(s, r)
			}
		}
		return nil
	})
}

// drawing returns the drawing under a key, made if need be.
func (f *file) drawing(key, name string) *drawing {
	d, ok := f.drawings[key]
	if !ok {
		d = &drawing{name: name, lines: map[string][]outline.Chain{}, points: map[string][]r2.Vec{}}
		f.drawings[key] = d
		f.order = append(f.order, key)
	}
	return d
}

// begin begins a block; those of the drawing as a whole begin with an asterisk
// or a dollar sign.
func (f *file) begin(s *state, name string) error {
	if name == "" || strings.HasPrefix(name, "*") || strings.HasPrefix(name, "$") {
		s.in = f.drawings[outside]
		return nil
	}
	if len(f.order) > mostBlocks {
		return fmt.Errorf("more than %d blocks, want those of one style", mostBlocks)
	}
	if len(name) > 100 {
		return fmt.Errorf("block name of %d letters, want at most 100", len(name))
	}
	s.in = f.drawing(name, name)
	return nil
}

// header takes the unit of the drawing, if the header states one.
func (f *file) header(r record) {
	f.unit = map[float64]outline.Unit{1: outline.Inch, 4: outline.Millimetre, 5: outline.Centimetre,
		6: outline.Metre}[r.number[insUnits]]
}

// fullSize refuses a piece that is shown at another scale.
func fullSize(r record) error {
	for _, code := range []int{41, 42} {
		if v, ok := r.number[code]; ok && math.Abs(math.Abs(v)-1) > 1e-6 {
			return fmt.Errorf("block %.30q is scaled by %g, want 1: export at full size", r.text[2], v)
		}
	}
	return nil
}

// entity takes what is drawn.
func (f *file) entity(s *state, r record) error {
	layer := r.text[8]
	if len(layer) > 100 {
		return errors.New("layer name of more than 100 letters")
	}
	at := r2.Vec{X: r.number[10], Y: r.number[20]}
	switch r.kind {
	case "POINT":
		s.in.points[layer] = append(s.in.points[layer], at)
		return f.counted(1)
	case "LINE":
		s.in.add(layer, outline.Chain{Points: []r2.Vec{at, {X: r.number[11], Y: r.number[21]}}})
		return f.counted(2)
	case "POLYLINE":
		s.open, s.layer, s.closed = true, layer, int(r.number[70])&1 == 1
		s.line, s.bulges = nil, nil
	case "VERTEX":
		if !s.open {
			return errors.New("VERTEX outside a polyline")
		}
		s.line, s.bulges = append(s.line, at), append(s.bulges, r.number[42])
		return f.counted(1)
	case "SEQEND":
		if s.open {
			s.open = false
			return f.curve(s.in, s.layer, s.line, s.bulges, s.closed)
		}
	case "LWPOLYLINE":
		line, bulges := vertices(r.many)
		if err := f.counted(len(line)); err != nil {
			return err
		}
		return f.curve(s.in, layer, line, bulges, int(r.number[70])&1 == 1)
	case "TEXT", "MTEXT":
		f.word(r.text[1])
	case "SPLINE", "ARC", "ELLIPSE", "CIRCLE":
		if layer == cutLayer || layer == seamLayer {
			return fmt.Errorf("%s on layer %s, want polylines: have curves exported as points", r.kind, layer)
		}
	}
	return nil
}

func (d *drawing) add(layer string, c outline.Chain) { d.lines[layer] = append(d.lines[layer], c) }

// counted keeps the number of points within bounds.
func (f *file) counted(n int) error {
	if f.count += n; f.count > outline.MostPoints {
		return fmt.Errorf("more than %d points, want one pattern of one size", outline.MostPoints)
	}
	return nil
}

// word takes the unit from the system text of a style.
func (f *file) word(said string) {
	name, value, _ := strings.Cut(said, ":")
	if !strings.EqualFold(strings.TrimSpace(name), "units") {
		return
	}
	switch strings.ToUpper(strings.TrimSpace(value)) {
	case "METRIC":
		f.unit = outline.Millimetre
	case "ENGLISH":
		f.unit = outline.Inch
	}
}

// vertices gathers the vertices of a light polyline.
func vertices(many []pair) (line []r2.Vec, bulges []float64) {
	for _, p := range many {
		switch n := len(line); {
		case p.code == 10:
			line, bulges = append(line, r2.Vec{X: p.value}), append(bulges, 0)
		case n == 0:
		case p.code == 20:
			line[n-1].Y = p.value
		case p.code == 42:
			bulges[n-1] = p.value
		}
	}
	return line, bulges
}
