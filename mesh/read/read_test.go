package read_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
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

func block(t testing.TB, size int) draft.Block { return drafttest.Block(t, size) }

// around returns the outline of a block, counter-clockwise, its dart cut out.
func around(b draft.Block) []r2.Vec {
	line := []r2.Vec{b.CFWaist, b.DartInner, b.Apex, b.DartOuter, b.SideWaist, b.Underarm}
	for _, v := range slices.Backward(b.Armhole) {
		line = append(line, v)
	}
	line = append(line, b.ShoulderTip, b.Neck)
	for i := 1; i < 8; i++ { // a neckline: a quarter of an ellipse
		a := float64(i) / 8 * math.Pi / 2
		line = append(line, r2.Vec{X: b.Neck.X * math.Cos(a), Y: b.Neck.Y + (b.CFNeck.Y-b.Neck.Y)*math.Sin(a)})
	}
	return append(line, b.CFNeck)
}

// asSVG writes a line as a picture of 1000 mm whose coordinates are tenths of
// a millimetre, Y down.
func asSVG(line []r2.Vec) string {
	var d strings.Builder
	for i, v := range line {
		fmt.Fprintf(&d, "%c %.2f %.2f ", "ML"[min(i, 1)], v.X*10000, -v.Y*10000)
	}
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="100cm" height="100cm" viewBox="0 0 10000 10000"><g transform="translate(100 50)"><path d="%sz"/></g></svg>`, d.String())
}

// asDXF writes lines as polylines on layer 1 and what more is given.
func asDXF(line []r2.Vec, perMetre float64, more string) string {
	var b strings.Builder
	b.WriteString("0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\n1\n66\n1\n70\n1\n")
	for _, v := range line {
		fmt.Fprintf(&b, "0\nVERTEX\n8\n1\n10\n%.6f\n20\n%.6f\n", v.X*perMetre, v.Y*perMetre)
	}
	return b.String() + "0\nSEQEND\n" + more + "0\nENDSEC\n0\nEOF\n"
}

func mapped(line []r2.Vec, f func(r2.Vec) r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[i] = f(v)
	}
	return out
}

// differ returns the largest distance between named points of two blocks.
func differ(a, b draft.Block) float64 {
	most := 0.0
	for _, p := range [][2]r2.Vec{{a.Neck, b.Neck}, {a.CFNeck, b.CFNeck}, {a.Apex, b.Apex},
		{a.ShoulderTip, b.ShoulderTip}, {a.Underarm, b.Underarm},
		{a.SideWaist, b.SideWaist}, {a.DartOuter, b.DartOuter}, {a.DartInner, b.DartInner}, {a.CFWaist, b.CFWaist}} {
		most = max(most, r2.Norm(r2.Sub(p[0], p[1])))
	}
	return max(most, math.Abs(a.ArmholeLength()-b.ArmholeLength()))
}

// A block drawn in any of the formats, turned, mirrored, moved, in any unit,
// comes back as itself to a tenth of a millimetre.
func TestBlockComesBack(t *testing.T) {
	turn := func(a float64) func(r2.Vec) r2.Vec {
		return func(v r2.Vec) r2.Vec { return r2.Add(r2.Rotate(v, a, r2.Vec{}), r2.Vec{X: 0.3, Y: 0.2}) }
	}
	flip := func(v r2.Vec) r2.Vec { return r2.Vec{X: 0.5 - v.X, Y: v.Y} }
	count := 0
	for _, size := range []int{6, 10, 18} {
		want := block(t, size)
		line := around(want)
		back := slices.Clone(line)
		slices.Reverse(back)
		for _, q := range []struct{ what, name, data, unit string }{
			{"upright", "b.svg", asSVG(line), ""},
			{"mirrored", "b.svg", asSVG(mapped(line, flip)), ""},
			{"clockwise", "b.svg", asSVG(back), ""},
			{"millimetres", "b.dxf", asDXF(line, 1000, ""), "mm"},
			{"inches", "B.DXF", asDXF(line, 1/0.0254, ""), "in"},
			{"stated", "b.dxf", asDXF(line, 1000, "0\nTEXT\n8\n1\n1\nUnits: METRIC\n"), ""},
			{"on its side", "b.dxf", asDXF(mapped(line, turn(math.Pi/2)), 1000, ""), "mm"},
			{"askew", "b.dxf", asDXF(mapped(line, turn(0.4)), 1000, ""), "mm"},
			{"mirrored on its side", "b.dxf", asDXF(mapped(mapped(line, flip), turn(-math.Pi/2)), 1000, ""), "mm"},
			{"dart inside", "b.dxf", asDXF(append(slices.Clone(line[:2]), line[3:]...), 1000, dartDXF(want)), "mm"},
		} {
			count++
			points, notes, err := read.Block(q.name, strings.NewReader(q.data), q.unit, "")
			if err != nil {
				t.Errorf("Block(%s, size %d) = %v", q.what, size, err)
				continue
			}
			got, err := draft.FromPoints(points)
			if err != nil {
				t.Errorf("Block(%s, size %d): %v", q.what, size, err)
				continue
			}
			if d := differ(got, want); d > 1e-4 {
				t.Errorf("Block(%s, size %d) is %.3f mm off, want at most 0.1 mm", q.what, size, d*1000)
			}
			if len(notes) > 0 {
				t.Errorf("Block(%s, size %d) notes %q, want none", q.what, size, notes)
			}
		}
	}
	if count != 30 {
		t.Errorf("read %d blocks, want 30", count)
	}
}

// dartDXF is the dart of b as lines on layer 8, in millimetres.
func dartDXF(b draft.Block) string {
	s := ""
	for _, leg := range [][2]r2.Vec{{b.DartInner, b.Apex}, {b.Apex, b.DartOuter}} {
		s += fmt.Sprintf("0\nLINE\n8\n8\n10\n%.6f\n20\n%.6f\n11\n%.6f\n21\n%.6f\n", leg[0].X*1000, leg[0].Y*1000,
			leg[1].X*1000, leg[1].Y*1000)
	}
	return s
}

// A table of named points is a block; so is one with semicolons and decimal
// commas. The places are those of the worked draft (size 10), in cm.
func TestBlockFromTable(t *testing.T) {
	b := block(t, 10)
	rows := []struct {
		name string
		at   r2.Vec
	}{{"cf neck", b.CFNeck}, {"neck", b.Neck}, {"shoulder tip", b.ShoulderTip}, {"underarm", b.Underarm},
		{"side waist", b.SideWaist},
		{"dart outer", b.DartOuter}, {"apex", b.Apex}, {"dart inner", b.DartInner}, {"cf waist", b.CFWaist}}
	for _, q := range []struct{ head, sep string }{{"name,x_cm,y_cm", ","}, {"\ufeffname;x_cm;y_cm", ";"},
		{"name\tx_cm\ty_cm", "\t"}} {
		text := q.head + "\r\n"
		add := func(name string, v r2.Vec) {
			x, y := fmt.Sprintf("%.6f", v.X*100), fmt.Sprintf("%.6f", v.Y*100)
			if q.sep == ";" {
				x, y = strings.Replace(x, ".", ",", 1), strings.Replace(y, ".", ",", 1)
			}
			text += name + q.sep + x + q.sep + y + "\r\n"
		}
		for _, r := range rows {
			add(r.name, r.at)
		}
		for _, v := range b.Armhole {
			add("armhole", v)
		}
		points, _, err := read.Block("b.csv", strings.NewReader(text), "", "")
		if err != nil {
			t.Errorf("Block(%q) = %v", q.head, err)
			continue
		}
		got, err := draft.FromPoints(points)
		if err != nil || differ(got, b) > 1e-7 {
			t.Errorf("Block(%q) is %.4f mm off, %v", q.head, differ(got, b)*1000, err)
		}
	}
}

// What is exported is read back: outline, cut line, allowance, grain.
func TestPiecesComeBack(t *testing.T) {
	c := draft.DefaultCut()
	c.Grain = 0.3
	d, err := draft.Draft(block(t, 12), c)
	if err != nil {
		t.Fatal(err)
	}
	p, err := paper.FromDraft(d)
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for name, write := range map[string]func(*bytes.Buffer) error{
		"p.dxf": func(b *bytes.Buffer) error { return dxf.Write(b, []paper.Piece{p}, dxf.Options{}) },
		"p.svg": func(b *bytes.Buffer) error { return svg.Write(b, []paper.Piece{p}, plot.Options{}) },
		"p.csv": func(b *bytes.Buffer) error { return csv.Write(b, []paper.Piece{p}) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		got, err := read.Pieces(name, &b, "")
		if err != nil || len(got) != 1 {
			t.Errorf("Pieces(%s) = %d pieces, %v", name, len(got), err)
			continue
		}
		count++
		for _, a := range []struct {
			what      string
			got, want float64
			tol       float64
		}{
			{"seam area, m²", polyline.Area(got[0].Outline), polyline.Area(p.Outline), 2e-6},
			{"cut area, m²", polyline.Area(got[0].CutLine), polyline.Area(p.CutLine), 2e-6},
			{"grain, rad", got[0].Grain(), 0.3, 1e-4},
			{"allowance, m", got[0].Edges[0].Allowance, 0.025, 1e-4},
		} {
			if math.Abs(a.got-a.want) > a.tol {
				t.Errorf("Pieces(%s): %s = %.6f, want %.6f", name, a.what, a.got, a.want)
			}
		}
	}
	if count != 3 {
		t.Errorf("read %d formats, want 3", count)
	}
}

// A file that is no block says what it lacks.
func TestBlockRefused(t *testing.T) {
	b := block(t, 10)
	line := around(b)
	noDart := append(slices.Clone(line[:1]), line[4:]...)
	square := []r2.Vec{{}, {X: 0.3}, {X: 0.3, Y: 0.3}, {Y: 0.3}}
	for _, q := range []struct{ name, data, unit, want string }{
		{"b.dxf", asDXF(line, 1000, ""), "", "does not say its unit"},
		{"b.dxf", asDXF(line, 1000, ""), "m", "is the unit right"},
		{"b.dxf", asDXF(line, 1000, "0\nTEXT\n8\n1\n1\nUnits: ENGLISH\n"), "mm", "the file says in"},
		{"b.dxf", asDXF(noDart, 1000, ""), "mm", "no waist dart"},
		{"b.dxf", asDXF(square, 1000, ""), "mm", "4 corners, want 9"},
		{"b.svg", strings.Replace(asSVG(line), `width="100cm" height="100cm"`, "", 1), "", "does not say its size"},
		{"b.svg", strings.Replace(asSVG(line), `height="100cm"`, `height="50cm"`, 1), "", "out of shape"},
		{"b.csv", "name,x,y\nneck,1,2\n", "", "does not say its unit"},
		{"b.csv", "name,x_mm,y_mm\nnick,1,2\n", "", "point \"nick\""},
		{"b.csv", "name,x_mm,y_mm\nneck,1,NaN\n", "", "finite"},
		{"b.pdf", "", "", "file ending"},
		{"b.csv", "", "furlong", "unit \"furlong\""},
	} {
		_, _, err := read.Block(q.name, strings.NewReader(q.data), q.unit, "")
		if err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("Block(%s, %.40q, %q) = %v, want %q", q.name, q.data, q.unit, err, q.want)
		}
	}
}
