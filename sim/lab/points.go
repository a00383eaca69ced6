package lab

import (
	"math"

	"cowl/sim"
)

// Points estimates how many crossings the lattice of the strip will have, so that its
// memory is known before it is laid; without a length, that of the first strip tried. A
// setup that is out of range, and will be refused, has none.
func (b BendSetup) Points(s sim.Stiffness) float64 {
	c := GravityLength(s, b.Grain)
	if b.Length == 0 {
		b.Length = 2 * c
	}
	if b.Width == 0 {
		b.Width = 0.025
	}
	h := b.lattices(c)
	return crossings(b.check(), 2*b.Length*b.Width, h[len(h)-1])
}

// Points is as that of a cantilever, for a strip under load.
func (p TensileSetup) Points(sim.Stiffness) float64 {
	p.defaults()
	return crossings(p.check(), p.Length*p.Width, p.Spacing)
}

// Points is as that of a cantilever, for the finest lattice of a hung sheet.
func (h HangSetup) Points(sim.Stiffness) float64 {
	h.defaults()
	return crossings(h.check(), h.Width*h.Height, h.Spacing)
}

// Points is as that of a cantilever, for the finest lattice of a disc.
func (d DiscSetup) Points(s sim.Stiffness) float64 {
	d.defaults(s)
	h := d.Spacing
	if d.Fine {
		h /= 2
	}
	return crossings(d.check(), math.Pi/4*d.Specimen*d.Specimen, h)
}

// Points is as that of a cantilever, for a swag: a flat between chains of two lengths.
func (w SwagSetup) Points(sim.Stiffness) float64 {
	w.defaults()
	if w.check() != nil {
		return 0
	}
	d := w.draft()
	return crossings(nil, (d.chain(0).half+d.chain(d.flat).half)*d.flat, w.Spacing)
}

// Points is as that of a cantilever, for a heart loop.
func (p LoopSetup) Points(s sim.Stiffness) float64 {
	p.defaults()
	return crossings(p.check(), p.Length*p.Width, p.spacing(GravityLength(s, p.Grain)))
}

// crossings of cloth of an area (m²) so far apart, m; none of a setup that is wrong.
func crossings(wrong error, area, spacing float64) float64 {
	if wrong != nil {
		return 0
	}
	return area / (spacing * spacing)
}
