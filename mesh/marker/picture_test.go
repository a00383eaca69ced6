package marker

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"cowl/mesh/paper"
)

// The picture read back by an XML parser: the cloth is drawn 1:5 and the cut
// line of the piece encloses the area of the marker.
func TestPicture(t *testing.T) {
	pieces := []paper.Piece{worked(45, 0.01)}
	l, err := On(pieces, Cloth{Width: 0.87})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := l.Picture(&b, pieces, Words{Title: "Cowl & lay", Notes: []string{"<67 cm"}}); err != nil {
		t.Fatal(err)
	}
	attr := map[string]map[string]string{}
	d := xml.NewDecoder(&b)
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := tok.(xml.StartElement); ok {
			m := map[string]string{}
			for _, a := range e.Attr {
				m[a.Name.Local] = a.Value
			}
			attr[m["id"]] = m
		}
	}
	for name, want := range map[string]float64{"width": l.Length * 200, "height": 174} {
		if got, err := strconv.ParseFloat(attr["cloth"][name], 64); err != nil || math.Abs(got-want) > 0.001 {
			t.Errorf("cloth %s = %q, want %.3f mm", name, attr["cloth"][name], want)
		}
	}
	if got := pathArea(t, attr["piece-1"]["d"]) / (200 * 200); math.Abs(got-l.Area) > 1e-5 {
		t.Errorf("piece-1 encloses %.5f m², want %.5f m²", got, l.Area)
	}
}

// pathArea is the area of a closed path of M and L.
func pathArea(t *testing.T, d string) float64 {
	t.Helper()
	var x, y []float64
	for _, part := range strings.FieldsFunc(d, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		a, b, ok := strings.Cut(part, ",")
		u, err1 := strconv.ParseFloat(a, 64)
		v, err2 := strconv.ParseFloat(b, 64)
		if !ok || err1 != nil || err2 != nil {
			t.Fatalf("path part %q", part)
		}
		x, y = append(x, u), append(y, v)
	}
	s := 0.0
	for i := range x {
		j := (i + 1) % len(x)
		s += x[i]*y[j] - x[j]*y[i]
	}
	return math.Abs(s) / 2
}

// The picture draws the cut line of the paper with its mitres, and no name crosses a line
// of its piece: the words, taken as 0.5 of their size a letter, meet neither cut line,
// seam nor lines.
func TestPictureShowsWhatIsCut(t *testing.T) {
	p := worked(45, 0.025)
	l, err := On([]paper.Piece{p}, Cloth{Width: 0.87})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := l.Picture(&b, []paper.Piece{p}, Words{}); err != nil {
		t.Fatal(err)
	}
	d := xml.NewDecoder(&b)
	cut, names := 0.0, 0
	var paths []string
	for {
		tok, err := d.Token()
		if err != nil {
			break
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		m := map[string]string{}
		for _, a := range e.Attr {
			m[a.Name.Local] = a.Value
		}
		if e.Name.Local == "path" {
			paths = append(paths, m["d"])
		}
		if m["id"] == "cut-1" {
			cut = pathArea(t, m["d"]) / (200 * 200)
		}
		if e.Name.Local != "text" || m["text-anchor"] != "middle" || m["fill"] != ink {
			continue
		}
		var words string
		if err := d.DecodeElement(&words, &e); err != nil {
			t.Fatal(err)
		}
		names++
		x, _ := strconv.ParseFloat(m["x"], 64)
		y, _ := strconv.ParseFloat(m["y"], 64)
		size, _ := strconv.ParseFloat(m["font-size"], 64)
		for _, path := range paths {
			if meetsWords(t, path, x, y, 0.5*size*float64(len(words))/2, size) {
				t.Errorf("%q at (%.1f, %.1f) mm is crossed by %.40s…", words, x, y, path)
			}
		}
	}
	want := 0.0
	for i, v := range p.CutLine {
		w := p.CutLine[(i+1)%len(p.CutLine)]
		want += (v.X*w.Y - w.X*v.Y) / 2
	}
	if math.Abs(cut-want) > 1e-5 || names != 1 {
		t.Errorf("cut-1 encloses %.5f m², %d names; want the %.5f m² of the paper and 1", cut, names, want)
	}
}

// meetsWords reports whether a path of M and L runs through words, looked at every
// tenth of a millimetre.
func meetsWords(t *testing.T, path string, x, y, half, size float64) bool {
	t.Helper()
	var px, py []float64
	for _, part := range strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		a, b, _ := strings.Cut(part, ",")
		u, _ := strconv.ParseFloat(a, 64)
		v, _ := strconv.ParseFloat(b, 64)
		px, py = append(px, u), append(py, v)
	}
	for i := 1; i < len(px); i++ {
		n := 1 + int(10*math.Hypot(px[i]-px[i-1], py[i]-py[i-1]))
		for k := range n {
			s := float64(k) / float64(n)
			u, v := px[i-1]+s*(px[i]-px[i-1]), py[i-1]+s*(py[i]-py[i-1])
			if math.Abs(u-x) < half && v > y-0.7*size && v < y {
				return true
			}
		}
	}
	return false
}
