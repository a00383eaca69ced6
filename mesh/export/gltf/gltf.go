// Package gltf writes a draped sheet, and the form under it, as one binary
// glTF 2.0 file (GLB), which any viewer of the open standard can show.
//
// glTF is right-handed with Y up and the front of a thing facing +Z, in
// metres (Khronos Group, glTF 2.0 Specification, 2021, §3.4), which is how
// package mesh holds space: nothing is turned or scaled. TEXCOORD_0 holds the
// place in the flat piece: u = X m, v = -Y m (glTF runs v downward), so a
// repeating texture that covers one metre lies on the grain of the piece.
// Start at Write.
package gltf

import (
	"fmt"
	"io"
	"math"

	"cowl/mesh"
	"cowl/mesh/surface"

	"gonum.org/v1/gonum/spatial/r3"
)

// Caution is stored in asset.extras of every file.
const Caution = "Computed estimate of how the cloth may hang, not a record of a real garment. Toile before cutting."

// Options are the words stored in the file, and what the cloth looks like.
type Options struct {
	Title string // name of the scene; may be empty
	Cloth Cloth  // zero: matt ecru
}

// Write writes the cloth s, and the form unless it is nil, to w as one GLB.
// The cloth is one node with one double-sided primitive for the front and one
// for the self-facing (where there is one); the form is a second node. A place
// that is not finite, as a run that diverged leaves, is an error; slices of s
// or form that do not match in length are a programmer's error and panic.
func Write(w io.Writer, s surface.Surface, form *mesh.Surface, o Options) error {
	checkLengths(&s, form)
	if err := checkFinite("cloth", s.Pos); err != nil {
		return err
	}
	if len(s.Tris) == 0 {
		return fmt.Errorf("gltf: cloth has 0 triangles, want at least 1")
	}
	b := newBuilder(o.Title, o.Cloth)
	b.addCloth(s)
	if form != nil && len(form.Tris) > 0 {
		if err := checkFinite("form", form.Pos); err != nil {
			return err
		}
		b.addForm(form)
	}
	return b.write(w)
}

func checkLengths(s *surface.Surface, form *mesh.Surface) {
	if len(s.Flat) != len(s.Pos) || len(s.Normal) != len(s.Pos) || len(s.Facing) != len(s.Tris) {
		panic(fmt.Sprintf("gltf: sheet has %d flat and %d space places, %d normals, %d triangles and %d facing marks",
			len(s.Flat), len(s.Pos), len(s.Normal), len(s.Tris), len(s.Facing)))
	}
	if form != nil && len(form.Normal) != len(form.Pos) {
		panic(fmt.Sprintf("gltf: form has %d places and %d normals", len(form.Pos), len(form.Normal)))
	}
}

func checkFinite(what string, pos []r3.Vec) error {
	for i, p := range pos {
		if sum := p.X + p.Y + p.Z; math.IsNaN(sum) || math.IsInf(sum, 0) {
			return fmt.Errorf("gltf: %s: vertex %d at (%g, %g, %g) m, want finite numbers", what, i, p.X, p.Y, p.Z)
		}
	}
	return nil
}
