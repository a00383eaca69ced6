package outline

import (
	"cowl/mesh/polyline"
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
)

// Chain is a line as it stands in a file.
type Chain struct {
	Points []r2.Vec // m
	Closed bool
}

// meet is how near the ends of two lines must lie to be joined (m): a pencil
// line.
const meet = 0.0005

// Ring returns the largest closed line that the chains make, open ones joined
// end to end, and the chains that are left. Chains that do not close are an
// error if there is nothing else.
func Ring(chains []Chain) (ring []r2.Vec, rest []Chain, err error) {
	var open []Chain
	var closed []Chain
	for _, c := range chains {
		if n := len(c.Points); !c.Closed && n > 3 && apart(c.Points[0], c.Points[n-1]) <= meet {
			c.Closed = true
		}
		switch {
		case c.Closed && len(c.Points) > 2:
			closed = append(closed, c)
		case len(c.Points) > 1:
			open = append(open, c)
		}
	}
	joined, left, gap := link(open)
	if joined != nil {
		closed, open = append(closed, Chain{joined, true}), left
	}
	best := -1
	for i, c := range closed {
		if best < 0 || area(c.Points) > area(closed[best].Points) {
			best = i
		}
	}
	if best < 0 {
		return nil, nil, gap
	}
	for i, c := range closed {
		if i != best {
			rest = append(rest, c)
		}
	}
	return closed[best].Points, append(rest, open...), nil
}

func area(p []r2.Vec) float64 { return max(polyline.Area(p), -polyline.Area(p)) }

func apart(a, b r2.Vec) float64 { return r2.Norm(r2.Sub(a, b)) }

// mostLinks is up to how many open lines are joined into one outline.
const mostLinks = 1000

// link joins open chains end to end into one closed line and returns those
// that are left. gap says where that fails.
func link(open []Chain) (line []r2.Vec, left []Chain, gap error) {
	if len(open) == 0 {
		return nil, nil, fmt.Errorf("no outline: want one closed line")
	}
	if len(open) > mostLinks {
		return nil, nil, fmt.Errorf("the outline is broken into %d lines, want one closed line, or at most %d", len(open),
			mostLinks)
	}
	left = append(left, open[1:]...)
	line = append([]r2.Vec(nil), open[0].Points...)
	for len(left) > 0 {
		i, turned := next(left, line[len(line)-1])
		if i < 0 {
			break
		}
		p := left[i].Points
		for k := 1; k < len(p); k++ {
			v := p[k]
			if turned {
				v = p[len(p)-1-k]
			}
			line = append(line, v)
		}
		left = append(left[:i], left[i+1:]...)
	}
	first, last := line[0], line[len(line)-1]
	if len(line) < 4 || apart(first, last) > meet {
		return nil, nil, fmt.Errorf("the outline is open: %.1f mm are missing between (%.1f, %.1f) and (%.1f, %.1f) mm: "+
			"close it",
			apart(first, last)*1000, last.X*1000, last.Y*1000, first.X*1000, first.Y*1000)
	}
	return line, left, nil
}

// next returns the chain that goes on from v, and whether it must be turned
// round; -1: none.
func next(chains []Chain, v r2.Vec) (i int, turned bool) {
	for i, c := range chains {
		switch {
		case apart(c.Points[0], v) <= meet:
			return i, false
		case apart(c.Points[len(c.Points)-1], v) <= meet:
			return i, true
		}
	}
	return -1, false
}
