package svg_test

import (
	"strings"
	"testing"

	"cowl/mesh/paper"
	"cowl/mesh/read/outline"
	"cowl/mesh/read/outline/outlinetest"
	"cowl/mesh/read/svg"
)

// Whatever the file holds, Read returns an error or pieces that can be cut.
func FuzzRead(f *testing.F) {
	outlinetest.Fuzz(f, []string{
		`<svg width="100mm" height="100mm" viewBox="0 0 100 100"><g transform="rotate(30 5 5) scale(1.5) translate(2)"><path d="M10 10h50v40C50 60 20 60 10 40z"/></g><path id="grain-line" d="M20 20L30 40"/></svg>`,
		`<svg width="4in" height="4in"><polygon id="seam-line" points="0,0 300,0 300,300"/><line x1="1" y1="1" x2="50" y2="60" id="dart"/></svg>`,
		`<svg viewBox="0 0 9 9"><path d="M0 0a30 30 0 01 60 0q5 5-10 60t-30-5s-9-9-20-55z"/></svg>`,
		`<svg width="9cm" height="9cm"><g id="a"><path d="M0 0h90v90H0z"/><path id="grain-line" d="M9 9v50"/></g><g id="b"><path d="M100 0h90v90h-90z"/></g></svg>`,
	}, func(data string, unit outline.Unit) ([]paper.Piece, error) {
		return svg.Read(strings.NewReader(data), unit)
	})
}
