package read_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/draft/drafttest"
	"cowl/mesh/export/csv"
	"cowl/mesh/export/dxf"
	"cowl/mesh/export/svg"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/polyline"
	"cowl/mesh/read"

	"gonum.org/v1/gonum/spatial/r2"
)

// onPaper is a drafted front and how it goes on paper.
func onPaper(t testing.TB, size int, change func(*draft.Cut)) (draft.Cowl, paper.Piece) {
	t.Helper()
	d := drafttest.Front(t, size, change)
	p, err := paper.FromDraft(d)
	if err != nil {
		t.Fatal(err)
	}
	return d, p
}

// written returns a piece as the text of a file.
func written(t testing.TB, name string, p ...paper.Piece) string {
	t.Helper()
	var b bytes.Buffer
	var err error
	switch name {
	case "p.dxf":
		err = dxf.Write(&b, p, dxf.Options{})
	case "p.svg":
		err = svg.Write(&b, p, plot.Options{})
	case "p.csv":
		err = csv.Write(&b, p)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// farthestApart returns how far the points of one closed line lie from another
// at most, either way round.
func farthestApart(a, b []r2.Vec) float64 {
	most := 0.0
	for _, lines := range [][2][]r2.Vec{{a, b}, {b, a}} {
		for _, v := range lines[0] {
			least := math.Inf(1)
			for i, p := range lines[1] {
				q := lines[1][(i+1)%len(lines[1])]
				d := r2.Sub(q, p)
				t := min(max(r2.Dot(r2.Sub(v, p), d)/max(r2.Norm2(d), 1e-18), 0), 1)
				least = min(least, r2.Norm(r2.Sub(v, r2.Add(p, r2.Scale(t, d)))))
			}
			most = max(most, least)
		}
	}
	return most
}

// A front that went on paper comes back as the same piece, to a tenth of a
// millimetre, whatever it was cut to and however it lies in the file.
func TestFrontComesBack(t *testing.T) {
	turned := func(a float64) func(r2.Vec) r2.Vec {
		return func(v r2.Vec) r2.Vec { return r2.Add(r2.Rotate(v, a, r2.Vec{}), r2.Vec{X: 0.3, Y: -0.2}) }
	}
	count := 0
	for _, q := range []struct {
		what   string
		size   int
		change func(*draft.Cut)
		lie    func(r2.Vec) r2.Vec
	}{
		{"as drafted", 10, func(c *draft.Cut) {}, turned(0)},
		{"askew", 14, func(c *draft.Cut) { c.Grain = -0.4 }, turned(0.5)},
		{"head down", 10, func(c *draft.Cut) { c.Grain = 0.2 }, turned(3)},
		{"no facing", 10, func(c *draft.Cut) { c.Facing, c.Grain = 0, 0 }, turned(0)},
		{"dart open", 10, func(c *draft.Cut) { c.DartShare, c.Extension = 0, 0.06 }, turned(1.5)},
		{"half the dart", 16, func(c *draft.Cut) { c.DartShare, c.Extension = 0.5, draft.Auto }, turned(0)},
		{"shifted", 6, func(c *draft.Cut) { c.How, c.Extension = draft.Shift, 0.2 }, turned(0)},
		{"slashed", 10, func(c *draft.Cut) { c.How, c.Extension, c.Slashes = draft.Slash, 0.14, 3 }, turned(-0.5)},
		{"pivoted far, deep", 12, func(c *draft.Cut) { c.Extension, c.Facing, c.Trim = 0.22, 0.14, 0.01 }, turned(0)},
		{"back cowl", 12, func(c *draft.Cut) { c.Worn, c.Extension, c.CowlPoint = draft.AtBack, 0.10, 0.05 }, turned(0)},
		{"back cowl, head down", 10, func(c *draft.Cut) { c.Worn, c.Grain = draft.AtBack, -0.3 }, turned(3)},
		{"no allowance", 18, func(c *draft.Cut) { c.Trim, c.CowlPoint = 0, 0.01 }, turned(0)},
	} {
		want, p := onPaper(t, q.size, q.change)
		for _, name := range []string{"p.dxf", "p.svg", "p.csv"} {
			c, notes, err := read.Front(name, strings.NewReader(written(t, name, lain(p, q.lie))), "", "")
			if err != nil {
				t.Errorf("Front(%s, %s) = %v", q.what, name, err)
				continue
			}
			got, err := draft.FromLines(want.Block, c.Lines, draft.Cut{Worn: c.Worn, Facing: c.Facing, Grain: c.Grain,
				Trim: max(c.Trim, 0)})
			if err != nil {
				t.Errorf("FromLines(%s, %s) = %v", q.what, name, err)
				continue
			}
			count++
			if got.Worn != want.Worn {
				t.Errorf("Front(%s, %s): worn at the %v, want the %v", q.what, name, got.Worn, want.Worn)
			}
			for _, f := range []struct {
				what string
				off  float64
			}{
				{"outline", farthestApart(got.Outline, want.Outline)}, {"cut line", farthestApart(got.CutLine, want.CutLine)},
				{"fold", got.FoldY - want.FoldY}, {"half edge", got.HalfEdge - want.HalfEdge},
				{"extension", got.Extension - want.Extension},
				{"cowl point", got.CowlPoint - want.CowlPoint}, {"facing", got.Facing - want.Facing},
				{"grain × 1 m", got.Grain - want.Grain},
				{"dart", float64(len(got.DartLeft)-len(want.DartLeft)) + length(got.DartLeft) - length(want.DartLeft)},
			} {
				if math.Abs(f.off) > 1e-4 {
					t.Errorf("Front(%s, %s): %s is %.3f mm off, want at most 0.1 mm", q.what, name, f.what, f.off*1000)
				}
			}
			if name != "p.svg" && (len(notes) > 0 || r2.Norm(r2.Sub(got.Apex, want.Apex)) > 1e-4) {
				t.Errorf("Front(%s, %s): apex %v, want %v; notes %q", q.what, name, got.Apex, want.Apex, notes)
			}
		}
	}
	if count != 36 {
		t.Errorf("read %d fronts, want 36", count)
	}
}

// lain moves all that a file shows of a piece.
func lain(p paper.Piece, lie func(r2.Vec) r2.Vec) paper.Piece {
	p.Outline, p.CutLine = mapped(p.Outline, lie), mapped(p.CutLine, lie)
	p.GrainLine = [2]r2.Vec{lie(p.GrainLine[0]), lie(p.GrainLine[1])}
	lines := p.Lines
	p.Lines = nil
	for _, l := range lines {
		l.Points = mapped(l.Points, lie)
		p.Lines = append(p.Lines, l)
	}
	holes := p.Holes
	p.Holes = nil
	for _, h := range holes {
		p.Holes = append(p.Holes, paper.Hole{Name: h.Name, At: lie(h.At)})
	}
	p.Notches, p.Texts = nil, nil
	return p
}

func length(line []r2.Vec) float64 {
	l := 0.0
	for i := 1; i < len(line); i++ {
		l += r2.Norm(r2.Sub(line[i], line[i-1]))
	}
	return l
}

// A file that is no whole front says what it lacks.
func TestFrontRefused(t *testing.T) {
	_, p := onPaper(t, 10, func(*draft.Cut) {})
	without := func(name string) paper.Piece {
		q := p
		q.Lines = nil
		for _, l := range p.Lines {
			if l.Name != name {
				q.Lines = append(q.Lines, l)
			}
		}
		return q
	}
	half := p
	half.Outline, half.Edges = nil, nil
	for _, v := range p.Outline {
		if v.X >= 0 {
			half.Outline = append(half.Outline, v)
		}
	}
	half.CutLine = half.Outline
	lopsided := p
	lopsided.Outline = mapped(p.Outline, func(v r2.Vec) r2.Vec { return r2.Vec{X: max(v.X, 0.85*v.X), Y: v.Y} })
	lopsided.CutLine = lopsided.Outline
	second := p
	second.Name = "Second front"
	other := p
	other.Name = "Back"
	noGrain := written(t, "p.csv", p)
	var kept []string
	for line := range strings.Lines(noGrain) {
		if !strings.Contains(line, ",grain,") {
			kept = append(kept, line)
		}
	}
	for _, q := range []struct{ what, name, data, unit, want string }{
		{"no fold", "p.dxf", written(t, "p.dxf", without("cowl edge: fold facing in")), "", "no fold line"},
		{"no CF", "p.csv", written(t, "p.csv", without("centre front")), "", "no centre front"},
		{"a half", "p.svg", written(t, "p.svg", half), "", "both halves must be there"},
		{"lopsided", "p.csv", written(t, "p.csv", lopsided), "", "alike within 1 cm"},
		{"no grain", "p.csv", strings.Join(kept, ""), "", "no grain line"},
		{"wrong unit", "p.csv", written(t, "p.csv", p), "in", "the file says mm"},
		{"two fronts", "p.csv", written(t, "p.csv", p, second), "",
			`chosen by --piece-name, or name: in a style file; there are "Cowl front", "Second front"`},
		{"another ending", "p.pdf", "", "", "file ending"},
		{"no file", "p.dxf", "", "mm", "empty"},
	} {
		_, _, err := read.Front(q.name, strings.NewReader(q.data), q.unit, "")
		if err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("Front(%s) = %v, want %q", q.what, err, q.want)
		}
	}
	if _, _, err := read.Front("p.csv", strings.NewReader(written(t, "p.csv", other, p)), "", ""); err != nil {
		t.Errorf("Front(back and front) = %v, want the front", err)
	}
	c, _, err := read.Front("p.csv", strings.NewReader(written(t, "p.csv", p)), "", "")
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct {
		size   int
		change func(*draft.Lines, *draft.Cut)
		want   string
	}{
		{6, func(l *draft.Lines, _ *draft.Cut) {
			l.Shoulder = []r2.Vec{r2.Add(l.Shoulder[0], r2.Vec{X: -0.08, Y: 0.03}), l.Shoulder[1]}
		}, "shoulder seam"},
		{10, func(_ *draft.Lines, c *draft.Cut) { c.Facing = 0.35 }, "facing 35.0"},
		{10, func(_ *draft.Lines, c *draft.Cut) { c.Grain = 2 }, "grain"},
		{10, func(l *draft.Lines, _ *draft.Cut) { l.Dart = l.Side }, "dart has 2 points"},
		{10, func(l *draft.Lines, _ *draft.Cut) { l.Apex.X = math.NaN() }, "both ways"},
		{10, func(l *draft.Lines, _ *draft.Cut) { l.Waist = nil }, "waist has 0 points"},
	} {
		lines, cut := c.Lines, draft.Cut{Facing: c.Facing, Grain: c.Grain}
		q.change(&lines, &cut)
		if _, err := draft.FromLines(block(t, q.size), lines, cut); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("FromLines = %v, want %q", err, q.want)
		}
	}
}

// Whatever the file holds, Front returns an error or a front that can be cut.
func FuzzFront(f *testing.F) {
	_, p := onPaper(f, 10, func(c *draft.Cut) { c.DartShare, c.Extension = 0.5, draft.Auto })
	for i, name := range []string{"p.svg", "p.dxf", "p.csv"} {
		f.Add(written(f, name, p), uint8(i))
	}
	f.Fuzz(func(t *testing.T, data string, kind uint8) {
		name := []string{"p.svg", "p.dxf", "p.csv"}[kind%3]
		c, _, err := read.Front(name, strings.NewReader(data), []string{"", "mm"}[kind/3%2], "")
		if err != nil {
			return
		}
		drawn, err := draft.Cowl{Facing: c.Facing}.Redrawn(c.Lines)
		if err != nil || !(polyline.Area(drawn.Outline) > 0) {
			t.Errorf("Redrawn: area %g m², %v", polyline.Area(drawn.Outline), err)
		}
	})
}
