package svg_test

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/polyline"
	"cowl/mesh/read/outline"
	"cowl/mesh/read/svg"
)

// Areas of known figures in every command of a path, unit and transform: mm².
func TestReadAreas(t *testing.T) {
	const circle = math.Pi * 100 * 100
	for _, q := range []struct {
		what, picture, path string
		said                outline.Unit
		want, tol           float64
	}{
		{"rectangle", `width="500mm" height="500mm" viewBox="0 0 500 500"`, `<path d="M10,10h300v200H10z"/>`, 0, 300 * 200,
			1e-6},
		{"in inches", `width="10in" height="10in" viewBox="0 0 10 10"`, `<path d="M1 1h8v4H1z"/>`, 0, 8 * 4 * 25.4 * 25.4,
			1e-6},
		{"coordinates in pixels", `width="10in" height="10in"`, `<path d="M0 0h960v96H0z"/>`, 0, 10 * 25.4 * 25.4, 1e-6},
		{"unit said", ``, `<path d="M0 0h30v20H0z"/>`, outline.Centimetre, 300 * 200, 1e-6},
		{"two half circles", `width="500mm" height="500mm" viewBox="0 0 500 500"`,
			`<path d="M100 200a100 100 0 01200 0A100,100 0 0 1 100 200Z"/>`, 0, circle, 60},
		{"an ellipse turned", `width="500mm" height="500mm" viewBox="0 0 500 500"`,
			`<path d="M100 200a100 50 30 1 0 173.205 100a100 50 30 1 0-173.205-100"/>`, 0, circle / 2, 40},
		// Its controls stand a third along, 100 up: x = 300t, y = 300t(1 − t).
		{"cubic", `width="500mm" height="500mm" viewBox="0 0 500 500"`, `<path d="M0 0C100 100 200 100 300 0Z"/>`, 0,
			300 * 300 / 6, 30},
		// A parabola cuts two thirds off its triangle's box.
		{"quadratic", `width="500mm" height="500mm" viewBox="0 0 500 500"`, `<path d="M0 0Q150 200 300 0Z"/>`, 0,
			300 * 100 * 2 / 3, 30},
		{"smooth ones", `width="500mm" height="500mm" viewBox="0 0 500 500"`, `<path d="M0 200q75 100 150 0t150 0V0H0Z"/>`,
			0, 300 * 200, 30},
		{"moved, turned and scaled", `width="500mm" height="500mm" viewBox="0 0 500 500"`,
			`<g transform="translate(200,200) rotate(30)"><polygon transform="scale(2 1.5)" points="0,0 100,0 100,100 0,100"/></g>`, 0, 200 * 150, 1e-6},
		{"hidden ones left out", `width="500mm" height="500mm" viewBox="0 0 500 500"`,
			`<defs><path d="M0 0h90v90z"/></defs><g display="none"><path d="M0 0h80v80z"/></g><path d="M0 0h300v200H0z"/>`, 0,
			300 * 200, 1e-6},
	} {
		data := `<svg xmlns="http://www.w3.org/2000/svg" ` + q.picture + `>` + q.path + `</svg>`
		pieces, err := svg.Read(strings.NewReader(data), q.said)
		if err != nil {
			t.Errorf("Read(%s) = %v", q.what, err)
			continue
		}
		if a := polyline.Area(pieces[0].Outline) * 1e6; math.Abs(a-q.want) > q.tol {
			t.Errorf("Read(%s): %.2f mm², want %.2f ± %g mm²", q.what, a, q.want, q.tol)
		}
	}
}
