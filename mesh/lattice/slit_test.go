package lattice

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rimOf returns the length of the boundary of a skin and how many closed lines
// it has.
func rimOf(t *testing.T, s Skin) (length float64, loops int) {
	t.Helper()
	next := map[int32]int32{}
	edges := map[[2]int32]bool{}
	for _, tri := range s.Tris {
		for k := range 3 {
			edges[[2]int32{tri[k], tri[(k+1)%3]}] = true
		}
	}
	for e := range edges {
		if edges[[2]int32{e[1], e[0]}] {
			continue
		}
		if _, ok := next[e[0]]; ok {
			t.Errorf("two rims leave vertex %d at (%.4f, %.4f)", e[0], s.Flat[e[0]].X, s.Flat[e[0]].Y)
		}
		next[e[0]] = e[1]
		length += r2.Norm(r2.Sub(s.Flat[e[1]], s.Flat[e[0]]))
	}
	seen := map[int32]bool{}
	for v := range next {
		if seen[v] {
			continue
		}
		loops++
		for ; !seen[v]; v = next[v] {
			seen[v] = true
		}
	}
	return length, loops
}

// A slit of 10 cm from the lower edge of a rectangle takes no cloth away, and
// lengthens the rim by twice its length, less two cells at its tip at most; moved
// aside it may meet the edge half a millimetre sooner or later.
func TestSlitRim(t *testing.T) {
	rect := []r2.Vec{{X: -0.2, Y: -0.15}, {X: 0.2, Y: -0.15}, {X: 0.2, Y: 0.15}, {X: -0.2, Y: 0.15}}
	count := 0
	for _, deg := range grains {
		for _, to := range []r2.Vec{{X: 0.05, Y: -0.05}, {X: 0.1, Y: -0.063}, {X: 0.06, Y: -0.05}} {
			o := Options{Spacing: 0.01, Grain: deg * math.Pi / 180}
			plain, err := Cut(rect, o)
			if err != nil {
				t.Fatal(err)
			}
			from := r2.Vec{X: 0.05, Y: -0.15}
			d := r2.Unit(r2.Sub(to, from))
			o.Slits = []Slit{{From: r2.Sub(from, r2.Scale(0.01, d)), To: to}}
			slit, err := Cut(rect, o)
			if err != nil {
				t.Fatal(err)
			}
			var a, b float64
			for _, v := range plain.Area {
				a += v
			}
			for _, v := range slit.Area {
				b += v
			}
			if math.Abs(a-b) > 1e-12 {
				t.Errorf("%g°: area %.9f m² with the slit, want %.9f", deg, b, a)
			}
			long := r2.Norm(r2.Sub(to, from))
			length, loops := rimOf(t, slit.Skin())
			if more := (length - 1.4) / 2; more > long+0.0005 || more < long-0.025 || loops != 1 {
				t.Errorf("%g° to (%.2f, %.3f): the slit is %.4f m long in %d rims, want %.4f m less two cells at most, in 1", deg,
					to.X, to.Y, more, loops, long)
			}
			count++
		}
	}
	if count != 18 {
		t.Errorf("looked at %d slits, want 18", count)
	}
}

// A dart of 10 cm takes its triangle, and its legs are parted however narrow it is: one
// rim, longer by both legs and the cut beyond its tip, which ends within two cells.
func TestDartRim(t *testing.T) {
	rect := []r2.Vec{{X: -0.2, Y: -0.15}, {X: 0.2, Y: -0.15}, {X: 0.2, Y: 0.15}, {X: -0.2, Y: 0.15}}
	count := 0
	for _, deg := range grains {
		for _, mouth := range []float64{0.003, 0.008, 0.012, 0.025, 0.06} {
			dart := []r2.Vec{{X: 0.05 - mouth/2, Y: -0.15}, {X: 0.06, Y: -0.05}, {X: 0.05 + mouth/2, Y: -0.15}}
			up := r2.Unit(r2.Sub(dart[1], r2.Vec{X: 0.05, Y: -0.15}))
			l, err := Cut(rect, Options{Spacing: 0.01, Grain: deg * math.Pi / 180, Slits: []Slit{{
				From: r2.Add(r2.Vec{X: 0.05, Y: -0.15}, r2.Scale(-0.015, up)), To: r2.Add(dart[1], r2.Scale(0.015, up)), Dart: dart,
			}}})
			if err != nil {
				t.Fatal(err)
			}
			var area float64
			for _, v := range l.Area {
				area += v
			}
			// It is moved aside by 0.3 mm, and slants by 0.1 against the edge.
			if want := 0.4*0.3 - mouth*0.1/2; math.Abs(area-want) > 0.0003*0.1*mouth+1e-9 {
				t.Errorf("%g°, %g m: area %.9f m², want %.9f", deg, mouth, area, want)
			}
			length, loops := rimOf(t, l.Skin())
			legs := 2*math.Hypot(0.1, 0.01) - mouth // about what the rim gains
			if more := length - 1.4; math.Abs(more-legs) > 0.045 || loops != 1 {
				t.Errorf("%g°, %g m: %d rims, %.4f m longer, want 1 and %.4f to 45 mm", deg, mouth, loops, more, legs)
			}
			count++
		}
	}
	if count != 30 {
		t.Errorf("looked at %d darts, want 30", count)
	}
}

// The two sides move apart: with every crossing on the right of the slit line
// and below its tip moved 2 cm aside, no triangle that lies clear of the tip is
// stretched. Cells that the slit has not parted would be.
func TestSlitOpens(t *testing.T) {
	rect := []r2.Vec{{X: -0.2, Y: -0.15}, {X: 0.2, Y: -0.15}, {X: 0.2, Y: 0.15}, {X: -0.2, Y: 0.15}}
	count := 0
	for _, deg := range grains {
		o := Options{Spacing: 0.01, Grain: deg * math.Pi / 180,
			Slits: []Slit{{From: r2.Vec{X: 0.05, Y: -0.2}, To: r2.Vec{X: 0.05, Y: 0.05}}}}
		l, err := Cut(rect, o)
		if err != nil {
			t.Fatal(err)
		}
		s := l.Skin()
		right := rightOf(l, 0.05-aside*0.01)
		pos := make([]r3.Vec, len(l.Rest))
		for i, q := range l.Rest {
			pos[i] = r3.Vec{X: q.X, Y: q.Y}
			if right[i] && q.Y < 0 {
				pos[i].X += 0.02
			}
		}
		for _, tri := range s.Tris {
			low := true
			for _, v := range tri {
				low = low && s.Flat[v].Y < -0.02
			}
			if !low {
				continue
			}
			count++
			for k := range 3 {
				a, b := tri[k], tri[(k+1)%3]
				was := r2.Norm(r2.Sub(s.Flat[a], s.Flat[b]))
				is := r3.Norm(r3.Sub(s.Points[a].At(pos), s.Points[b].At(pos)))
				if math.Abs(is-was) > 1e-9 {
					t.Fatalf("%g°: a triangle at (%.3f, %.3f) is stretched from %.4f to %.4f m", deg, s.Flat[a].X, s.Flat[a].Y, was,
						is)
				}
			}
		}
	}
	if count < 1000 {
		t.Errorf("looked at %d triangles, want 1000 or more", count)
	}
}

// rightOf says which crossings carry cloth only to the right of x: by the
// middles of the skin's triangles, below the tip.
func rightOf(l *Lattice, x float64) []bool {
	right := make([]bool, len(l.Rest))
	for _, p := range l.parts {
		var m r2.Vec
		for _, v := range p.poly {
			m = r2.Add(m, r2.Scale(1/float64(len(p.poly)), v))
		}
		for _, n := range l.cells[p.cell].node {
			if l.flat(m.X, m.Y).X > x {
				right[n] = true
			}
		}
	}
	return right
}

// A slit parts as many cells from either end of the lattice: towards its low corner it
// once parted none, as the sides of every cell shared that corner.
func TestSlitEveryWay(t *testing.T) {
	square := []r2.Vec{{X: -0.1, Y: -0.1}, {X: 0.1, Y: -0.1}, {X: 0.1, Y: 0.1}, {X: -0.1, Y: 0.1}}
	for _, deg := range append([]float64{-34.5}, grains...) {
		for quarter := range 4 {
			turn := r2.NewRotation(float64(quarter)*math.Pi/2, r2.Vec{})
			s := Slit{From: turn.Rotate(r2.Vec{X: 0.15, Y: 0.003}), To: turn.Rotate(r2.Vec{X: 0.03, Y: 0.003})}
			l, err := Cut(square, Options{Spacing: 0.01, Grain: deg * math.Pi / 180, Slits: []Slit{s}})
			if err != nil {
				t.Fatal(err)
			}
			// A line of 7 cm crosses at least 7 cells less one at its tip, and one at a
			// corner that is left out as a sliver.
			if n := len(l.sides); n < 5 {
				t.Errorf("grain %g°, slit from %.2f: %d cells parted, want 5 or more", deg, s.From, n)
			}
			for _, sides := range l.sides {
				if a, b := l.cells[sides[0]].node[0], l.cells[sides[1]].node[0]; a == b {
					t.Errorf("grain %g°, slit from %.2f: both sides of a cell have the low corner %d", deg, s.From, a)
				}
			}
		}
	}
}
