package main

import (
	"fmt"

	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/export/gltf"
	"cowl/mesh/form"
	"cowl/mesh/surface"
	"cowl/sim/drape"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// madeOf is a drape with what it was made from: all that is needed to draw it and to
// read its section.
type madeOf struct {
	style style.Style
	piece draft.Piece
	form  *form.Form
	run   *drape.Run
	toile bool             // drawn with grain lines instead of the look of the fabric
	skin  *surface.Surface // see smooth
}

// scene is what is drawn: cloth, form and a numbered mark on every counted
// fold. The numbers are those of the section.
func (h *madeOf) scene() stage.Scene {
	s := stage.Scene{Cloth: h.run.Drape.Sheet(), Smooth: h.smooth(), FoldY: h.piece.FoldY, Grain: h.piece.Grain}
	if !h.toile {
		s.Look.Own = h.style.Fabric.Look
	}
	surface := h.form.Surface()
	s.Form, s.Seams = &surface, h.form.SeamLines()
	if h.style.Hang.Free {
		surface = stage.Hanger(h.form.Shoulder(1), h.form.Shoulder(-1))
		s.Seams, s.Look.Form = nil, stage.Wood
	}
	for _, f := range h.run.Reading.Folds {
		if f.Zone == fold.AboveBust {
			at := h.onCentre(h.piece.FoldY - f.CF)
			s.Marks = append(s.Marks, stage.Mark{At: at, Number: len(s.Marks) + 1})
		}
	}
	return s
}

// cloth is the look of the fabric for files of the open standard.
func (h *madeOf) cloth() gltf.Cloth {
	if h.toile {
		return gltf.Cloth{}
	}
	return stage.ForFile(h.style.Fabric.Look, h.piece.Grain)
}

// smooth is the cloth as it is drawn, made once.
func (h *madeOf) smooth() *surface.Surface {
	if h.skin == nil {
		s := surface.Smooth(h.run.Drape.Sheet(), surface.Options{FoldY: h.piece.FoldY})
		h.skin = &s
	}
	return h.skin
}

// section is the cut through the centre front. The facing is followed from the
// edge to its free edge, or to where the lattice that stands for it ends.
func (h *madeOf) section() stage.Section {
	var s stage.Section
	for _, q := range h.run.Reading.Section {
		s.Cloth = append(s.Cloth, q.At)
	}
	const step = 0.001 // m
	for t := 0.0; t <= h.piece.Facing; t += step {
		p, ok := h.locate(h.piece.FoldY + t)
		if !ok {
			break
		}
		s.Facing = append(s.Facing, r2.Vec{X: p.Z, Y: p.Y})
	}
	if !h.style.Hang.Free {
		for _, p := range h.form.CF() {
			s.Form = append(s.Form, r2.Vec{X: p.Z, Y: p.Y})
		}
	}
	for _, f := range h.run.Reading.Folds {
		s.Folds = append(s.Folds, stage.SectionFold{
			At: f.At, DepthMM: f.Depth * 1000, CFmm: f.CF * 1000, Counted: f.Zone == fold.AboveBust,
		})
	}
	return s
}

// onCentre returns where the place of the flat centre front at height y lies.
// Folds are read off the cloth, so it panics where there is none.
func (h *madeOf) onCentre(y float64) r3.Vec {
	p, ok := h.locate(y)
	if !ok {
		panic(fmt.Sprintf("cowl: the centre front at %.1f cm lies off the cloth", y*100))
	}
	return p
}

// locate is onCentre; false off the clotm.
func (h *madeOf) locate(y float64) (r3.Vec, bool) {
	d := h.run.Drape
	p, ok := d.Lattice.Locate(r2.Vec{Y: y})
	if !ok {
		return r3.Vec{}, false
	}
	return p.At(d.State.Pos), true
}

// boundsOf returns how far below the shoulder neck points the edge of the flat
// piece would hang alone in an upright plane, m: in a hanging curve and in a V.
func boundsOf(p draft.Piece) (curve, v float64) {
	r := p.Report()
	down := p.Block.Neck.Y - p.Block.CowlPoint(p.CowlPoint).Y
	return down + r.DropChain, down + r.DropV
}
