package marker

import (
	"errors"
	"math"
	"testing"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// pieceOf makes a symmetric piece of a left half (cm, CF at the bottom first),
// with allowances of its edges; edges follow the points of the half, except
// for those on CF.
func pieceOf(name string, grain, allowance float64, sides int, half ...r2.Vec) paper.Piece {
	p := paper.Piece{Name: name, Quantity: 1}
	for _, v := range half {
		p.Outline = append(p.Outline, r2.Scale(0.01, v))
	}
	for i := len(half) - 1; i >= 0; i-- {
		if half[i].X > 0 {
			p.Outline = append(p.Outline, r2.Vec{X: -p.Outline[i].X, Y: p.Outline[i].Y})
		}
	}
	n := len(p.Outline)
	for i := range n {
		name := "edge"
		if i == sides {
			name = "left side seam"
		}
		if i == n-1-sides {
			name = "right side seam"
		}
		p.Edges = append(p.Edges, paper.Edge{Name: name, From: i, To: (i + 1) % n, Allowance: allowance})
	}
	p.CutLine = paper.Cut(p.Outline, p.Edges)
	p.Settle(grain * math.Pi / 180)
	return p
}

// worked is the whole cowl front of the worked example of an Aldrich-type
// draft, size 10, with a plain 10 cm strip as facing (cm, worked out step by
// step apart from this program).
func worked(grain, allowance float64) paper.Piece {
	return pieceOf("Cowl front", grain, allowance, 2,
		r2.Vec{Y: -42.5}, r2.Vec{X: 8.1, Y: -42.5}, r2.Vec{X: 19.9952, Y: -44.9752}, r2.Vec{X: 25.6811, Y: -26.2407},
		r2.Vec{X: 21.6754, Y: -23.9627}, r2.Vec{X: 21.3406, Y: -18.6298}, r2.Vec{X: 27.6553, Y: -9.7981},
		r2.Vec{X: 21.6878, Y: -4.1563}, r2.Vec{X: 21.6878, Y: 5.8437}, r2.Vec{Y: 5.8437})
}

// The footprints of the worked example with 1 cm allowance, cm: published
// nowhere, worked out apart from this program for the same points.
func TestWorkedFootprints(t *testing.T) {
	count := 0
	for _, q := range []struct{ grain, across, along float64 }{
		{0, 57.3, 52.8}, {15, 57.8, 61.9}, {30, 63.5, 66.9}, {45, 67.4, 67.4}, {60, 66.9, 63.5}, {90, 52.8, 57.3},
	} {
		for _, sign := range []float64{1, -1} {
			p := worked(sign*q.grain, 0.01)
			l, err := On([]paper.Piece{p}, Cloth{Width: 1.2})
			if err != nil {
				t.Fatal(err)
			}
			cut := l.Placed[0].Cut
			lo, hi := paper.Box(cut)
			if math.Abs((hi.X-lo.X)*100-q.across) > 0.06 || math.Abs(l.Length*100-q.along) > 0.06 {
				t.Errorf("%g°: %.2f cm across, %.2f cm long, want %.1f × %.1f", sign*q.grain, (hi.X-lo.X)*100, l.Length*100,
					q.across, q.along)
			}
			count++
		}
	}
	if count != 12 {
		t.Errorf("looked at %d lays, want 12", count)
	}
}

// The worked example's areas: front 1 835 cm², a strip of 10 cm by twice the
// half edge of 21.69 cm, and no allowance.
func TestWorkedArea(t *testing.T) {
	l, err := On([]paper.Piece{worked(45, 0)}, Cloth{Width: 0.87})
	if err != nil {
		t.Fatal(err)
	}
	if want := 1835.0 + 433.8; math.Abs(l.Area*1e4-want) > 4 {
		t.Errorf("area %.1f cm², want %.1f cm²", l.Area*1e4, want)
	}
	if want := 1 - l.Area/(0.87*l.Length); math.Abs(l.Waste()-want) > 1e-12 || l.Waste() < 0.4 {
		t.Errorf("waste %.3f, want %.3f", l.Waste(), want)
	}
}

// Which of the example's lengths fit which width on the true bias: the table
// of nominal widths less two selvedges of 1.5 cm, and the bound (w + h)/√2 of
// an upright box.
func TestFitsTable(t *testing.T) {
	box := func(w, h float64) paper.Piece {
		return pieceOf("box", 45, 0.01, 1, r2.Vec{}, r2.Vec{X: w / 2}, r2.Vec{X: w / 2, Y: h}, r2.Vec{Y: h})
	}
	count := 0
	for _, q := range []struct {
		nominal, most float64 // cm, largest w + h without allowance that fits: √2·usable
	}{{90, 123}, {110, 151.3}, {112, 154.1}, {115, 158.4}, {137, 189.5}, {140, 193.7}, {145, 200.8}, {150, 207.9}} {
		c := Cloth{Width: Usable(q.nominal / 100)}
		// The clipped tips stand 1 cm off on either side.
		most := q.most - 2*math.Sqrt2
		if _, err := On([]paper.Piece{box(most/2, most/2-0.2)}, c); err != nil {
			t.Errorf("%g cm: %v, want a box of w + h = %.1f cm to fit", q.nominal, err, most-0.2)
		}
		if _, err := On([]paper.Piece{box(most/2, most/2+0.2)}, c); !errors.Is(err, ErrTooWide) {
			t.Errorf("%g cm: error %v, want a box of w + h = %.1f cm not to fit", q.nominal, err, most+0.2)
		}
		count += 2
	}
	if count != 16 {
		t.Errorf("looked at %d boxes, want 16", count)
	}
}

// Two rectangles of 40 × 30 cm on the straight grain: side by side on 90 cm
// they take 30 cm, on 50 cm they take 60 cm, on 35 cm they do not fit.
func TestTwoRectangles(t *testing.T) {
	r := pieceOf("rectangle", 0, 0, 1, r2.Vec{}, r2.Vec{X: 20}, r2.Vec{X: 20, Y: 30}, r2.Vec{Y: 30})
	r.Quantity = 2
	for _, q := range []struct{ width, length float64 }{{0.9, 0.3}, {0.8, 0.3}, {0.79, 0.6}, {0.5, 0.6}} {
		l, err := On([]paper.Piece{r}, Cloth{Width: q.width})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(l.Length-q.length) > 0.005 {
			t.Errorf("on %.2f m: %.3f m long, want %.3f m", q.width, l.Length, q.length)
		}
	}
	if _, err := On([]paper.Piece{r}, Cloth{Width: 0.35}); !errors.Is(err, ErrTooWide) {
		t.Errorf("on 0.35 m: error %v, want ErrTooWide", err)
	}
}

// No two pieces overlap, all lie on the cloth, and every grain line runs along
// it: looked at by a raster of 2 mm, which shares nothing with the laying.
func TestLayIsClean(t *testing.T) {
	small := pieceOf("Facing", 45, 0.01, 1, r2.Vec{}, r2.Vec{X: 14, Y: 4}, r2.Vec{X: 12, Y: 11}, r2.Vec{Y: 7})
	back := pieceOf("Back", 0, 0.01, 1, r2.Vec{Y: -40}, r2.Vec{X: 22, Y: -40}, r2.Vec{X: 24, Y: -20},
		r2.Vec{X: 19, Y: -4}, r2.Vec{X: 12, Y: -2}, r2.Vec{Y: -5})
	count := 0
	for _, nap := range []bool{false, true} {
		for _, width := range []float64{0.87, 1.12, 1.47} {
			l, err := On([]paper.Piece{worked(45, 0.01), back, small}, Cloth{Width: width, Nap: nap})
			if err != nil {
				t.Fatal(err)
			}
			checkClean(t, l)
			for _, p := range l.Placed {
				src := []paper.Piece{worked(45, 0.01), back, small}[p.Piece]
				d := r2.Sub(p.On(src.GrainLine[1]), p.On(src.GrainLine[0]))
				if math.Abs(d.X) > 1e-9 || nap && d.Y < 0 {
					t.Errorf("nap %t: the grain line of %s runs (%.3g, %.3g)", nap, src.Name, d.X, d.Y)
				}
				count++
			}
		}
	}
	if count != 18 {
		t.Errorf("looked at %d pieces, want 18", count)
	}
}

// checkClean paints every piece on a raster of 2 mm, a hair smaller.
func checkClean(t *testing.T, l Marker) {
	t.Helper()
	const cell = 0.002
	painted := map[[2]int]int{}
	for n, p := range l.Placed {
		lo, hi := paper.Box(p.Cut)
		if lo.X < -1e-9 || lo.Y < -1e-9 || hi.X > l.Cloth.Width+1e-9 || hi.Y > l.Length+1e-9 {
			t.Errorf("piece %d lies off the cloth: (%.3f, %.3f) to (%.3f, %.3f) m", n, lo.X, lo.Y, hi.X, hi.Y)
		}
		for i := int(lo.X / cell); i <= int(hi.X/cell); i++ {
			for j := int(lo.Y / cell); j <= int(hi.Y/cell); j++ {
				v := r2.Vec{X: (float64(i) + 0.5) * cell, Y: (float64(j) + 0.5) * cell}
				if !within(p.Cut, v) {
					continue
				}
				if m, ok := painted[[2]int{i, j}]; ok && m != n {
					t.Errorf("pieces %d and %d overlap at (%.3f, %.3f) m", m, n, v.X, v.Y)
					return
				}
				painted[[2]int{i, j}] = n
			}
		}
	}
}

// within reports whether v lies in a closed line: winding number.
func within(line []r2.Vec, v r2.Vec) bool {
	turns := 0.0
	for i, a := range line {
		b := line[(i+1)%len(line)]
		p, q := r2.Sub(a, v), r2.Sub(b, v)
		turns += math.Atan2(r2.Cross(p, q), r2.Dot(p, q))
	}
	return math.Abs(turns) > math.Pi
}

// The bodice does not fit on 60 cm of usable width on the bias; with a joined
// corner it does, and the corner lies low at one side.
func TestJoinedCorner(t *testing.T) {
	p := worked(45, 0.01)
	if _, err := On([]paper.Piece{p}, Cloth{Width: 0.62}); !errors.Is(err, ErrTooWide) {
		t.Fatalf("without a join: error %v, want ErrTooWide", err)
	}
	l, err := On([]paper.Piece{p}, Cloth{Width: 0.62, Join: true, Seam: 0.01})
	if err != nil {
		t.Fatal(err)
	}
	if l.Joins() != 1 || len(l.Placed) != 2 {
		t.Fatalf("%d joins in %d parts, want 1 in 2", l.Joins(), len(l.Placed))
	}
	checkClean(t, l)
	for i, q := range l.Placed {
		if len(q.Join) != 2 || math.Abs(q.Join[0].X-q.Join[1].X) > 1e-9 || math.Abs(q.Join[0].Y-q.Join[1].Y) < 0.02 {
			t.Errorf("part %d is joined along %v, want a line along the warp", i, q.Join)
		}
	}
	whole, err := On([]paper.Piece{p}, Cloth{Width: 0.87})
	if err != nil {
		t.Fatal(err)
	}
	// Both parts keep an allowance of 1 cm: the parts are larger by a strip of 2 cm along the join.
	if extra := l.Area - whole.Area; extra < 0.0005 || extra > 0.02*0.4 {
		t.Errorf("the join takes %.1f cm² more, want a strip of 2 cm along it", extra*1e4)
	}
	if _, err := On([]paper.Piece{p}, Cloth{Width: 0.35, Join: true, Seam: 0.01}); !errors.Is(err, ErrTooWide) {
		t.Errorf("on 35 cm: error %v, want ErrTooWide: no corner so large may be joined on", err)
	}
}

// The bias takes more cloth than the straight grain: 67.4² against 57.3 × 52.8
// for the box, so the straight grain must be the cheapest here.
func TestCheapest(t *testing.T) {
	deg := math.Pi / 180
	all, err := Choices([]paper.Piece{worked(45, 0.01)}, Widths(), []float64{45 * deg, 0}, Cloth{})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) != 10 {
		t.Fatalf("%d choices, want 10", len(all))
	}
	best, ok := Cheapest(all)
	if !ok || best.Grain != 0 || best.Nominal != 0.90 {
		t.Errorf("cheapest: %.0f cm at %.0f°, want 90 cm at 0°", best.Nominal*100, best.Grain/deg)
	}
	if want := 0.90 * 0.528; math.Abs(best.Bought()-want) > 0.001 {
		t.Errorf("cheapest takes %.4f m², want %.4f m²", best.Bought(), want)
	}
}
