package drape

import (
	"math"
	"slices"

	"cowl/mesh"
	"cowl/sim/contact"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r3"
)

// Sheet returns the cut cloth as it lies.
func (d *Drape) Sheet() mesh.Sheet { return d.Skin.Sheet(d.State.Pos, d.Job.Cowl.FoldY) }

// frame says to the fold reader where piece and wearer are.
func (j Job) frame() fold.Frame {
	f := fold.Frame{
		FoldY: j.Cowl.FoldY, HalfEdge: j.Cowl.HalfEdge, WaistY: j.waistY(),
		NeckL: j.Form.NeckPoint(1), NeckR: j.Form.NeckPoint(-1), FrontNeck: j.Form.FrontNeck(), BustY: j.Form.Apex(1).Y,
	}
	if !j.Free {
		f.Clearance = func(p r3.Vec) float64 { d, _ := j.Form.Distance(p); return d }
		f.Front = j.Form.BridgedFront
	}
	return f
}

// Read reads the folds and measures of the drape off its sheet.
func (d *Drape) Read() (fold.Reading, error) {
	s := d.Sheet()
	return fold.Read(&s, d.Job.frame())
}

// Pierced counts the places where one layer passes through another.
func (d *Drape) Pierced() int {
	s := d.layers()
	return contact.Pierced(&s)
}

// layers is the sheet but for what lies beside a sewn dart: there the cloth is one fold,
// whose lips may slide over each other by a rim.
func (d *Drape) layers() mesh.Sheet {
	s := d.Sheet()
	sewn, open := dart(d.Job.Cowl)
	if !open {
		return s
	}
	s.Tris = slices.DeleteFunc(slices.Clone(s.Tris), func(t [3]int32) bool {
		return slices.ContainsFunc(t[:], func(v int32) bool { return sewn.beside(s.Flat[v], d.Lattice.Spacing) })
	})
	return s
}

// PinPull returns the largest pull of a pin, N.
func (d *Drape) PinPull() float64 {
	var m float64
	for h, pull := range d.State.Pulls(d.System) {
		if h.Only == inSidePlane {
			continue // the back's pull
		}
		m = math.Max(m, r3.Norm(pull))
	}
	return m
}

// Inside returns how deep the cloth lies inside the form at the worst place, m; 0 if nowhere.
func (d *Drape) Inside() float64 {
	if d.Job.Free {
		return 0
	}
	var m float64
	for _, p := range d.Skin.Points {
		at, _ := d.Job.Form.Distance(p.At(d.State.Pos))
		m = math.Max(m, -at)
	}
	return m
}

// PinSlip returns how far the farthest pin was moved from the seam of the form
// so that the cloth lies smooth, m: the misfit of draft and form.
func (d *Drape) PinSlip() float64 {
	var m float64
	for k, p := range d.Job.pins() {
		m = math.Max(m, r3.Norm(r3.Sub(p.at, d.pins[k].at)))
	}
	return m
}
