package dxf_test

import (
	"bytes"
	gocsv "encoding/csv"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/export/csv"
	"cowl/mesh/export/dxf"
	"cowl/mesh/export/pdf"
	"cowl/mesh/export/svg"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Cut and seam line of SVG, DXF, CSV and PDF, each read by a reader that knows
// nothing of the writer, lie within 0.1 mm of each other.
func TestFormatsAgree(t *testing.T) {
	cuts := []func(*draft.Cut){
		func(*draft.Cut) {},
		func(c *draft.Cut) { c.Extension, c.How, c.Trim = 0.15, draft.Slash, 0.01 },
		func(c *draft.Cut) { c.DartShare, c.Extension, c.Facing, c.Grain = 0, 0.06, 0, 0.3 },
		func(c *draft.Cut) { c.Extension, c.Hem = draft.Auto, 0.18 },
	}
	compared := 0
	for i, change := range cuts {
		p := front(t, change)
		want := readDXF(t, p)
		for name, read := range map[string]func(*testing.T, paper.Piece) outlines{"SVG": readSVG, "CSV": readCSV,
			"PDF": readPDF} {
			t.Run(fmt.Sprintf("%s %d", name, i), func(t *testing.T) {
				got := read(t, p)
				for line, want := range map[string][2][]r2.Vec{"cut": {got.cut, want.cut}, "seam": {got.seam, want.seam}} {
					compared++
					if d := apart(want[0], want[1]); d > 0.1 {
						t.Errorf("%s line of %s is %.4f mm from that of DXF, want at most 0.1 mm", line, name, d)
					}
				}
			})
		}
	}
	if compared < 4*len(cuts) {
		t.Errorf("compared %d lines, want %d or more", compared, 4*len(cuts))
	}
}

// outlines are the closed lines of a piece, mm, Y up, lowest left corner of the
// cut line at 0, 0.
type outlines struct{ cut, seam []r2.Vec }

// set moves the lines to the corner of the cut line; down turns Y up.
func set(cut, seam []r2.Vec, down bool) outlines {
	if down {
		for _, line := range [][]r2.Vec{cut, seam} {
			for i := range line {
				line[i].Y = -line[i].Y
			}
		}
	}
	lo, _ := paper.Box(cut)
	for _, line := range [][]r2.Vec{cut, seam} {
		for i := range line {
			line[i] = r2.Sub(line[i], lo)
		}
	}
	return outlines{cut, seam}
}

// apart returns how far any corner of one closed line lies from the other.
func apart(p, q []r2.Vec) float64 {
	most := 0.0
	for _, pair := range [][2][]r2.Vec{{p, q}, {q, p}} {
		for _, v := range pair[0] {
			least := math.Inf(1)
			for i, a := range pair[1] {
				least = min(least, away(v, a, pair[1][(i+1)%len(pair[1])]))
			}
			most = max(most, least)
		}
	}
	return most
}

func readDXF(t *testing.T, p paper.Piece) outlines {
	d := written(t, []paper.Piece{p}, dxf.Options{})
	return set(d.on(d.order[0], "1")[0].points, d.on(d.order[0], "14")[0].points, false)
}

func readCSV(t *testing.T, p paper.Piece) outlines {
	var b bytes.Buffer
	if err := csv.Write(&b, []paper.Piece{p}); err != nil {
		t.Fatal(err)
	}
	rows, err := gocsv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string][]r2.Vec{}
	for _, r := range rows[1:] {
		x, errX := strconv.ParseFloat(r[4], 64)
		y, errY := strconv.ParseFloat(r[5], 64)
		if errX != nil || errY != nil {
			t.Fatalf("row %q: %v %v", r, errX, errY)
		}
		lines[r[1]] = append(lines[r[1]], r2.Vec{X: x, Y: y})
	}
	return set(lines["cut"], lines["seam"], false)
}

// picture is an SVG as a reader sees it.
type picture struct {
	Paths []struct {
		ID        string `xml:"id,attr"`
		D         string `xml:"d,attr"`
		Transform string `xml:"transform,attr"`
	} `xml:"path"`
}

func readSVG(t *testing.T, p paper.Piece) outlines {
	var b bytes.Buffer
	if err := svg.Write(&b, []paper.Piece{p}, plot.Options{}); err != nil {
		t.Fatal(err)
	}
	var pic picture
	if err := xml.Unmarshal(b.Bytes(), &pic); err != nil {
		t.Fatal(err)
	}
	lines := map[string][]r2.Vec{}
	for _, q := range pic.Paths {
		lines[q.ID] = numbers(t, q.D)
	}
	return set(lines["cut-line"], lines["seam-line"], true)
}

// numbers reads the places of a path of straight lines.
func numbers(t *testing.T, d string) []r2.Vec {
	t.Helper()
	fields := strings.FieldsFunc(d, func(r rune) bool { return strings.ContainsRune("MLZ ,", r) })
	var out []r2.Vec
	for i := 0; i+1 < len(fields); i += 2 {
		x, errX := strconv.ParseFloat(fields[i], 64)
		y, errY := strconv.ParseFloat(fields[i+1], 64)
		if errX != nil || errY != nil {
			t.Fatalf("path %q: %v %v", d, errX, errY)
		}
		out = append(out, r2.Vec{X: x, Y: y})
	}
	return out
}

// readPDF has poppler turn the page into an SVG in points and takes its two
// largest closed paths: cut line and seam line.
func readPDF(t *testing.T, p paper.Piece) outlines {
	tool, err := exec.LookPath("pdftocairo")
	if err != nil {
		t.Skip("pdftocairo (poppler-utils) is not installed: no independent reader of PDF")
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, []paper.Piece{p}, plot.Options{}); err != nil {
		t.Fatal(err)
	}
	in, out := filepath.Join(t.TempDir(), "p.pdf"), filepath.Join(t.TempDir(), "p.svg")
	if err := os.WriteFile(in, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if msg, err := exec.Command(tool, "-svg", in, out).CombinedOutput(); err != nil {
		t.Fatalf("pdftocairo: %v %s", err, msg)
	}
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	var first, second []r2.Vec
	for _, line := range pathsOf(t, data) {
		switch a := math.Abs(polyline.Area(line)); {
		case a > math.Abs(polyline.Area(first)):
			first, second = line, first
		case a > math.Abs(polyline.Area(second)):
			second = line
		}
	}
	return set(first, second, false)
}

// pathsOf returns the closed stroked paths of poppler's SVG, in mm, Y up.
func pathsOf(t *testing.T, data []byte) [][]r2.Vec {
	t.Helper()
	const mm = 25.4 / 72
	var out [][]r2.Vec
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := dec.Token()
		if err != nil {
			return out
		}
		e, ok := tok.(xml.StartElement)
		if !ok || e.Name.Local != "path" {
			continue
		}
		attr := map[string]string{}
		for _, a := range e.Attr {
			attr[a.Name.Local] = a.Value
		}
		stroked := strings.Contains(attr["style"], "stroke-width") || attr["stroke-width"] != ""
		if !strings.Contains(attr["d"], "Z") || strings.Contains(attr["d"], "C") || !stroked {
			continue
		}
		// The matrix turns Y up into Y down and fits the page to whole points;
		// the path itself is in the points of the PDF.
		var m [6]float64
		if _, err := fmt.Sscanf(strings.ReplaceAll(attr["transform"], ",", " "), "matrix(%g %g %g %g %g %g)", &m[0], &m[1],
			&m[2], &m[3], &m[4], &m[5]); err != nil ||
			m[1] != 0 || m[2] != 0 || math.Abs(m[0]-1) > 1e-3 || math.Abs(m[3]+1) > 1e-3 {
			t.Fatalf("transform %q: %v, want Y turned and little else", attr["transform"], err)
		}
		d, _, _ := strings.Cut(attr["d"], "Z")
		line := numbers(t, d)
		for i, v := range line {
			line[i] = r2.Scale(mm, v)
		}
		out = append(out, line)
	}
}
