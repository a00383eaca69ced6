// Package layplan lays the pieces of a style on cloth and tells whether they fit, how much cloth it
// takes, and on which width and grain it would take least. Start at [Of].
package layplan

import (
	"errors"
	"math"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/marker"
	"cowl/mesh/paper"
)

// Plan is how pieces lie on cloth, with the other widths and grains that were looked at.
type Plan struct {
	Style   style.Style
	Pieces  []paper.Piece
	Nominal float64         // width as sold, m; 0: only the usable width was given
	Shown   marker.Marker   // on the chosen width
	Err     error           // why it does not fit there
	Joined  *marker.Marker  // with a corner joined on, where it fits only so
	Widths  []marker.Choice // on the grain of the style, standard widths
	Grains  []marker.Choice // every grain on every width
}

// Of lays the pieces of s, cut on a grain (rad), on all standard widths of the cloth c, whose own
// width is not looked at, and shows the cheapest. On other grains no corner is joined on.
func Of(s style.Style, pieces []paper.Piece, grain float64, c marker.Cloth) (*Plan, error) {
	p := &Plan{Style: s, Pieces: pieces}
	var err error
	if p.Widths, err = marker.Choices(pieces, marker.Widths(), []float64{grain}, c); err != nil {
		return nil, err
	}
	c.Join = false
	if p.Grains, err = marker.Choices(pieces, marker.Widths(), sweep(grain), c); err != nil {
		return nil, err
	}
	best, ok := marker.Cheapest(p.Widths)
	if !ok {
		best = p.Widths[len(p.Widths)-1]
	}
	p.Nominal, p.Shown, p.Err = best.Nominal, best.Marker, best.Err
	return p, nil
}

// sweep lists the grains that are looked at: the style's, and every 15°.
func sweep(own float64) []float64 {
	out := []float64{own}
	for d := 0; d <= 90; d += 15 {
		if g := float64(d) * math.Pi / 180; math.Abs(g-math.Abs(own)) > 1e-6 {
			out = append(out, g)
		}
	}
	return out
}

// Narrowest and Widest bound the usable width of a cloth, m.
const (
	Narrowest = 0.20
	Widest    = 3.20
)

// On shows the pieces on the cloth c instead; nominal is its width as sold, m, 0 where only the
// usable one is known. Cloth that is too narrow for them is told of by Err.
func (p *Plan) On(nominal float64, c marker.Cloth) error {
	p.Nominal = nominal
	p.Shown, p.Err = marker.On(p.Pieces, c)
	if p.Err == nil {
		return nil
	}
	if !errors.Is(p.Err, marker.ErrTooWide) {
		return p.Err
	}
	p.Shown.Cloth = c
	if !c.Join {
		c.Join = true
		if with, err := marker.On(p.Pieces, c); err == nil {
			p.Joined = &with
		}
	}
	return nil
}
