//go:build cgo

package stage

import (
	"cowl/materials/look"
	"cowl/mesh"
	"cowl/mesh/surface"
	"cowl/shaders"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// Sides of the depth maps in texels, over a form of about a metre: the key light needs
// half a millimetre, or its shadows have teeth; the sky 2 mm.
const (
	keySide = 2048
	skySide = 512
)

const (
	keyUnit = 0 // texture unit of the key light
	skyUnit = 1 // texture unit of the sky
)

// Painter holds the programs and depth maps for drawing into whatever OpenGL
// context is current: that of a Stage, or of a window. All its methods belong
// on the thread of that context.
type Painter struct {
	cloth, form, line, depth program
	look                     program // at the sky
	sheer                    program // depth of sheer cloth
	quickCloth, quickForm    program
	vertexCloth              program
	key, sky                 depthMap
	skyForm                  depthMap // of the form alone
	skyFormOf                skyForm
	looks                    int   // at the sky
	shade                    shade // in key
	skyDirs                  []r3.Vec
	ends                     ribbons // as drawn last
}

// shade is what a depth map of the key light was drawn of.
type shade struct {
	l     *Loaded
	cloth buffer
	view  mat4
	sheer float64
}

// NewPainter prepares drawing in the current context, in which the OpenGL
// functions are already loaded. It fails where the driver refuses a shader.
func NewPainter() (*Painter, error) {
	p := &Painter{skyDirs: skyDirections(shaders.SkyCount)}
	for _, s := range []struct {
		dst *program
		src shaders.Source
	}{
		{&p.cloth, shaders.Cloth()}, {&p.form, shaders.Form()}, {&p.line, shaders.Line()}, {&p.depth, shaders.Depth()},
		{&p.sheer, shaders.SheerDepth()},
		{&p.quickCloth, shaders.QuickCloth()}, {&p.quickForm, shaders.QuickForm()},
		{&p.vertexCloth, shaders.VertexCloth()},
	} {
		linked, err := link(s.src)
		if err != nil {
			return nil, err
		}
		*s.dst = linked
	}
	var err error
	if p.look, err = link(shaders.SkyLook(), "sky"); err != nil {
		return nil, err
	}
	p.key, p.sky, p.skyForm = newDepthMap(keySide, 1), newDepthMap(skySide, shaders.SkyCount),
		newDepthMap(skySide, shaders.SkyCount)
	return p, nil
}

// Release frees what the painter holds in the driver.
func (p *Painter) Release() {
	for _, prog := range []program{p.cloth, p.form, p.line, p.depth, p.sheer, p.look, p.quickCloth, p.quickForm,
		p.vertexCloth} {
		gl.DeleteProgram(uint32(prog))
	}
	p.key.release()
	p.sky.release()
	p.skyForm.release()
}

// Loaded is a scene in the memory of the driver.
type Loaded struct {
	scene       Scene
	look        Look
	box         r3.Box // of cloth and form
	formBox     r3.Box
	room        r3.Box // holds box, and changes seldom while the cloth moves
	cloth, form buffer
	verts       []float32 // of the cloth, as last sent
	pos         []r3.Vec  // m, where Move put the cloth
	values      []float64 // of a map, one a vertex of the cloth; none: no map
	seams       [][]seamPoint
	rims        [][]int32
	open        []float32 // what the vertices of the cloth see of the sky, two numbers each; nil: not known
	sky         int       // that the form sees, counted; 0: not known
	moved       bool      // since the key light was last drawn
	smooth      *smoothed // nil: the cloth has moved since, or was never smoothed
}

// Fine is a smooth surface with what is drawn along its rims, ready for a driver.
type Fine struct {
	surface.Surface
	rims [][]int32
}

// NewFine makes a smooth surface ready; any goroutine may do so.
func NewFine(s surface.Surface) Fine { return Fine{s, chained(rims(&s.Sheet, true))} }

// smoothed is the smooth surface of the cloth in the memory of the driver.
type smoothed struct {
	Fine
	cloth buffer
}

// Load copies a scene to the driver. It fails where a place is not a finite
// number.
func (p *Painter) Load(s Scene) (*Loaded, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	l := &Loaded{scene: s, look: s.Look.withDefaults(), seams: sinkSeams(s.Seams, s.Form),
		rims: chained(rims(&s.Cloth, false))}
	l.verts = clothVertices(nil, &s.Cloth, s.Cloth.Normals(), s.Grain, nil)
	l.cloth = upload(l.verts, indices(s.Cloth.Tris), clothParts...)
	l.formBox = Bounds(nil)
	if s.Form != nil {
		l.form = upload(formVertices(s.Form), indices(s.Form.Tris), 3, 3)
		l.formBox = Bounds(s.Form.Pos)
	}
	l.setBox(Bounds(s.Cloth.Pos))
	return l, nil
}

// Smooth lays a smooth surface over the cloth of l where it lies now, to be
// painted instead of its lattice, with the values of a map that Move was given.
// Move takes it away.
func (p *Painter) Smooth(l *Loaded, s Fine) {
	l.roughen()
	l.moved = true
	l.smooth = &smoothed{Fine: s}
	var values []float64
	if len(l.values) > 0 {
		values = s.Carry(l.values)
	}
	l.smooth.cloth = upload(clothVertices(nil, &s.Sheet, s.Normal, l.scene.Grain, values), indices(s.Tris), clothParts...)
	l.smooth.see(l.open)
}

// see carries what the vertices of the sheet see of the sky over.
func (s *smoothed) see(open []float32) {
	if len(open) == 0 {
		return
	}
	var sides [2][]float64
	for k := range sides {
		values := make([]float64, len(open)/2)
		for i := range values {
			values[i] = float64(open[2*i+k])
		}
		sides[k] = s.Carry(values)
	}
	out := make([]float32, 0, 2*len(s.Pos))
	for i := range s.Pos {
		out = append(out, float32(sides[0][i]), float32(sides[1][i]))
	}
	s.cloth.see(out)
}

// Dress changes what the cloth of l looks like; the zero Look is that of a toile.
func (l *Loaded) Dress(own look.Look) {
	if l.scene.Look.Own == own {
		return
	}
	if l.scene.Look.Own.Sheer != own.Sheer {
		l.open = nil // another shadow on the sky
	}
	l.scene.Look.Own = own
	l.look = l.scene.Look.withDefaults()
}

// roughen takes the smooth surface away.
func (l *Loaded) roughen() {
	if l.smooth != nil {
		l.smooth.cloth.release()
		l.smooth = nil
	}
}

// Move puts the cloth of a loaded scene elsewhere: pos in m, one a vertex, and
// the values of a map, one a vertex or nil. Vertices and triangles stay as they
// were loaded. It fails, and leaves the scene as it is, where a place is not a
// finite number.
func (p *Painter) Move(l *Loaded, pos []r3.Vec, values []float64) error {
	if len(pos) != len(l.scene.Cloth.Pos) {
		panic("stage: one place a vertex is wanted")
	}
	box := Bounds(pos)
	if err := finite(pos); err != nil {
		return err
	}
	l.pos, l.values = append(l.pos[:0], pos...), append(l.values[:0], values...)
	l.scene.Cloth.Pos = l.pos
	l.roughen()
	l.verts = clothVertices(l.verts, &l.scene.Cloth, l.scene.Cloth.Normals(), l.scene.Grain, values)
	l.cloth.refill(l.verts)
	l.setBox(box)
	l.open, l.sky, l.moved = nil, 0, true
	l.cloth.see(nil)
	l.form.see(nil)
	return nil
}

// spare is by how much more room is made than is wanted, m.
const spare = 0.05

// setBox takes note of where the cloth lies.
func (l *Loaded) setBox(cloth r3.Box) {
	l.box = union(cloth, l.formBox)
	if union(l.box, l.room) != l.room {
		pad := r3.Vec{X: spare, Y: spare, Z: spare}
		l.room = r3.Box{Min: r3.Sub(l.box.Min, pad), Max: r3.Add(l.box.Max, pad)}
	}
}

// Release frees what the scene holds in the driver.
func (l *Loaded) Release() {
	l.moved = true
	l.roughen()
	l.cloth.release()
	l.form.release()
}

// skyForm is what the depth maps of the sky were drawn of that hold the form alone.
type skyForm struct {
	form *mesh.Surface
	box  r3.Box
}
