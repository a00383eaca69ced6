package style

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"cowl/materials"
	"cowl/mesh/body"
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// YAML returns s as a style file that Parse reads back to the same numbers.
// It stands on its own: a fabric that is not of the library is written out.
func (s *Style) YAML() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "name: %s\n", strconv.Quote(s.Name))
	s.writeGroup(&b, "body")
	s.writeBlock(&b)
	s.writePiece(&b)
	s.writeGroup(&b, "cut")
	if s.Stand != draft.DefaultStand() {
		s.writeGroup(&b, "stand")
	}
	s.writeTrims(&b)
	s.writeFabric(&b)
	s.writeGroup(&b, "hang")
	return b.Bytes()
}

func (s *Style) writeGroup(b *bytes.Buffer, section string) {
	fmt.Fprintf(b, "%s:\n", section)
	if section == "body" {
		s.writeChart(b)
	}
	for _, f := range fields {
		if f.group != section || f.measure != nil && !s.taken[f.Name] || s.Lines != nil && f.isDrafted() ||
			f.Name == "height" && s.Height == 0 || f.Name == "closure" && s.Closure == draft.NoClosure || f.Name == "side" &&
			s.Cut.Worn == draft.AtFront ||
			f.Name == "strap" && s.Strap == autoStrap {
			continue
		}
		v := f.get(s)
		switch {
		case f.auto && v < 0:
			fmt.Fprintf(b, "  %s: auto\n", f.key())
		case f.kind == length:
			fmt.Fprintf(b, "  %s: %s\n", f.key(), figures(v*metres[f.unit()]))
		case f.kind == angle:
			fmt.Fprintf(b, "  %s: %s\n", f.key(), figures(toDegrees(v)))
		case f.kind == mass:
			fmt.Fprintf(b, "  %s: %s\n", f.key(), figures(v*1000))
		case f.kind == choice:
			fmt.Fprintf(b, "  %s: %s\n", f.key(), f.word(v))
		case f.kind == truth:
			fmt.Fprintf(b, "  %s: %t\n", f.key(), v != 0)
		default:
			fmt.Fprintf(b, "  %s: %s\n", f.key(), strconv.FormatFloat(v, 'f', -1, 64))
		}
	}
}

// writeChart writes a chart of the user's own as part of the style, which then stands on
// its own.
func (s *Style) writeChart(b *bytes.Buffer) {
	c := s.Chart
	if c == nil {
		return
	}
	b.WriteString("  chart:\n")
	if c.Source != "" {
		fmt.Fprintf(b, "    source: %s\n", strconv.Quote(c.Source))
	}
	if c.Height != 0 {
		fmt.Fprintf(b, "    height_cm: %s\n", figures(c.Height*100))
	}
	line := func(key string, of func(i int) string) {
		var list []string
		for i := range c.Sizes {
			list = append(list, of(i))
		}
		fmt.Fprintf(b, "    %s: [%s]\n", key, strings.Join(list, ", "))
	}
	line("sizes", func(i int) string { return strconv.Itoa(c.Sizes[i]) })
	for _, m := range body.Measures() {
		f := fieldOf(m)
		has := func(b body.Body) bool { return *m.In(&b) != 0 }
		if m.Optional() && !slices.ContainsFunc(c.Bodies, has) {
			continue
		}
		line(f.key(), func(i int) string {
			if f.kind == angle {
				return figures(toDegrees(*m.In(&c.Bodies[i])))
			}
			return figures(*m.In(&c.Bodies[i]) * 100)
		})
	}
}

func (s *Style) writeBlock(b *bytes.Buffer) {
	if s.Points == nil {
		return
	}
	b.WriteString("block:\n")
	for _, name := range draft.PointNames() {
		writePoints(b, name, s.Points[name])
	}
}

func (s *Style) writePiece(b *bytes.Buffer) {
	if s.Lines == nil {
		return
	}
	b.WriteString("piece:\n")
	for _, name := range lineNames {
		if line := lineOf(s.Lines, name); line != nil {
			writePoints(b, name, *line)
		} else if s.Lines.Apex != (r2.Vec{}) {
			writePoints(b, name, []r2.Vec{s.Lines.Apex})
		}
	}
}

func writePoints(b *bytes.Buffer, name string, line []r2.Vec) {
	for _, p := range line {
		fmt.Fprintf(b, "  - {name: %s, x_cm: %s, y_cm: %s}\n", name, figures(p.X*100), figures(p.Y*100))
	}
}

func (s *Style) writeTrims(b *bytes.Buffer) {
	if s.Trims == nil {
		return
	}
	b.WriteString("trims:\n")
	for _, line := range s.Trims {
		var points []string
		for _, p := range line {
			points = append(points, fmt.Sprintf("[%s, %s]", figures(p.X*1000), figures(p.Y*1000)))
		}
		fmt.Fprintf(b, "  - line_mm: [%s]\n", strings.Join(points, ", "))
	}
}

func (s *Style) writeFabric(b *bytes.Buffer) {
	if f, err := materials.Find(s.Fabric.Name); err == nil && reflect.DeepEqual(f, s.Fabric) {
		fmt.Fprintf(b, "fabric: %s\n", f.Name)
		return
	}
	b.WriteString("fabric:\n")
	for line := range strings.Lines(string(s.Fabric.YAML())) {
		b.WriteString("  " + line)
	}
}

// unit is the unit f is written in by default.
func (f Field) unit() string {
	switch {
	case f.kind == angle:
		return "deg"
	case f.kind == mass:
		return "g"
	case f.kind == length && f.Name == "spacing":
		return "mm"
	case f.kind == length:
		return "cm"
	}
	return ""
}

// key is the key of f as cowl writes it.
func (f Field) key() string {
	if u := f.unit(); u != "" {
		return f.Name + "_" + u
	}
	return f.Name
}
