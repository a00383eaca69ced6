package svg

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/polyline"
	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	mostPieces = 100
	mostLines  = 2000 // of all pieces together, where there are several
)

// pieces returns the pieces of the picture.
func (p *picture) pieces() ([]paper.Piece, error) {
	outlines, rest, err := p.outlines()
	if err != nil {
		return nil, err
	}
	if len(outlines) > 1 && len(rest) > mostLines {
		return nil, fmt.Errorf("more than %d lines in %d pieces, want those of one size", mostLines, len(outlines))
	}
	var out []paper.Piece
	for i, name := range names(outlines) {
		f := outline.Found{Name: name, Outline: outlines[i].Points}
		for _, l := range rest {
			if len(outlines) == 1 || l.on(outlines[i]) {
				l.join(&f)
			}
		}
		piece, err := f.Piece()
		if err != nil && len(outlines) > 1 {
			return nil, fmt.Errorf("piece %.40q: %w", name, err)
		}
		if err != nil {
			return nil, err
		}
		out = append(out, piece)
	}
	return out, nil
}

// outlines returns the outline of each piece, and the other lines.
func (p *picture) outlines() (outlines, rest []line, err error) {
	for _, end := range []string{"seam-line", "cut-line", ""} {
		for _, l := range p.lines {
			if l.Closed && strings.HasSuffix(l.id, end) {
				outlines = append(outlines, l)
			} else {
				rest = append(rest, l)
			}
		}
		if len(outlines) > 0 {
			return outlines, rest, apart(outlines)
		}
		rest = nil
	}
	return nil, nil, errors.New("no closed line, want the outline as a path that ends in Z, or a polygon")
}

// apart refuses more closed lines than a pattern has, and one that lies on
// another: which of them is the seam line is not said.
func apart(outlines []line) error {
	if n := len(outlines); n > mostPieces {
		return fmt.Errorf("%d closed lines, want at most %d, the outlines of the pieces", n, mostPieces)
	}
	for i, a := range outlines {
		for k, b := range outlines {
			if i != k && a.on(b) {
				return fmt.Errorf("%d closed lines, one on another, near (%.0f, %.0f) mm: give the seam line of each piece an "+
					"id that ends in seam-line, its cut line one in cut-line",
					len(outlines), a.Points[0].X*1000, -a.Points[0].Y*1000)
			}
		}
	}
	return nil
}

// names says what the pieces are called, each by a name of its own.
func names(outlines []line) []string {
	count := map[int]int{}
	for _, l := range outlines {
		count[l.in.number]++
	}
	var out []string
	for _, l := range outlines {
		name := "Piece"
		if own := l.own(); own != "" {
			name = own
		} else if l.in.number > 0 && count[l.in.number] == 1 {
			name = l.in.name
		} else if l.id != "" {
			name = l.id
		}
		plain := name
		for k := 2; slices.Contains(out, name); k++ {
			name = fmt.Sprintf("%s %d", plain, k)
		}
		out = append(out, name)
	}
	return out
}

// own returns what an id such as cowl-front-seam-line says of the piece.
func (l line) own() string {
	for _, end := range []string{"-seam-line", "-cut-line"} {
		if name, ok := strings.CutSuffix(l.id, end); ok {
			return strings.ReplaceAll(name, "-", " ")
		}
	}
	return ""
}

// on reports whether a line lies on a piece, or, if it is the piece's cut line,
// round it.
func (l line) on(piece line) bool {
	if l.Closed && strings.HasSuffix(l.id, "cut-line") {
		l, piece = piece, l
	}
	return polyline.Contains(piece.Points, l.middle())
}

// middle returns a place of an open line that is none of its ends, and one
// inside a closed line: the middle of the first chord at half its height.
func (l line) middle() r2.Vec {
	if !l.Closed {
		return r2.Scale(0.5, r2.Add(l.Points[0], l.Points[1]))
	}
	lo, hi := paper.Box(l.Points)
	y := (lo.Y + hi.Y) / 2
	var x []float64
	for i, a := range l.Points {
		b := l.Points[(i+1)%len(l.Points)]
		if (a.Y > y) != (b.Y > y) {
			x = append(x, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	if len(x) < 2 {
		return lo // it has no height
	}
	slices.Sort(x)
	return r2.Vec{X: (x[0] + x[1]) / 2, Y: y}
}

// join makes the line part of what was found of its piece.
func (l line) join(f *outline.Found) {
	switch n := len(l.Points); {
	case strings.HasSuffix(l.id, "grain-line") && f.Grain == nil:
		f.Grain = &[2]r2.Vec{l.Points[0], l.Points[n-1]}
	case l.Closed && strings.HasSuffix(l.id, "cut-line") && f.Cut == nil:
		f.Cut = l.Points
	case !l.Closed && l.id != "":
		f.Lines = append(f.Lines, paper.Line{Name: strings.ReplaceAll(l.id, "-", " "), Kind: paper.Guide, Points: l.Points})
	}
}
