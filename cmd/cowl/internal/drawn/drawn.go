// Package drawn is a drape with what it was made from, as it is drawn: the scene and the
// section through its centre front. Start at [Drape].
package drawn

import (
	"fmt"
	"sync"

	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh"
	"cowl/mesh/draft"
	"cowl/mesh/export/gltf"
	"cowl/mesh/form"
	"cowl/mesh/surface"
	"cowl/sim/drape"
	"cowl/sim/fault"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Stager opens what pictures are drawn on, or says why nothing can be drawn.
type Stager func() (*stage.Stage, error)

// Drape is a drape with what it was made from: all that is needed to draw it and to
// read its section.
type Drape struct {
	Style style.Style
	Cowl  draft.Cowl
	Form  *form.Form
	Run   *drape.Run
	Toile bool                    // drawn with grain lines instead of the look of the fabric
	skin  func() *surface.Surface // see Smooth
}

// Scene is what is drawn: cloth, form and a numbered mark on every counted
// fold. The numbers are those of the section.
func (h *Drape) Scene() stage.Scene {
	s := stage.Scene{Cloth: h.Run.Drape.Sheet(), Smooth: h.smoothing(), FoldY: h.Cowl.FoldY, Grain: h.Cowl.Grain}
	if !h.Toile {
		s.Look.Own = h.Style.Fabric.Look
	}
	surface := h.Form.Surface()
	s.Form, s.Seams = &surface, h.Form.SeamLines()
	if h.Style.Hang.Free {
		surface = Hanger(h.Form, h.Cowl.CowlPoint)
		s.Seams, s.Look.Form = nil, stage.Wood
	}
	for _, f := range h.Run.Reading.Folds {
		if f.Zone == fold.AboveBust {
			at := h.onCentre(h.Cowl.FoldY - f.CF)
			s.Marks = append(s.Marks, stage.Mark{At: at, Number: len(s.Marks) + 1})
		}
	}
	return s
}

// beyond is how far the arms of a hanger reach beyond the cowl points, m. The cloth is
// held there alone: of longer arms the rest of the shoulder would hang down behind.
const beyond = 0.008

// Hanger is what cloth hangs from in place of the form; cowlPoint is m from the neck.
func Hanger(f *form.Form, cowlPoint float64) mesh.Surface {
	var arms [2][]r3.Vec
	for k, side := range [2]float64{1, -1} {
		const points = 4
		for i := range points {
			arms[k] = append(arms[k], f.ShoulderPoint(side, (cowlPoint+beyond)*float64(i)/(points-1)))
		}
	}
	return stage.Hanger(arms[0], arms[1])
}

// Cloth is the look of the fabric for files of the open standard.
func (h *Drape) Cloth() gltf.Cloth {
	if h.Toile {
		return gltf.Cloth{}
	}
	return stage.ForFile(h.Style.Fabric.Look, h.Cowl.Grain)
}

// Open starts drawing. Meanwhile, and while the stage draws what needs the lattice alone,
// the cloth is made smooth, which takes as long.
func (h *Drape) Open(draw Stager) (*stage.Stage, error) {
	smooth := h.smoothing()
	go func() {
		defer fault.Tell()
		smooth()
	}()
	return draw()
}

// Smooth is the cloth as it is drawn, made once.
func (h *Drape) Smooth() *surface.Surface { return h.smoothing()() }

// smoothing returns what waits for the smooth cloth, on any goroutine.
func (h *Drape) smoothing() func() *surface.Surface {
	if h.skin == nil {
		sheet, o := h.Run.Drape.Sheet(), surface.Options{FoldY: h.Cowl.FoldY}
		h.skin = sync.OnceValue(func() *surface.Surface {
			s := surface.Smooth(sheet, o)
			return &s
		})
	}
	return h.skin
}

// Section is the cut through the centre front of the cloth as it is drawn. Its
// folds are those that were read off the lattice.
func (h *Drape) Section() stage.Section {
	s := stage.Section{Worn: h.Cowl.Worn}
	s.Cloth, s.Facing = fold.Centre(&h.Smooth().Sheet, h.Cowl.FoldY)
	if !h.Style.Hang.Free {
		for _, p := range h.Form.CF() {
			s.Form = append(s.Form, r2.Vec{X: p.Z, Y: p.Y})
		}
	}
	for _, f := range h.Run.Reading.Folds {
		s.Folds = append(s.Folds, stage.SectionFold{
			At: f.At, DepthMM: f.Depth * 1000, CFmm: f.CF * 1000, Counted: f.Zone == fold.AboveBust,
		})
	}
	return s
}

// onCentre returns where the place of the flat centre front at height y lies.
// Folds are read off the cloth, so it panics where there is none.
func (h *Drape) onCentre(y float64) r3.Vec {
	p, ok := h.locate(y)
	if !ok {
		panic(fmt.Sprintf("cowl: the centre front at %.1f cm lies off the cloth", y*100))
	}
	return p
}

// locate is onCentre; false off the clotm.
func (h *Drape) locate(y float64) (r3.Vec, bool) {
	d := h.Run.Drape
	p, ok := d.Lattice.Locate(r2.Vec{Y: y})
	if !ok {
		return r3.Vec{}, false
	}
	return p.At(d.State.Pos), true
}
