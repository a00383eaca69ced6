// Package stage draws the draped sheet on its form with OpenGL 4.1, off
// screen and without a display, and puts the pictures on one sheet together
// with a section through the centre front (CF). It is the only package with
// OpenGL; without cgo it still builds, and New says so. Space is that of
// package mesh. Start at New and Stage.Draw.
package stage

import (
	"errors"
	"fmt"
	"math"

	"cowl/mesh"
	"cowl/mesh/surface"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrNoDrawing is wrapped by every error that says why nothing can be drawn on
// this machine or by this binary.
var ErrNoDrawing = errors.New("no drawing")

// Scene is what is drawn.
type Scene struct {
	Cloth  mesh.Sheet
	Smooth func() *surface.Surface // through Cloth, once it is made; nil: made where a picture is drawn
	Form   *mesh.Surface           // nil: the cloth alone
	Seams  [][]r3.Vec              // m, polylines on the form, drawn thin and dark
	FoldY  float64                 // m, flat height of the line where the self-facing folds in
	Grain  float64                 // rad, from CF to warp: the warp runs along (sin, cos) in the flat piece
	Look   Look                    // zero: the default look
	Marks  []Mark                  // numbered points, drawn over the picture
}

// Mark is a numbered point in space, such as the crest of a fold.
type Mark struct {
	At     r3.Vec // m
	Number int
}

// Bounds returns the box round the places of a sheet or a form, in m.
func Bounds(pos []r3.Vec) r3.Box {
	lo, hi := math.Inf(-1), math.Inf(1)
	b := r3.Box{Min: r3.Vec{X: hi, Y: hi, Z: hi}, Max: r3.Vec{X: lo, Y: lo, Z: lo}}
	for _, p := range pos {
		b.Min = r3.Vec{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y), Z: min(b.Min.Z, p.Z)}
		b.Max = r3.Vec{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y), Z: max(b.Max.Z, p.Z)}
	}
	return b
}

// smooth returns the smooth surface through the cloth, and may wait for it.
func (s *Scene) smooth() surface.Surface {
	if s.Smooth != nil {
		return *s.Smooth()
	}
	return surface.Smooth(s.Cloth, surface.Options{FoldY: s.FoldY})
}

// places lists every vertex of cloth and form.
func (s *Scene) places() []r3.Vec {
	all := append([]r3.Vec(nil), s.Cloth.Pos...)
	if s.Form != nil {
		all = append(all, s.Form.Pos...)
	}
	return all
}

// check refuses what a run that diverged leaves behind. Slices that do not
// match in length are a programmer's error and panic.
func (s *Scene) check() error {
	if len(s.Cloth.Flat) != len(s.Cloth.Pos) {
		panic(fmt.Sprintf("stage: cloth has %d flat and %d space places", len(s.Cloth.Flat), len(s.Cloth.Pos)))
	}
	if s.Form != nil && len(s.Form.Normal) != len(s.Form.Pos) {
		panic(fmt.Sprintf("stage: form has %d places and %d normals", len(s.Form.Pos), len(s.Form.Normal)))
	}
	if len(s.Cloth.Tris) == 0 {
		return errors.New("stage: cloth has 0 triangles, want at least 1")
	}
	return finite(s.places())
}

// finite refuses places that are no numbers.
func finite(pos []r3.Vec) error {
	for i, p := range pos {
		if sum := p.X + p.Y + p.Z; math.IsNaN(sum) || math.IsInf(sum, 0) {
			return fmt.Errorf("stage: vertex %d at (%g, %g, %g) m, want finite numbers", i, p.X, p.Y, p.Z)
		}
	}
	return nil
}

// union returns the box round two boxes; that of no places adds nothing.
func union(a, b r3.Box) r3.Box {
	return Bounds([]r3.Vec{
		{X: min(a.Min.X, b.Min.X), Y: min(a.Min.Y, b.Min.Y), Z: min(a.Min.Z, b.Min.Z)},
		{X: max(a.Max.X, b.Max.X), Y: max(a.Max.Y, b.Max.Y), Z: max(a.Max.Z, b.Max.Z)},
	})
}
