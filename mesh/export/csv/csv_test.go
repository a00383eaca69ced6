package csv_test

import (
	"bytes"
	gocsv "encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"cowl/mesh/export/csv"
	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// A rectangle with different allowances and a name that wants quoting.
func TestWrite(t *testing.T) {
	p := paper.Piece{
		Name: `Sleeve, "left"`, Outline: []r2.Vec{{X: 0}, {X: 0.25}, {X: 0.25, Y: 0.4}, {Y: 0.4}},
		Edges: []paper.Edge{{Name: "hem", From: 0, To: 1, Allowance: 0.03}, {Name: "seam", From: 1, To: 0, Allowance: 0.01}},
		Holes: []paper.Hole{{Name: "button", At: r2.Vec{X: -0.0000001, Y: 0.2}}},
	}
	p.CutLine = paper.Cut(p.Outline, p.Edges)
	p.Settle(math.Pi / 4)
	var b bytes.Buffer
	if err := csv.Write(&b, []paper.Piece{p}); err != nil {
		t.Fatal(err)
	}
	rows, err := gocsv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	area, last := 0.0, r2.Vec{Y: 400}
	for _, r := range rows {
		if r[1] == "seam" || r[1] == "hole" {
			got = append(got, strings.Join(r, "|"))
		}
		if r[1] == "seam" {
			x, errX := strconv.ParseFloat(r[4], 64)
			y, errY := strconv.ParseFloat(r[5], 64)
			if errX != nil || errY != nil {
				t.Fatal(r)
			}
			area += (last.X*y - x*last.Y) / 2
			last = r2.Vec{X: x, Y: y}
		}
	}
	want := []string{
		`Sleeve, "left"|seam|hem|1|0.000|0.000|30.000`,
		`Sleeve, "left"|seam|seam|2|250.000|0.000|10.000`,
		`Sleeve, "left"|seam|seam|3|250.000|400.000|10.000`,
		`Sleeve, "left"|seam|seam|4|0.000|400.000|10.000`,
		`Sleeve, "left"|hole|button|1|0.000|200.000|`,
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("Write: rows\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if math.Abs(area-250*400) > 1e-6 {
		t.Errorf("seam line encloses %.1f mm², want %d mm²", area, 250*400)
	}
	if csv.Write(io.Discard, nil) == nil || csv.Write(io.Discard, []paper.Piece{{}}) == nil {
		t.Error("Write(nothing) = nil, want an error")
	}
}
