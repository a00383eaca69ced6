package dxf

import (
	"fmt"
	"strings"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

const lineHeight = 8.0 // mm

// styleText writes what belongs to the whole style.
func (f *file) styleText(o Options) {
	lines := []string{"Style Name: " + o.Style, "Author: cowl", "Sample Size: " + o.Size, "Units: METRIC"}
	for i, s := range lines {
		f.text(layerCut, r2.Vec{Y: -float64(i+1) * lineHeight}, s)
	}
}

// pieceText writes what belongs to one piece: system text, then annotation.
func (f *file) pieceText(name string, p paper.Piece, o Options) {
	at := f.at(p.Label)
	say := func(layer, s string) {
		f.text(layer, at, s)
		at.Y -= lineHeight
	}
	say(layerCut, "Piece Name: "+name)
	say(layerCut, "Size: "+o.Size)
	say(layerCut, fmt.Sprintf("Quantity: %d,0", p.Quantity))
	for _, s := range p.Words {
		say(layerNote, s)
	}
	for _, t := range p.Texts {
		f.text(layerNote, f.at(t.At), t.Said)
	}
	for _, l := range p.Lines {
		f.text(layerNote, f.at(l.Points[0]), l.Name)
	}
}

// plainText keeps words to printable ASCII: a DXF R12 file has no other
// letters.
func plainText(s string) string {
	s = strings.NewReplacer("°", "%%d", "–", "-", "×", "x", "’", "'", "²", "2").Replace(s)
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, s)
}

const longestName = 20

// blockNames returns a name of A–Z, 0–9 and _ for each piece, no two the same.
func blockNames(pieces []paper.Piece) []string {
	names := make([]string, len(pieces))
	taken := map[string]bool{}
	for i, p := range pieces {
		base := blockName(p.Name)
		name := base
		for n := 2; taken[name]; n++ {
			tail := fmt.Sprintf("_%d", n)
			name = base[:min(len(base), longestName-len(tail))] + tail
		}
		taken[name], names[i] = true, name
	}
	return names
}

func blockName(s string) string {
	parts := strings.FieldsFunc(strings.ToUpper(s), func(r rune) bool {
		return !(r >= 'A' && r <= 'Z' || r >= '0' && r <= '9')
	})
	name := strings.Join(parts, "_")
	if name == "" {
		return "PIECE"
	}
	return strings.TrimRight(name[:min(len(name), longestName)], "_")
}
