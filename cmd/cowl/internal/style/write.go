package style

import (
	"bytes"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"cowl/materials"
	"cowl/mesh/draft"
)

// YAML returns s as a style file that Parse reads back to the same numbers.
// It stands on its own: a fabric that is not of the library is written out.
func (s *Style) YAML() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "name: %s\n", strconv.Quote(s.Name))
	s.writeSection(&b, "body")
	s.writeBlock(&b)
	s.writeSection(&b, "cut")
	fmt.Fprintf(&b, "  how: %v\n  pleats_towards: %v\n", s.Cut.How, s.Cut.PleatsTo)
	if s.Stand != draft.DefaultStand() {
		s.writeSection(&b, "stand")
		for _, key := range stayKeys {
			fmt.Fprintf(&b, "  %s: %t\n", key, *s.stay(key))
		}
	}
	s.writeTrims(&b)
	s.writeFabric(&b)
	s.writeSection(&b, "hang")
	fmt.Fprintf(&b, "  free: %t\n", s.Hang.Free)
	return b.Bytes()
}

func (s *Style) writeSection(b *bytes.Buffer, section string) {
	fmt.Fprintf(b, "%s:\n", section)
	for _, f := range fields {
		if f.section != section || f.measure != nil && !s.taken[f.name] {
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
		default:
			fmt.Fprintf(b, "  %s: %s\n", f.key(), strconv.FormatFloat(v, 'f', -1, 64))
		}
	}
}

func (s *Style) writeBlock(b *bytes.Buffer) {
	if s.Points == nil {
		return
	}
	b.WriteString("block:\n")
	for _, name := range draft.PointNames() {
		for _, p := range s.Points[name] {
			fmt.Fprintf(b, "  - {name: %s, x_cm: %s, y_cm: %s}\n", name, figures(p.X*100), figures(p.Y*100))
		}
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
