package lattice

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// sums returns the areas and the centre of mass as the lattice holds them.
func sums(l *Lattice) map[string]float64 {
	s := l.Skin()
	m := map[string]float64{"nodes": 0, "cells": 0, "warp links": 0, "weft links": 0, "skin": 0}
	for i := range l.Rest {
		m["nodes"] += l.Area[i]
		m["cells"] += l.Cell[i].Area
		m["warp links"] += l.U[i].Link
		m["weft links"] += l.V[i].Link
	}
	for _, t := range s.Tris {
		m["skin"] += r2.Cross(r2.Sub(s.Flat[t[1]], s.Flat[t[0]]), r2.Sub(s.Flat[t[2]], s.Flat[t[0]])) / 2
	}
	return m
}

// balance returns the centre of mass of the node areas.
func balance(l *Lattice) r2.Vec {
	var c r2.Vec
	var a float64
	for i, p := range l.Rest {
		c, a = r2.Add(c, r2.Scale(l.Area[i], p)), a+l.Area[i]
	}
	return r2.Scale(1/a, c)
}

// wantAreas compares every sum with the area of the outline, and the centre.
func wantAreas(t interface {
	Helper()
	Errorf(string, ...any)
}, outline []r2.Vec, l *Lattice) {
	t.Helper()
	want, centre, _ := figures(outline)
	for name, got := range sums(l) {
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("sum of %s = %.9g m², want the outline's %.9g (off by %.2g of it)", name, got, want, got/want-1)
		}
	}
	if d := r2.Norm(r2.Sub(balance(l), centre)); d > 1e-6*math.Sqrt(want) {
		t.Errorf("centre of mass = %v, want %v (off by %g m)", balance(l), centre, d)
	}
}

func TestAreas(t *testing.T) {
	each(t, func(t *testing.T, k int, l *Lattice) { wantAreas(t, outlines[k].points, l) })
}

func TestAreasOfAny(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		p := star(t)
		l, err := Cut(p, turned(t))
		if err != nil {
			t.Skip(err)
		}
		wantAreas(t, p, l)
		for i, a := range l.Area {
			if !(a > 0) {
				t.Errorf("Area[%d] = %g m², want > 0", i, a)
			}
		}
	})
	if n < 200 {
		t.Errorf("%d cases, want 200", n)
	}
}

// A cell's middle lies in the cell, and its corners are one spacing apart.
func TestCells(t *testing.T) {
	n := 0
	each(t, func(t *testing.T, k int, l *Lattice) {
		for i := range l.Rest {
			c := l.Cell[i]
			if c.Corner[0] == None {
				continue
			}
			n++
			if c.Mid.X < 0 || c.Mid.X > 1 || c.Mid.Y < 0 || c.Mid.Y > 1 {
				t.Errorf("Cell[%d].Mid = %v, want inside 0..1", i, c.Mid)
			}
			if l.U[i].Next != c.Corner[1] || l.V[i].Next != c.Corner[2] || l.V[c.Corner[1]].Next != c.Corner[3] ||
				l.U[c.Corner[3]].Prev != c.Corner[2] {
				t.Errorf("Cell[%d].Corner = %v does not follow the links", i, c.Corner)
			}
			wantStep(t, l, c.Corner[0], c.Corner[1], l.Warp())
			wantStep(t, l, c.Corner[2], c.Corner[3], l.Warp())
			wantStep(t, l, c.Corner[1], c.Corner[3], l.Weft())
		}
	})
	if n < 1000 {
		t.Errorf("%d cells, want thousands", n)
	}
}

// wantStep wants b one spacing from a in the given direction.
func wantStep(t *testing.T, l *Lattice, a, b int32, dir r2.Vec) {
	t.Helper()
	d := r2.Sub(r2.Sub(l.Rest[b], l.Rest[a]), r2.Scale(l.Spacing, dir))
	if r2.Norm(d) > 1e-12 {
		t.Errorf("node %d lies %v from node %d, want one spacing along %v", b, r2.Sub(l.Rest[b], l.Rest[a]), a, dir)
	}
}

// At 45° the mirror about x = 0 maps warp onto weft: node onto node, and the
// warp link of one onto the weft link of the other.
func TestMirrorOnBias(t *testing.T) {
	n := 0
	for _, k := range []int{0, 3} {
		l, err := Cut(outlines[k].points, Options{Spacing: 0.008, Grain: math.Pi / 4})
		if err != nil {
			t.Fatal(err)
		}
		at := map[[2]int]int{}
		for i, p := range l.Rest {
			u, v := l.local(p)
			at[[2]int{int(math.Round(u)), int(math.Round(v))}] = i
		}
		for i, p := range l.Rest {
			u, v := l.local(r2.Vec{X: -p.X, Y: p.Y})
			j, ok := at[[2]int{int(math.Round(u)), int(math.Round(v))}]
			if !ok || math.Abs(l.Rest[j].X+p.X) > 1e-12 || math.Abs(l.Rest[j].Y-p.Y) > 1e-12 {
				t.Errorf("%s: node at %v has no mirror", outlines[k].name, p)
				continue
			}
			n++
			s2 := l.Spacing * l.Spacing
			if math.Abs(l.Area[i]-l.Area[j]) > 1e-9*s2 || math.Abs(l.U[i].Link-l.V[j].Link) > 1e-9*s2 {
				t.Errorf("%s: node %v area %g, warp link %g; mirror area %g, weft link %g", outlines[k].name, p, l.Area[i],
					l.U[i].Link, l.Area[j], l.V[j].Link)
			}
		}
	}
	if n < 1000 {
		t.Errorf("%d nodes mirrored, want thousands", n)
	}
}

func TestCutErrors(t *testing.T) {
	square := outlines[0].points
	far := make([]r2.Vec, len(square)) // a piece inside one cell
	for i, p := range square {
		far[i] = r2.Add(p, r2.Vec{X: 1, Y: 1})
	}
	for _, c := range []struct {
		name    string
		outline []r2.Vec
		spacing float64
		want    string
	}{
		{"zero", square, 0, "spacing 0 m"},
		{"negative", square, -0.008, "positive"},
		{"not a number", square, math.NaN(), "positive"},
		{"infinite", square, math.Inf(1), "spacing"},
		{"two points", square[:2], 0.008, "3 points"},
		{"too coarse", far, 10, "finer spacing"},
		{"clockwise", []r2.Vec{square[3], square[2], square[1], square[0]}, 0.008, "lattice:"},
	} {
		l, err := Cut(c.outline, Options{Spacing: c.spacing})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Cut(%s) = %v, %v, want an error with %q", c.name, l != nil, err, c.want)
		}
	}
}
