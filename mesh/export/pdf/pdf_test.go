package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	_ "image/png" // pdftoppm writes PNG
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/draft/drafttest"
	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"

	"gonum.org/v1/gonum/spatial/r2"
)

func front(t *testing.T) paper.Piece {
	t.Helper()
	p, err := paper.FromDraft(drafttest.Front(t, 10, func(*draft.Cut) {}))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// tool returns a program of poppler-utils or skips the test.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s (poppler-utils) is not installed: no independent reader of PDF", name)
	}
	return path
}

// saved writes a document to a file.
func saved(t *testing.T, write func(io.Writer) error) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "p.pdf")
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func tiles(t *testing.T, on Paper) string {
	return saved(t, func(w io.Writer) error { return WriteTiles(w, []paper.Piece{front(t)}, plot.Options{}, on) })
}

// The squares on the first page, rendered by poppler at 10 dots a millimetre
// and measured line to line, are 100 and 101.6 mm to 0.2 mm both ways.
func TestTestSquares(t *testing.T) {
	program := tool(t, "pdftoppm")
	const perMM = 10
	for _, on := range []Paper{A4, Letter} {
		out := filepath.Join(t.TempDir(), "page")
		args := []string{"-png", "-gray", "-f", "1", "-l", "1", "-singlefile", "-r", fmt.Sprint(25.4 * perMM), tiles(t, on),
			out}
		if msg, err := exec.Command(program, args...).CombinedOutput(); err != nil {
			t.Fatalf("pdftoppm: %v %s", err, msg)
		}
		f, err := os.Open(out + ".png")
		if err != nil {
			t.Fatal(err)
		}
		img, _, err := image.Decode(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(img.Bounds().Dx()) / perMM; math.Abs(got-on.Width) > 0.1 {
			t.Errorf("%s: page %.2f mm wide, want %.1f mm", on.Name, got, on.Width)
		}
		corner := r2.Vec{X: (on.Width - tileWide) / 2, Y: (on.Height - tileHigh) / 2}
		for _, q := range []struct {
			top, side float64
		}{{squaresTop, 100}, {squaresTop + 108, 101.6}} {
			// Cuts through the square away from the words in its middle.
			row := perMM * (corner.Y + q.top + 20)
			column := perMM * (corner.X + 20)
			across := lines(img, r2.Vec{X: 1}, row, perMM*(corner.X-3), perMM*(corner.X+q.side+3))
			down := lines(img, r2.Vec{Y: 1}, column, perMM*(corner.Y+q.top-3), perMM*(corner.Y+q.top+q.side+3))
			for way, at := range map[string][]float64{"across": across, "down": down} {
				if len(at) != 2 || math.Abs((at[1]-at[0])/perMM-q.side) > 0.2 {
					t.Errorf("%s: lines of the square at %.2f dots %s, want two %.1f ± 0.2 mm apart", on.Name, at, way, q.side)
				}
			}
		}
	}
}

// lines returns where, in dots, dark lines are met along dir at the given row
// or column between from and to: the middle of the darkness of each.
func lines(img image.Image, dir r2.Vec, beside, from, to float64) []float64 {
	var at []float64
	sum, moment := 0.0, 0.0
	for i := int(from); i <= int(to); i++ {
		x, y := int(dir.X)*i+int(dir.Y)*int(beside), int(dir.Y)*i+int(dir.X)*int(beside)
		r, _, _, _ := img.At(x, y).RGBA()
		if dark := 1 - float64(r)/65535; dark > 0.05 {
			sum, moment = sum+dark, moment+dark*(float64(i)+0.5)
		} else if sum > 0 {
			at = append(at, moment/sum)
			sum, moment = 0, 0
		}
	}
	return at
}

// Every point that is drawn lies on a tile, a tile that is left out has none of its own,
// and a wide piece takes as many columns as its width asks for; one of 4 by 3 tiles has two
// inside without ink.
func TestGrid(t *testing.T) {
	square := func(wide, high float64) paper.Piece {
		line := []r2.Vec{{}, {X: wide}, {X: wide, Y: high}, {Y: high}}
		return paper.Piece{Name: "Square", Label: r2.Vec{X: 0.05, Y: 0.02}, LabelWide: 0.08, Outline: line, CutLine: line}
	}
	for _, q := range []struct {
		wide, high    float64 // m
		columns, rows int
		blank         int
	}{{0.1, 0.1, 1, 1, 0}, {0.178, 0.247, 1, 1, 0}, {0.179, 0.248, 2, 2, 0}, {0.358, 0.496, 2, 2, 0},
		{0.573, 0.528, 4, 3, 2}} {
		g := newGrid(plot.Pieces([]paper.Piece{square(q.wide, q.high)}))
		if g.columns != q.columns || g.rows != q.rows || len(g.tiles) != q.columns*q.rows-q.blank {
			t.Errorf("newGrid(%.0f × %.0f mm) = %d × %d, %d tiles, want %d × %d less %d", q.wide*1000, q.high*1000, g.columns,
				g.rows, len(g.tiles), q.columns, q.rows, q.blank)
		}
	}
	for _, p := range []paper.Piece{square(0.573, 0.528), front(t)} {
		d := plot.Pieces([]paper.Piece{p})
		checkInk(t, d, newGrid(d))
	}
	for row, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 27: "AB", 52: "BA"} {
		if got := rowName(row); got != want {
			t.Errorf("rowName(%d) = %s, want %s", row, got, want)
		}
	}
}

// checkInk looks at the strokes of a drawing every millimetre: each place lies on a tile,
// and every tile has a stroke or words.
func checkInk(t *testing.T, d plot.Drawing, g grid) {
	t.Helper()
	inked := map[tile]bool{}
	look := func(v r2.Vec) {
		on := false
		for _, q := range g.tiles {
			if w := r2.Sub(v, q.at); w.X >= 0 && w.Y >= 0 && w.X <= tileWide && w.Y <= tileHigh {
				on, inked[q] = true, true
			}
		}
		if !on {
			t.Fatalf("ink at (%.1f, %.1f) mm lies on no tile", v.X, v.Y)
		}
	}
	for _, s := range d.Strokes {
		for i := range s.Points {
			a, b := s.Points[i], s.Points[(i+1)%len(s.Points)]
			if i == len(s.Points)-1 && !s.Closed {
				continue
			}
			n := math.Ceil(r2.Norm(r2.Sub(b, a)))
			for k := 0.0; k <= n; k++ {
				look(r2.Add(a, r2.Scale(k/max(n, 1), r2.Sub(b, a))))
			}
		}
	}
	for _, w := range d.Texts {
		look(w.At)
	}
	if len(inked) != len(g.tiles) {
		t.Errorf("%d of %d tiles have ink, want all", len(inked), len(g.tiles))
	}
}

// Equal input gives equal bytes.
func TestEqualBytes(t *testing.T) {
	p := []paper.Piece{front(t)}
	for name, write := range map[string]func(io.Writer) error{
		"sheet":   func(w io.Writer) error { return Write(w, p, plot.Options{Title: "Žluťoučký kůň"}) },
		"tiles":   func(w io.Writer) error { return WriteTiles(w, p, plot.Options{}, A4) },
		"cutting": func(w io.Writer) error { return WriteCutting(w, p, plot.Options{}, Letter) },
	} {
		var first []byte
		for range 4 {
			var b bytes.Buffer
			if err := write(&b); err != nil {
				t.Fatal(err)
			}
			if first == nil {
				first = b.Bytes()
			}
			if !bytes.Equal(first, b.Bytes()) {
				t.Errorf("%s: bytes differ from one run to the next", name)
				break
			}
		}
	}
}

// The cutting sheet says what to mind, on as many pages as it counts.
func TestCuttingSheetSays(t *testing.T) {
	program := tool(t, "pdftotext")
	path := saved(t, func(w io.Writer) error {
		return WriteCutting(w, []paper.Piece{front(t), front(t)}, plot.Options{Title: "Probe",
			Notes: []string{"Fabric: muslin"}}, A4)
	})
	text, err := exec.Command(program, path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(strings.Fields(string(text)), " ")
	for _, want := range []string{"24 to 48 hours", "again after seaming", "Stay the shoulders", "single layer",
		"not the same", "real cloth", "true bias", "Fabric: muslin", "page 2 of 2", "Allowance 2.5 cm all round"} {
		if !strings.Contains(all, want) {
			t.Errorf("the cutting sheet lacks %q", want)
		}
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteErrors(t *testing.T) {
	if Write(io.Discard, nil, plot.Options{}) == nil || WriteTiles(io.Discard, []paper.Piece{{}}, plot.Options{},
		A4) == nil || WriteCutting(io.Discard, nil, plot.Options{}, A4) == nil {
		t.Error("writing nothing = nil, want an error")
	}
	if WriteTiles(io.Discard, []paper.Piece{front(t)}, plot.Options{}, Paper{"A5", 148, 210}) == nil {
		t.Error("tiles on A5 = nil, want an error")
	}
	if err := Write(broken{}, []paper.Piece{front(t)}, plot.Options{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("Write to a failing writer = %v, want %v", err, io.ErrShortWrite)
	}
}
