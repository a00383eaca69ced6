package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	_ "image/png" // pdftoppm writes PNG
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cowl/mesh/paper"
	"cowl/mesh/paper/plot"

	"gonum.org/v1/gonum/spatial/r2"
)

// Every tile carries the whole cut line, moved by a whole number of net tiles:
// joined edge on dashed line they make one piece.
func TestTilesJoin(t *testing.T) {
	program := tool(t, "pdftocairo")
	path := tiles(t, A4)
	g := newGrid(plot.Pieces([]paper.Piece{front(t)}))
	var origin r2.Vec
	for i, tile := range g.tiles {
		out := filepath.Join(t.TempDir(), "page.svg")
		n := fmt.Sprint(i + 2)
		if msg, err := exec.Command(program, "-svg", "-f", n, "-l", n, path, out).CombinedOutput(); err != nil {
			t.Fatalf("pdftocairo: %v %s", err, msg)
		}
		lo := cutCorner(t, out)
		moved := r2.Vec{X: lo.X + float64(tile.column)*180, Y: lo.Y - float64(tile.row)*249} // Y up
		if i == 0 {
			origin = moved
		}
		if d := r2.Norm(r2.Sub(moved, origin)); d > 0.02 {
			t.Errorf("tile %s: cut line is %.3f mm off its place", tile.name(), d)
		}
	}
	if len(g.tiles) < 9 {
		t.Errorf("%d tiles, want 9 or more", len(g.tiles))
	}
}

// cutCorner returns the lowest left corner of the path with most of the widest
// pen in poppler's SVG, mm, Y up: the cut line.
func cutCorner(t *testing.T, path string) r2.Vec {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	lo := r2.Vec{X: math.Inf(1), Y: math.Inf(1)}
	most := 0
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := dec.Token()
		if err != nil {
			break
		}
		e, ok := tok.(xml.StartElement)
		if !ok || e.Name.Local != "path" {
			continue
		}
		var d, look string
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "d":
				d = a.Value
			case "style", "stroke-width":
				look += a.Name.Local + ":" + a.Value
			}
		}
		first, _, closed := strings.Cut(d, "Z")
		fields := strings.FieldsFunc(first, func(r rune) bool { return strings.ContainsRune("ML ", r) })
		if !closed || !strings.Contains(look, "stroke-width:1.4") || len(fields) <= most {
			continue
		}
		most, lo = len(fields), r2.Vec{X: math.Inf(1), Y: math.Inf(1)}
		for i := 0; i+1 < len(fields); i += 2 {
			var v r2.Vec
			if _, err := fmt.Sscan(fields[i], &v.X); err != nil {
				t.Fatal(err)
			}
			if _, err := fmt.Sscan(fields[i+1], &v.Y); err != nil {
				t.Fatal(err)
			}
			lo = r2.Vec{X: min(lo.X, v.X*25.4/72), Y: min(lo.Y, v.Y*25.4/72)}
		}
	}
	if most == 0 {
		t.Fatal("no cut line on the page")
	}
	return lo
}
