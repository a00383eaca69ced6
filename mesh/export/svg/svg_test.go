package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/draft/drafttest"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"

	"gonum.org/v1/gonum/spatial/r2"
)

func piece(t *testing.T, change func(*draft.Cut)) draft.Cowl { return drafttest.Front(t, 10, change) }

// picture is what a reader of the SVG sees.
type picture struct {
	Width   string `xml:"width,attr"`
	Height  string `xml:"height,attr"`
	ViewBox string `xml:"viewBox,attr"`
	Paths   []struct {
		ID string `xml:"id,attr"`
		D  string `xml:"d,attr"`
	} `xml:"path"`
	Texts []struct {
		X    float64 `xml:"x,attr"`
		Y    float64 `xml:"y,attr"`
		Size float64 `xml:"font-size,attr"`
		Said string  `xml:",chardata"`
	} `xml:"text"`
}

func onPaper(t *testing.T, p draft.Cowl) []paper.Piece {
	t.Helper()
	q, err := paper.FromDraft(p)
	if err != nil {
		t.Fatal(err)
	}
	return []paper.Piece{q}
}

func bytesOf(t *testing.T, p draft.Cowl, o plot.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, onPaper(t, p), o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func drawn(t *testing.T, p draft.Cowl, o plot.Options) picture {
	t.Helper()
	var pic picture
	if err := xml.Unmarshal(bytesOf(t, p, o), &pic); err != nil {
		t.Fatalf("Write: not XML: %v", err)
	}
	return pic
}

// path returns the points of the path with the given id.
func (p picture) path(t *testing.T, id string) []r2.Vec {
	t.Helper()
	for _, q := range p.Paths {
		if q.ID != id {
			continue
		}
		var line []r2.Vec
		for _, f := range strings.FieldsFunc(q.D, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
			var v r2.Vec
			if _, err := fmt.Sscanf(f, "%g,%g", &v.X, &v.Y); err != nil {
				t.Fatalf("path %s: %q: %v", id, f, err)
			}
			line = append(line, v)
		}
		return line
	}
	t.Fatalf("no path %q", id)
	return nil
}

func (p picture) page(t *testing.T) (w, h float64) {
	t.Helper()
	var vw, vh float64
	if _, err := fmt.Sscanf(p.Width+" "+p.Height+" "+p.ViewBox, "%gmm %gmm 0 0 %g %g", &w, &h, &vw, &vh); err != nil {
		t.Fatalf("page %q × %q, view box %q: %v", p.Width, p.Height, p.ViewBox, err)
	}
	if w != vw || h != vh {
		t.Errorf("view box %g × %g, want the page %g × %g mm: the scale is not 1:1", vw, vh, w, h)
	}
	return w, h
}

func shoelace(p []r2.Vec) float64 {
	var a float64
	for i, v := range p {
		w := p[(i+1)%len(p)]
		a += v.X*w.Y - w.X*v.Y
	}
	return math.Abs(a / 2)
}

var cuts = []struct {
	name   string
	change func(*draft.Cut)
}{
	{"default", func(*draft.Cut) {}},
	{"flat", func(c *draft.Cut) { c.DartShare, c.Extension, c.Facing, c.Trim = 0, 0, 0, 0 }},
	{"shift", func(c *draft.Cut) { c.DartShare, c.Extension, c.How, c.Grain = 0, 0.06, draft.Shift, 0.3 }},
	{"slash", func(c *draft.Cut) { c.Extension, c.How, c.Trim = 0.15, draft.Slash, 0.025 }},
	{"deep", func(c *draft.Cut) { c.Extension, c.Facing = 0.28, 0.05 }},
	{"wide allowance", func(c *draft.Cut) { c.DartShare, c.Extension, c.Trim = 1, draft.Auto, 0.06 }},
}

// The picture is measured as a ruler would on the print: mm.
func TestWriteFullSize(t *testing.T) {
	for _, s := range cuts {
		p := piece(t, s.change)
		pic := drawn(t, p, plot.Options{})
		w, h := pic.page(t)
		r := p.Report()
		for _, q := range []struct {
			what           string
			got, want, tol float64
		}{
			{"seam line area, mm²", shoelace(pic.path(t, "seam-line")), (r.AreaFront + r.AreaFacing) * 1e6, 2},
			{"cut line area, mm²", shoelace(pic.path(t, "cut-line")), shoelace(p.CutLine) * 1e6, 2},
			{"10 cm square, mm²", shoelace(pic.path(t, "square-10cm")), 100 * 100, 1e-6},
			{"4 in square, mm²", shoelace(pic.path(t, "square-4in")), 101.6 * 101.6, 1e-6},
			{"centre front, mm", span(pic.path(t, "centre-front")), (r.CFLength + p.Facing) * 1000, 0.002},
		} {
			if math.Abs(q.got-q.want) > q.tol {
				t.Errorf("Write(%s): %s = %.4f, want %.4f ± %g", s.name, q.what, q.got, q.want, q.tol)
			}
		}
		if p.Facing > 0 {
			if got, want := span(pic.path(t, "cowl-edge")), 2*r.HalfEdge*1000; math.Abs(got-want) > 0.002 {
				t.Errorf("Write(%s): cowl edge = %.4f mm, want %.4f mm", s.name, got, want)
			}
		}
		for _, v := range pic.path(t, "cut-line") {
			if v.X < plot.Margin-0.01 || v.X > w-plot.Margin+0.01 || v.Y < plot.Margin-0.01 || v.Y > h-plot.Margin+0.01 {
				t.Errorf("Write(%s): cut line at (%.1f, %.1f), want within the margins of %.0f × %.0f", s.name, v.X, v.Y, w, h)
			}
		}
	}
}

func span(line []r2.Vec) float64 { return r2.Norm(r2.Sub(line[len(line)-1], line[0])) }

// Horizontal text stays on the page; a letter is taken to be 0.6 of its size wide.
func TestTextOnPage(t *testing.T) {
	count := 0
	for _, s := range cuts {
		pic := drawn(t, piece(t, s.change), plot.Options{Notes: []string{"Size 10 of the chart"}})
		w, h := pic.page(t)
		for _, l := range pic.Texts {
			count++
			if end := l.X + 0.55*l.Size*float64(len([]rune(l.Said))); end > w {
				t.Errorf("Write(%s): %q ends at %.0f mm, want on the page of %.0f mm", s.name, l.Said, end, w)
			}
			if l.Y > h-plot.Margin+1 || l.Y < plot.Margin || l.X < plot.Margin-1 {
				t.Errorf("Write(%s): %q at (%.0f, %.0f), want within the margins", s.name, l.Said, l.X, l.Y)
			}
		}
	}
	if count < 100 {
		t.Errorf("checked %d texts, want at least 100", count)
	}
}

func TestWriteSaysSo(t *testing.T) {
	p := piece(t, func(*draft.Cut) {})
	pic := drawn(t, p, plot.Options{Title: "Cowl <1> & more", Notes: []string{"size 10"}})
	var all []string
	for _, l := range pic.Texts {
		all = append(all, l.Said)
	}
	for _, want := range []string{plot.Caution, "Cowl <1> & more, 1:1", "grain: true bias, 45° to centre front",
		"size 10", "self-facing 10.0 cm", "dart left open", "armhole"} {
		if !strings.Contains(strings.Join(all, "\n"), want) {
			t.Errorf("Write: no text %q", want)
		}
	}
}

// The grain of a piece leans towards the wearer's left, X on the page, for a
// positive angle.
func TestGrainLeans(t *testing.T) {
	for _, deg := range []float64{-20, 0, 30, 90} {
		p := piece(t, func(c *draft.Cut) { c.Grain = deg * math.Pi / 180 })
		line := drawn(t, p, plot.Options{}).path(t, "grain-line")
		d := r2.Sub(line[1], line[0])
		if got := math.Atan2(d.X, -d.Y) * 180 / math.Pi; math.Abs(got-deg) > 0.01 {
			t.Errorf("grain line for %g° leans %.1f°", deg, got)
		}
	}
}

// Several pieces lie side by side or in rows, apart from each other, and no
// two lines share an id.
func TestWriteSeveral(t *testing.T) {
	front := onPaper(t, piece(t, func(*draft.Cut) {}))[0]
	back := front
	back.Name = "Back"
	var b bytes.Buffer
	if err := Write(&b, []paper.Piece{front, back}, plot.Options{}); err != nil {
		t.Fatal(err)
	}
	var pic picture
	if err := xml.Unmarshal(b.Bytes(), &pic); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, p := range pic.Paths {
		if p.ID != "" && seen[p.ID] && !strings.Contains(p.ID, "dart") {
			t.Errorf("id %q twice", p.ID)
		}
		seen[p.ID] = true
	}
	a, c := pic.path(t, "cowl-front-cut-line"), pic.path(t, "back-cut-line")
	loA, hiA := paper.Box(a)
	loC, hiC := paper.Box(c)
	if loC.X < hiA.X && loA.X < hiC.X && loC.Y < hiA.Y && loA.Y < hiC.Y {
		t.Errorf("the pieces lie on each other: %v–%v and %v–%v", loA, hiA, loC, hiC)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteErrors(t *testing.T) {
	if err := Write(io.Discard, []paper.Piece{{}}, plot.Options{}); err == nil {
		t.Error("Write(empty piece) = nil, want an error")
	}
	if err := Write(broken{}, onPaper(t, piece(t, func(*draft.Cut) {})), plot.Options{}); !errors.Is(err,
		io.ErrShortWrite) {
		t.Errorf("Write to a failing writer = %v, want %v", err, io.ErrShortWrite)
	}
}
