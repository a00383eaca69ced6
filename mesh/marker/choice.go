package marker

import (
	"errors"
	"math"

	"cowl/mesh/paper"

	"gonum.org/v1/gonum/spatial/r2"
)

// Choice is one width and grain that was looked at.
type Choice struct {
	Nominal float64 // m; 0 where only the usable width is known
	Grain   float64 // rad, of the pieces that follow the first one's grain
	Marker  Marker  // Marker.Length is 0 where it does not fit
	Err     error   // why it does not fit
}

// Bought returns the cloth that is paid for, m²: width as sold by length.
func (c Choice) Bought() float64 {
	return math.Max(c.Nominal, c.Marker.Cloth.Width) * c.Marker.Length
}

// Choices lays the pieces on every width (nominal, m) and grain (rad). The
// first piece and all that share its grain are turned to each grain; others
// keep their own.
func Choices(pieces []paper.Piece, widths, grains []float64, c Cloth) ([]Choice, error) {
	var out []Choice
	for _, g := range grains {
		turned := onGrain(pieces, g)
		for _, w := range widths {
			at := c
			at.Width = Usable(w)
			l, err := On(turned, at)
			if err != nil && !errors.Is(err, ErrTooWide) {
				return nil, err
			}
			out = append(out, Choice{Nominal: w, Grain: g, Marker: l, Err: err})
		}
	}
	return out, nil
}

// onGrain returns copies of the pieces with the first one's grain changed to g.
func onGrain(pieces []paper.Piece, g float64) []paper.Piece {
	out := make([]paper.Piece, len(pieces))
	copy(out, pieces)
	for i := range out {
		if math.Abs(pieces[i].Grain()-pieces[0].Grain()) < 1e-6 {
			out[i].GrainLine = leaning(out[i].GrainLine, g)
		}
	}
	return out
}

// leaning turns a grain line about its middle to the angle g.
func leaning(line [2]r2.Vec, g float64) [2]r2.Vec {
	mid := r2.Scale(0.5, r2.Add(line[0], line[1]))
	half := r2.Scale(r2.Norm(r2.Sub(line[1], line[0]))/2, r2.Vec{X: math.Sin(g), Y: math.Cos(g)})
	return [2]r2.Vec{r2.Sub(mid, half), r2.Add(mid, half)}
}

// Cheapest returns the choice that takes the least cloth, false if none fits.
// Of equal ones it takes the first.
func Cheapest(all []Choice) (Choice, bool) {
	var best Choice
	found := false
	for _, c := range all {
		if c.Err == nil && (!found || c.Bought() < best.Bought()-1e-9) {
			best, found = c, true
		}
	}
	return best, found
}
