package pdf

import (
	"strings"

	"codeberg.org/go-pdf/fpdf"
)

// wrap breaks words into lines no wider than wide (mm) at the given size; a
// word that is wider stands alone.
func wrap(f *fpdf.Fpdf, font string, size, wide float64, said string) []string {
	f.SetFont(font, "", 1)
	f.SetFontUnitSize(size)
	var lines []string
	line := ""
	for _, word := range strings.Fields(said) {
		next := strings.TrimSpace(line + " " + word)
		if line != "" && f.GetStringWidth(next) > wide {
			lines = append(lines, line)
			next = word
		}
		line = next
	}
	return append(lines, line)
}
