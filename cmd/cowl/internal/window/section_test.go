//go:build cgo

package window

import (
	"math"

	"cowl/mesh"
	"cowl/mesh/surface"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
)

// The section is a smooth curve whether the cloth moves or rests: on the lattice it turns
// at every crossing, the curve through it a little at a time. At rest it is that of the surface which is drawn.
func sectionSmooth(d *drive) {
	d.shown()
	var sheet mesh.Sheet
	var foldY float64
	var rests, moves centreCut
	var slow bool
	d.ask(func(a *App) {
		p := a.pane()
		sheet, foldY, rests, slow = p.sheetNow(), p.view().Hung.FoldY, p.cutNow(), a.slow
		moves = cutCentre(&sheet, foldY, 0)
	})
	lattice, _ := fold.Centre(&sheet, foldY)
	const edge = 0.03 // m, of a line from its top: round the edge it turns sharply
	if got := mostTurn(lattice, edge); got < 0.12 {
		d.Fatalf("on the lattice the section turns by %.3f rad at most, want more: nothing is tried", got)
	}
	for name, c := range map[string]centreCut{"while the cloth moves": moves, "at rest": rests} {
		if got := mostTurn(c.front, edge); got > 0.06 {
			d.Errorf("%s the section turns by %.3f rad from one step to the next, want 0.06 at most", name, got)
		}
	}
	o := surface.Options{FoldY: foldY}
	if slow {
		o.Part = slowPart
	}
	drawn := surface.Smooth(sheet, o)
	want := cutCentre(&drawn.Sheet, foldY, 0)
	if len(want.front) < 50 || len(want.front) != len(rests.front) {
		d.Fatalf("at rest the section has %d places, that of the surface %d, want as many and 50 or more", len(rests.front),
			len(want.front))
	}
	for k, p := range rests.front {
		if off := r2.Norm(r2.Sub(p, want.front[k])); off > 1e-9 {
			d.Fatalf("at rest place %d of the section lies %.3g mm off the surface that is drawn", k, off*1000)
		}
	}
}

// mostTurn is the largest angle, rad, by which a line turns at one of its places, beyond
// skip m from its beginning.
func mostTurn(line []r2.Vec, skip float64) float64 {
	most, way := 0.0, 0.0
	for k := 1; k+1 < len(line); k++ {
		in, out := r2.Sub(line[k], line[k-1]), r2.Sub(line[k+1], line[k])
		if way += r2.Norm(in); way > skip {
			most = max(most, math.Abs(math.Atan2(r2.Cross(in, out), r2.Dot(in, out))))
		}
	}
	return most
}
