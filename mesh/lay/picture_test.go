package lay

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
// line of the piece encloses the area of the lay.
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
