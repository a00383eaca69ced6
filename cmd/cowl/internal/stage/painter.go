//go:build cgo

package stage

import (
	"cowl/shaders"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// Sides of the depth maps in texels: the key light needs about 0.5 mm, the sky
// 2 mm, over a form of about a metre.
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
	key, sky                 depthMap
	skyDirs                  []r3.Vec
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
	} {
		linked, err := link(s.src)
		if err != nil {
			return nil, err
		}
		*s.dst = linked
	}
	p.key, p.sky = newDepthMap(keySide, 1), newDepthMap(skySide, shaders.SkyCount)
	return p, nil
}

// Release frees what the painter holds in the driver.
func (p *Painter) Release() {
	for _, prog := range []program{p.cloth, p.form, p.line, p.depth} {
		gl.DeleteProgram(uint32(prog))
	}
	p.key.release()
	p.sky.release()
}

// Loaded is a scene in the memory of the driver. The sky of the last scene
// loaded lies in the painter, so only that one may be painted.
type Loaded struct {
	scene       Scene
	look        Look
	box         r3.Box
	cloth, form buffer
	seams       [][]seamPoint
	hems        []hem
	skyView     []mat4
}

// Load copies a scene to the driver and finds out what sky its vertices see.
// It fails where a place is not a finite number.
func (p *Painter) Load(s Scene) (*Loaded, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	l := &Loaded{scene: s, look: s.Look.withDefaults(), box: Bounds(s.places()), seams: sinkSeams(s.Seams, s.Form), hems: hems(&s.Cloth)}
	l.cloth = upload(clothVertices(&s.Cloth), indices(s.Cloth.Tris), 3, 3, 2)
	if s.Form != nil {
		l.form = upload(formVertices(s.Form), indices(s.Form.Tris), 3, 3)
	}
	back := drawFrame()
	for i, dir := range p.skyDirs {
		view, _ := parallelView(dir, l.box)
		l.skyView = append(l.skyView, view)
		p.drawDepth(l, p.sky, int32(i), view)
	}
	gl.BindFramebuffer(gl.FRAMEBUFFER, back)
	return l, nil
}

// Release frees what the scene holds in the driver.
func (l *Loaded) Release() {
	l.cloth.release()
	l.form.release()
}

// drawFrame returns the framebuffer that is being drawn to.
func drawFrame() uint32 {
	var f int32
	gl.GetIntegerv(gl.DRAW_FRAMEBUFFER_BINDING, &f)
	return uint32(f)
}

// drawDepth draws cloth and form into one layer of a depth map. The offset
// grows with the slope, against a surface shading itself.
func (p *Painter) drawDepth(l *Loaded, d depthMap, layer int32, view mat4) {
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.CULL_FACE)
	gl.Enable(gl.POLYGON_OFFSET_FILL)
	gl.PolygonOffset(1.5, 2)
	d.begin(layer)
	p.depth.use()
	p.depth.setMat("camera", view)
	p.depth.setFloat("inset", 0)
	l.cloth.draw()
	p.depth.setFloat("inset", formInset)
	l.form.draw()
	gl.Disable(gl.POLYGON_OFFSET_FILL)
}
