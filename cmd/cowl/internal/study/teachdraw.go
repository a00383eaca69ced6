package study

import (
	"fmt"

	"cowl/cmd/cowl/internal/study/page"

	"gonum.org/v1/gonum/spatial/r2"
)

// layouts draws the piece on the cloth at every angle.
func layouts(rs []caseResult) []page.Card {
	var out []page.Card
	for _, c := range rs {
		card := page.Card{Title: c.Name}
		if c.wrong != nil {
			card.Missing = c.wrong.Error()
			out = append(out, card)
			continue
		}
		var outline [][2]float64
		for _, q := range c.cowl.Outline {
			outline = append(outline, onCloth(q, c.cowl.Grain))
		}
		waist := c.cowl.Waist[len(c.cowl.Waist)-1]
		card.Drawing = page.Layout{
			Title: fmt.Sprintf("the piece with its centre front at %s to the warp", c.Name), Outline: outline,
			Line: [][2]float64{onCloth(waist, c.cowl.Grain), onCloth(r2.Vec{Y: c.cowl.FoldY + c.cowl.Facing}, c.cowl.Grain)},
			Fold: [][2]float64{onCloth(r2.Vec{X: -c.cowl.HalfEdge, Y: c.cowl.FoldY}, c.cowl.Grain),
				onCloth(r2.Vec{X: c.cowl.HalfEdge, Y: c.cowl.FoldY}, c.cowl.Grain)},
		}
		out = append(out, card)
	}
	return out
}

// onCloth turns a place of the piece into mm across and along the cloth, warp
// upright.
func onCloth(q r2.Vec, grain float64) [2]float64 {
	p := r2.Rotate(q, grain, r2.Vec{})
	return [2]float64{p.X * 1000, p.Y * 1000}
}
