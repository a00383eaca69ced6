package main

import (
	"cowl/mesh/truing"
	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r2"
)

// pinsOf lists the pins that hold a drape: all holds that have not let go.
func pinsOf(d *drape.Drape) []truing.Pin {
	var out []truing.Pin
	for k, h := range d.System.Holds {
		if d.State.Grip[k] == 0 {
			continue
		}
		var flat r2.Vec
		for i, n := range h.Point.Node {
			flat = r2.Add(flat, r2.Scale(h.Point.Weight[i], d.Lattice.Rest[n]))
		}
		out = append(out, truing.Pin{Seam: h.Name, Flat: flat, At: d.State.Target[k]})
	}
	return out
}
