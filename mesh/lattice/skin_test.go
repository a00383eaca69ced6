package lattice

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// rim returns the total length of the edges that belong to one triangle only,
// and how many edges are used twice in the same sense, which a sheet never has.
func rim(s Skin) (length float64, twice int) {
	use := map[[2]int32]int{}
	for _, t := range s.Tris {
		for k := range 3 {
			use[[2]int32{t[k], t[(k+1)%3]}]++
		}
	}
	for e, n := range use {
		if n > 1 {
			twice++
		}
		if use[[2]int32{e[1], e[0]}] == 0 {
			length += r2.Norm(r2.Sub(s.Flat[e[1]], s.Flat[e[0]]))
		}
	}
	return length, twice
}

// wantSkin wants whole, upright triangles and vertices that keep their flat
// places; with no hole the rim is as long as the outline to slack (m).
func wantSkin(t interface {
	Helper()
	Errorf(string, ...any)
}, outline []r2.Vec, l *Lattice, slack float64) {
	t.Helper()
	s, pos := l.Skin(), flatten(l)
	for i, p := range s.Points {
		if d := r3.Norm(r3.Sub(p.At(pos), image(s.Flat[i]))); d > 1e-12 {
			t.Errorf("skin vertex %d lands %g m off its flat place", i, d)
		}
	}
	for i, q := range s.Tris {
		if c := r2.Cross(r2.Sub(s.Flat[q[1]], s.Flat[q[0]]), r2.Sub(s.Flat[q[2]], s.Flat[q[0]])); !(c > 0) {
			t.Errorf("skin triangle %d has twice the area %g m², want > 0", i, c)
		}
	}
	_, _, want := figures(outline)
	got, twice := rim(s)
	if math.Abs(got-want) > slack || twice > 0 {
		t.Errorf("rim = %.9g m with %d edges used twice, want the outline's %.9g and 0 (off by %.2g)", got, twice, want,
			got/want-1)
	}
}

// chip is how far the rim may stray where a corner of cloth below a millionth of
// a cell, at most 1.4e-3 spacings long, was dropped; a lost triangle or an
// unmatched corner strays by a tenth of a spacing or more.
const chip = 0.01

func TestSkin(t *testing.T) {
	each(t, func(t *testing.T, k int, l *Lattice) {
		slack := chip * l.Spacing
		if outlines[k].convex {
			_, _, rim := figures(outlines[k].points)
			slack = 1e-6 * rim
		}
		wantSkin(t, outlines[k].points, l, slack)
	})
}

func TestSkinOfAny(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		p := star(t)
		l, err := Cut(p, turned(t))
		if err != nil {
			t.Skip(err)
		}
		wantSkin(t, p, l, chip*l.Spacing)
	})
	if n < 200 {
		t.Errorf("%d cases, want 200", n)
	}
}

// Facing marks the triangles above the fold line, which here lies on a row of
// crossings.
func TestSheetFacing(t *testing.T) {
	l, err := Cut(outlines[0].points, Options{Spacing: 0.01, Origin: r2.Vec{Y: 0.03}})
	if err != nil {
		t.Fatal(err)
	}
	sheet := l.Skin().Sheet(flatten(l), 0.03)
	var area float64
	for i, q := range sheet.Tris {
		if sheet.Facing[i] {
			area += r2.Cross(r2.Sub(sheet.Flat[q[1]], sheet.Flat[q[0]]), r2.Sub(sheet.Flat[q[2]], sheet.Flat[q[0]])) / 2
		}
	}
	if want := 0.3 * 0.07; math.Abs(area-want) > 1e-9 {
		t.Errorf("Sheet(0.03) marks %g m² as facing, want %g", area, want)
	}
	for i, p := range sheet.Pos {
		if d := r3.Norm(r3.Sub(p, image(sheet.Flat[i]))); d > 1e-12 {
			t.Errorf("Sheet().Pos[%d] lands %g m off", i, d)
		}
	}
}
