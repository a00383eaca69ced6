// Package truing carries the seam lines marked on a draped front back to the
// flat, folds the centre front, averages the halves or takes one, and draws
// the lines clean: straight where the draft is straight, the edge square to
// the centre front, the facing mirrored anew.
//
// A draper pins the seam of the cloth to the seam of the form, smooths, and
// moves a pin that drags; what she marks is the row of pins. Where it has left
// the seam of the form, block and form do not agree, and the distance is
// reported as misfit. ByForm marks the seams of the form instead, and so fits
// the piece to the form. Start at True.
package truing

import (
	"fmt"

	"cowl/mesh"
	"cowl/mesh/draft"
	"cowl/mesh/form"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Pin is a pin that holds the draped cloth.
type Pin struct {
	Seam string // "cowl point", "shoulder", "side", "waist" or "dart"; others are not read
	Flat r2.Vec // m, the place of the draft that was to be pinned: says which pin it is
	At   r3.Vec // m, where the pin sits in the form
}

// Mark says what is marked on the cloth.
type Mark int

// The two ways to mark.
const (
	ByPins Mark = iota // along the pins
	ByForm             // along the seam lines of the form
)

// Half says which half is trued.
type Half int

// The halves, of the wearer.
const (
	Both  Half = iota // folded on CF and averaged
	Left              // mirrored to the right
	Right             // mirrored to the left
)

// Options say how to true; the zero value averages both halves along the pins.
type Options struct {
	Mark Mark
	Half Half
}

// Trued is a front that was trued, and what was found.
type Trued struct {
	Cowl  draft.Cowl
	Seams []Seam  // shoulder, armhole, side seam, waist
	Apex  float64 // m, how far the apex of the form lies from the draft's on the cloth, mean of both sides
}

// Seam is what truing did to one seam; lengths in metres.
type Seam struct {
	Name          string
	Draft, Length float64 // of one half, as drafted and as trued
	Marks         int     // marks that were carried back, both halves together
	Moved         float64 // farthest that a point of the line moved
	LeftRight     float64 // largest difference of two marks folded onto each other
	Scatter       float64 // farthest that a mark lies off the clean line
	Misfit        Misfit  // of form and cloth
}

// Misfit is where the seam of the form lies on the cloth against the seam of
// the draft, in metres: above zero inside the piece, so that cloth is to spare;
// below zero beyond it, so that cloth is wanted.
type Misfit struct {
	Mean, Least, Most float64
	Places, Of        int // places of the form's seam that the cloth reaches, of those looked at
}

// True trues the front p, which hangs as the sheet s on the form f held by the
// pins. A seam without marks and a piece that its lines do not make are errors; a
// waist that no pin holds follows the side seam and stays what it was on CF.
func True(s mesh.Sheet, f *form.Form, p draft.Cowl, pins []Pin, o Options) (Trued, error) {
	c := newCarrier(&s)
	lines := p.Lines()
	all := seamsOf(lines, f, p, pins)
	var t Trued
	moves := map[string]move{}
	for i := range all {
		m := &all[i]
		m.misfit = m.fit(c)
		switch {
		case o.Mark == ByForm:
			m.marks = m.formMarks(c)
		default:
			m.marks = m.pinMarks(c, pins)
		}
		if len(m.marks) == 0 && m.pinned {
			return Trued{}, fmt.Errorf("truing: no mark of the %s could be carried back: the front hangs off the form there",
				m.name)
		}
		moves[m.name] = m.moved(o.Half)
	}
	if len(all[len(all)-1].marks) == 0 {
		moves[all[len(all)-1].name] = move{a: moves["side seam"].b}
	}
	clean := redraw(lines, moves, p.LowerEdge())
	p.Pleats = movedPleats(p, clean.Shoulder)
	trued, err := p.Redrawn(clean)
	if err != nil {
		return Trued{}, fmt.Errorf("truing: %w", err)
	}
	t.Cowl = trued
	after := trued.Lines()
	for i, line := range [][]r2.Vec{after.Shoulder, after.Armhole, after.Side, after.Waist} {
		t.Seams = append(t.Seams, all[i].report(line, o.Half))
	}
	t.Apex = apexOff(c, f, p)
	return t, nil
}

// apexOff carries the apex of the form to the cloth on both sides.
func apexOff(c carrier, f *form.Form, p draft.Cowl) float64 {
	var sum float64
	for _, side := range []float64{1, -1} {
		at := c.foot(f.Apex(side)).flat
		sum += r2.Norm(r2.Sub(r2.Vec{X: side * at.X, Y: at.Y}, p.Apex)) / 2
	}
	return sum
}
