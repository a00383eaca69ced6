package read

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"cowl/mesh/draft"
	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// Finished is a finished cowl front as a file shows it.
type Finished struct {
	Worn   draft.Side  // at the back, if its name or its centre line says so
	Lines  draft.Lines // X from CF to the wearer's left, Y up from the waist on CF; no Apex: none is marked
	Facing float64     // m, from the fold line to the free edge on CF; 0: no facing
	Grain  float64     // rad from CF to the warp, towards the wearer's left
	Trim   float64     // m, narrowest allowance; below 0: the file has no cut line
}

// Front reads a whole cowl front, both halves, right side up: its outline, and
// inside it CF, the grain line, the fold line if there is a facing, and an open
// dart if there is one. Of several pieces it takes the one called which, or
// without a name the back cowl or else the one with "front" in its own; one with "back"
// in its name or in that of its centre line is a back cowl. Notes say what was left out or
// evened. Without CF or grain line, with one half only, or with an outline that
// is no front, it is an error.
func Front(name string, r io.Reader, unit, which string) (c Finished, notes []string, err error) {
	pieces, err := Pieces(name, r, unit)
	if err != nil {
		return Finished{}, nil, err
	}
	p, err := frontOf(pieces, which)
	if err != nil {
		return Finished{}, nil, err
	}
	if p.GrainLine[0] == p.GrainLine[1] {
		return Finished{}, nil, errors.New("no grain line: draw it on layer 7 (DXF), as a line with an id that ends in " +
			"grain-line (SVG) or as line grain (CSV)")
	}
	cf, ok := centreOf(p)
	if !ok {
		return Finished{}, nil, errors.New("no centre front: draw it from end to end as a straight line inside, on layer 8 " +
			"(DXF), with an id (SVG) or as line inside (CSV); both halves must be there, and alike within 1 cm")
	}
	c, off, err := bestFront(p, cf)
	if err != nil {
		return Finished{}, nil, err
	}
	c.Worn = wornAt(p)
	return c, append(evened(off), c.marks(p)...), nil
}

// wornAt tells where a cowl is worn: by its name, or by that of its centre line.
func wornAt(p paper.Piece) draft.Side {
	names := []string{strings.ToLower(p.Name)}
	for _, l := range p.Lines {
		if name := strings.ToLower(l.Name); strings.Contains(name, "centre") {
			names = append(names, name)
		}
	}
	for _, name := range names {
		if strings.Contains(name, "back") && !strings.Contains(name, "front") {
			return draft.AtBack
		}
	}
	return draft.AtFront
}

// frontOf picks the cowl among the pieces of a file: the one that is called a back cowl,
// else the one that is called front.
func frontOf(pieces []paper.Piece, which string) (paper.Piece, error) {
	named := func(p paper.Piece, word string) bool { return strings.Contains(strings.ToLower(p.Name), word) }
	for _, called := range []func(p paper.Piece) bool{
		func(p paper.Piece) bool { return named(p, "cowl") && wornAt(p) == draft.AtBack },
		func(p paper.Piece) bool { return named(p, "front") },
	} {
		var found []paper.Piece
		for _, p := range pieces {
			if called(p) {
				found = append(found, p)
			}
		}
		if which == "" && len(found) == 1 {
			return found[0], nil
		}
	}
	return choose(pieces, "piece", which)
}

// mostOff is how far the outline may lie from the front that is made of it (m):
// more is no mirrored facing, or not two halves that are alike.
const mostOff = 0.01

// bestFront reads the front with either end of CF up and with every line that
// may be the fold, and returns the one that fits the outline best; off is how
// far it lies from it.
func bestFront(p paper.Piece, cf [2]r2.Vec) (best Finished, off float64, err error) {
	ups := [][2]r2.Vec{cf, {cf[1], cf[0]}}
	if cf[1].Y < cf[0].Y { // as drawn before turned
		ups[0], ups[1] = ups[1], ups[0]
	}
	off = math.Inf(1)
	for _, up := range ups {
		l := newUpright(p, up)
		for _, fold := range append(l.folds(), nil) {
			c, d, e := l.front(fold)
			switch {
			case e == nil && d < off-1e-4:
				best, off = c, d
			case e != nil && err == nil:
				err = e
			}
		}
	}
	switch {
	case off <= mostOff:
		return best, off, nil
	case !math.IsInf(off, 1):
		return best, off, fmt.Errorf("the outline differs by %.0f mm from a front with two halves alike and the facing "+
			"mirrored at the fold, want at most %.0f mm", off*1000, mostOff*1000)
	}
	return best, off, err
}

// evened notes by how much the outline was changed.
func evened(off float64) []string {
	if off < 0.0005 {
		return nil
	}
	return []string{fmt.Sprintf("the front that is hung differs from the outline by up to %.1f mm: the left half is "+
		"taken for both, the facing is mirrored at the fold", off*1000)}
}

// wider is by how much allowances differ by intention (m): in the hollow of a
// corner the cut line lies further off than the allowance.
const wider = 0.01

// marks finds the bust point and the allowance.
func (c *Finished) marks(p paper.Piece) (notes []string) {
	if c.Lines.Apex == (r2.Vec{}) {
		notes = append(notes, "no bust point is marked; that of the block is taken")
	}
	least, most := math.Inf(1), 0.0
	for _, e := range p.Edges {
		least, most = min(least, e.Allowance), max(most, e.Allowance)
	}
	switch c.Trim = least; {
	case most == 0:
		c.Trim = -1
	case most-least > wider:
		notes = append(notes, fmt.Sprintf("allowances of %.0f–%.0f mm; %.0f mm is taken all round", least*1000, most*1000,
			least*1000))
	}
	return notes
}
