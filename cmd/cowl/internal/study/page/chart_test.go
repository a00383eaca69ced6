package page

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/study/stats"
)

// Round steps that hold both ends, by hand.
func TestTicks(t *testing.T) {
	for _, q := range []struct {
		lo, hi float64
		n      int
		want   []float64
	}{
		{0, 10, 5, []float64{0, 2, 4, 6, 8, 10}},
		{0.3, 14.9, 5, []float64{0, 5, 10, 15}},
		{8.6, 11.1, 5, []float64{8.5, 9, 9.5, 10, 10.5, 11, 11.5}},
		{-3, 3, 3, []float64{-4, -2, 0, 2, 4}},
		{7, 7, 2, []float64{7, 7.5, 8}},
	} {
		got := ticks(q.lo, q.hi, q.n)
		same := len(got) == len(q.want)
		for i := range got {
			same = same && math.Abs(got[i]-q.want[i]) < 1e-9
		}
		if !same {
			t.Errorf("ticks(%g, %g, %d) = %v, want %v", q.lo, q.hi, q.n, got, q.want)
		}
	}
}

// attr reads a number of an element.
func attr(t *testing.T, e element, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(e.attrs[name], 64)
	if err != nil {
		t.Fatalf("<%s %s=%q>: %v", e.name, name, e.attrs[name], err)
	}
	return v
}

// The marks of a line stand where the ticks say: the words on the axis and the
// marks, read back from the SVG, agree to half a unit.
func TestLinesPlace(t *testing.T) {
	values := []float64{0, 30, 60, 100}
	c := Lines{Title: "x", X: "x", Y: "y", Zero: true, Series: []Series{{}}}
	for i, v := range values {
		c.Series[0].Points = append(c.Series[0].Points, Point{X: float64(2 * i), Y: v})
	}
	ys, xs := map[string]float64{}, map[string]float64{}
	var marks [][2]float64
	for _, e := range parsed(t, []byte(c.SVG())) {
		switch {
		case e.name == "text" && e.attrs["text-anchor"] == "end":
			ys[e.text] = attr(t, e, "y") - 4
		case e.name == "text" && e.attrs["text-anchor"] == "middle":
			xs[e.text] = attr(t, e, "x")
		case e.name == "circle":
			marks = append(marks, [2]float64{attr(t, e, "cx"), attr(t, e, "cy")})
		}
	}
	if len(marks) != len(values) {
		t.Fatalf("%d marks, want %d", len(marks), len(values))
	}
	for i, v := range values {
		x, y := xs[strconv.Itoa(2*i)], ys["0"]+v/100*(ys["100"]-ys["0"])
		if math.Abs(marks[i][0]-x) > 0.5 || math.Abs(marks[i][1]-y) > 0.5 {
			t.Errorf("value %g at %v, want (%.1f, %.1f)", v, marks[i], x, y)
		}
	}
}

// The bars of a stack are as long as the shares they stand for.
func TestStackShares(t *testing.T) {
	c := Stack{Names: []string{"a"}, Noun: "folds", Each: [][]stats.Share{{{Count: 2, Times: 3}, {Count: 1, Times: 1}}}}
	var long []float64
	for _, e := range parsed(t, []byte(c.SVG())) {
		if e.name == "rect" && e.attrs["height"] == "16" {
			long = append(long, attr(t, e, "width"))
		}
	}
	if len(long) != 2 || math.Abs(long[1]/long[0]-3) > 0.01 {
		t.Errorf("bars %v, want two, the second three times the first", long)
	}
	if !strings.Contains(c.SVG(), "2: 3 of 4") {
		t.Error("the bar does not say its share")
	}
}

// A section keeps its shape: cm are equally long upright and along.
func TestOutlinesScale(t *testing.T) {
	o := Outlines{Curves: []Curve{{"square", [][2]float64{{100, 0}, {100, 100}, {200, 100}}}}}
	for _, e := range parsed(t, []byte(o.SVG())) {
		if e.name != "path" || e.attrs["stroke"] != hands[0].colour {
			continue
		}
		p := strings.FieldsFunc(e.attrs["d"], func(r rune) bool { return strings.ContainsRune("MC ", r) })
		var v []float64
		for _, s := range p {
			x, err := strconv.ParseFloat(s, 64)
			if err != nil {
				t.Fatal(err)
			}
			v = append(v, x)
		}
		if len(v) != 2+2*6 {
			t.Fatalf("%d numbers in the curve, want a start and two arcs of 6", len(v))
		}
		// Arcs end in the points; height goes up the page, forward to the left.
		up, forward := v[1]-v[7], v[6]-v[12]
		if up <= 0 || math.Abs(up-forward) > 0.3 {
			t.Errorf("10 cm up is %.1f, 10 cm forward %.1f to the left, want both alike", up, forward)
		}
		return
	}
	t.Error("found no curve")
}
