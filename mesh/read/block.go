package read

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"
	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Corners of a half front, counter-clockwise from the waist on CF, with the
// dart cut out of the outline and with it drawn inside or left away.
var (
	withDart = []string{"cf waist", "dart inner", "apex", "dart outer", "side waist", "underarm", "shoulder tip", "neck",
		"cf neck"}
	noDart = []string{"cf waist", "side waist", "underarm", "shoulder tip", "neck", "cf neck"}
)

// half is an outline laid as a block: CF at X = 0, the side at X above 0, the
// waist below, counter-clockwise.
type half struct {
	outline []r2.Vec
	corners []int // indices into outline, the first one the waist on CF
	at      func(r2.Vec) r2.Vec
}

// nameCorners tells the points of a block from the outline of a half front. CF
// is the longest straight side that all else lies beside.
func nameCorners(p paper.Piece) (map[string][]r2.Vec, []string, error) {
	halves := asBlocks(p.Outline)
	if len(halves) == 0 {
		return nil, nil, fmt.Errorf("no centre front in the outline, want a half front with one straight side that all " +
			"of it lies beside")
	}
	var first error
	for _, h := range halves {
		points, notes, err := h.name(p)
		if err == nil {
			_, err = draft.FromPoints(points)
		}
		if err == nil {
			return points, notes, nil
		}
		if first == nil {
			first = err
		}
	}
	return nil, nil, first
}

const (
	beside  = 0.002 // m, how far a point may lie beyond CF
	leastCF = 0.12  // m, CF of a front is longer
)

// asBlocks returns the outline laid as a block in every way that has a straight
// side for CF; the likeliest first: upright as drawn before turned, a longer
// side before a shorter one.
func asBlocks(p []r2.Vec) []half {
	at := outline.Corners(p)
	var upright, turned []half
	for i, from := range at {
		to := at[(i+1)%len(at)]
		a, b := p[from], p[to]
		if r2.Norm(r2.Sub(b, a)) < leastCF || !straight(stretch(p, from, to)) {
			continue
		}
		for _, flip := range []bool{false, true} {
			h, ok := turnedTo(p, at, from, to, flip)
			if !ok {
				continue
			}
			// As drawn, the neck end lies above the waist end.
			down := r2.Sub(b, a)
			if flip {
				down = r2.Scale(-1, down)
			}
			if math.Abs(down.X) < math.Abs(down.Y) && down.Y < 0 {
				upright = append(upright, h)
			} else {
				turned = append(turned, h)
			}
		}
	}
	return append(longestFirst(upright), longestFirst(turned)...)
}

// longestFirst orders by the length of CF.
func longestFirst(h []half) []half {
	for i := 1; i < len(h); i++ {
		for j := i; j > 0 && h[j].cf() > h[j-1].cf()+1e-6; j-- {
			h[j], h[j-1] = h[j-1], h[j]
		}
	}
	return h
}

// cf returns the length of CF (m).
func (h half) cf() float64 {
	c := h.corners
	return r2.Norm(r2.Sub(h.outline[c[0]], h.outline[c[len(c)-1]]))
}

// turnedTo turns the outline so that the side between two corners is CF. In a
// counter-clockwise outline of the wearer's left half CF runs down; flip takes
// the outline for a right half and mirrors it.
func turnedTo(p []r2.Vec, corners []int, from, to int, flip bool) (half, bool) {
	neck, waist := p[from], p[to]
	if flip {
		neck, waist = waist, neck
	}
	up := r2.Unit(r2.Sub(neck, waist))
	right := r2.Vec{X: up.Y, Y: -up.X}
	if flip {
		right = r2.Scale(-1, right)
	}
	place := func(v r2.Vec) r2.Vec {
		d := r2.Sub(v, waist)
		return r2.Vec{X: r2.Dot(d, right), Y: r2.Dot(d, up)}
	}
	n := len(p)
	h := half{outline: make([]r2.Vec, n), at: place}
	for i, v := range p {
		k := i
		if flip {
			k = n - 1 - i
		}
		h.outline[k] = place(v)
		if h.outline[k].X < -beside {
			return half{}, false
		}
	}
	start := to
	for _, c := range corners {
		if flip {
			c = n - 1 - c
		}
		h.corners = append(h.corners, c)
	}
	if flip {
		start = n - 1 - from
		for i, j := 0, len(h.corners)-1; i < j; i, j = i+1, j-1 {
			h.corners[i], h.corners[j] = h.corners[j], h.corners[i]
		}
	}
	for h.corners[0] != start {
		h.corners = append(h.corners[1:], h.corners[0])
	}
	return h, true
}

// name gives the corners their names.
func (h half) name(p paper.Piece) (map[string][]r2.Vec, []string, error) {
	names := withDart
	switch len(h.corners) {
	case len(withDart):
	case len(noDart):
		names = noDart
	default:
		return nil, nil, fmt.Errorf("the outline has %d corners, want %d (%s) or, with the dart drawn inside, %d; or "+
			"name the points in a CSV table",
			len(h.corners), len(withDart), strings.Join(withDart, ", "), len(noDart))
	}
	points := map[string][]r2.Vec{}
	at := map[string]int{}
	for i, n := range names {
		at[n] = h.corners[i]
		points[n] = []r2.Vec{h.outline[h.corners[i]]}
	}
	if len(names) == len(noDart) {
		waist := stretch(h.outline, at["cf waist"], at["side waist"])
		if err := h.dartInside(p, waist, points); err != nil {
			return nil, nil, err
		}
	}
	curve := stretch(h.outline, at["underarm"], at["shoulder tip"])
	points["armhole"] = polyline.Reversed(thin(curve))
	notes := h.bowed(names, at)
	if points["dart inner"][0] != points["dart outer"][0] && len(names) == len(noDart) {
		// it bends at the dart legs
		notes = slices.DeleteFunc(notes, func(n string) bool { return strings.HasPrefix(n, "cf waist") })
	}
	points["cf neck"][0].X, points["cf waist"][0].X = 0, 0
	level := points["neck"][0].Y
	for _, line := range points {
		for i := range line {
			line[i].Y -= level
		}
	}
	return points, notes, nil
}

// bowed notes the seams that a block has straight and the outline has not.
func (h half) bowed(names []string, at map[string]int) []string {
	var notes []string
	for i, n := range names {
		next := names[(i+1)%len(names)]
		if n == "underarm" || n == "neck" { // armhole and neckline are curves
			continue
		}
		if d := bow(stretch(h.outline, at[n], at[next])); d > beside {
			notes = append(notes, fmt.Sprintf("%s to %s bows %.1f mm; the block takes it straight", n, next, d*1000))
		}
	}
	return notes
}
