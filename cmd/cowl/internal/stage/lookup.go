//go:build cgo

package stage

import (
	"math"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// LookUp finds out what sky the cloth of l sees where it lies now, wherever the eye is.
// Painting with shadows does so else, and takes the longer.
func (p *Painter) LookUp(l *Loaded) {
	back := drawFrame()
	p.lookUp(l)
	gl.BindFramebuffer(gl.FRAMEBUFFER, back)
}

// lookUp finds out what sky the vertices of l see, unless that is known.
func (p *Painter) lookUp(l *Loaded) {
	if l.open != nil {
		return
	}
	views := p.drawSky(l)
	p.sky.bind(skyUnit)
	p.look.use()
	p.look.setInt("skyDepth", skyUnit)
	p.look.setMat("skyView", views...)
	p.look.setVec("skyDir", p.skyDirs...)
	p.look.setFloat("skyLift", skyLift)
	p.look.setFloat("inset", 0)
	l.open = calmed(l.cloth.record(2), l.scene.Cloth.Tris)
	p.look.setFloat("inset", formInset)
	l.form.see(l.form.record(2))
	p.looks++
	l.sky = p.looks
	l.cloth.see(l.open)
	if l.smooth != nil {
		l.smooth.see(l.open)
	}
}

// drawSky draws the depth maps of the sky and returns their views. The form has three
// quarters of the triangles and stands still: it is kept, and the cloth drawn over it.
func (p *Painter) drawSky(l *Loaded) []mat4 {
	box := stepped(l.box)
	var views []mat4
	for _, dir := range p.skyDirs {
		view, _ := parallelView(dir, box)
		views = append(views, view)
	}
	defer p.depthState()()
	if want := (skyForm{l.scene.Form, box}); p.skyFormOf != want {
		for i, view := range views {
			p.skyForm.begin(int32(i))
			p.drawFormDepth(l, view)
		}
		p.skyFormOf = want
	}
	for i, view := range views {
		p.sky.beginOver(p.skyForm, int32(i))
		p.drawClothDepth(l, l.cloth, view)
	}
	return views
}

// stepped is a box with its sides moved out to whole steps of spare, so that it seldom
// changes with the cloth.
func stepped(b r3.Box) r3.Box {
	out := func(round func(float64) float64, v r3.Vec) r3.Vec {
		return r3.Vec{X: spare * round(v.X/spare), Y: spare * round(v.Y/spare), Z: spare * round(v.Z/spare)}
	}
	return r3.Box{Min: out(math.Floor, b.Min), Max: out(math.Ceil, b.Max)}
}

// drawFrame returns the framebuffer that is being drawn to.
func drawFrame() uint32 {
	var f int32
	gl.GetIntegerv(gl.DRAW_FRAMEBUFFER_BINDING, &f)
	return uint32(f)
}

// drawDepth draws cloth and form into a depth map of one layer.
func (p *Painter) drawDepth(l *Loaded, cloth buffer, d depthMap, view mat4) {
	defer p.depthState()()
	d.begin(0)
	p.drawClothDepth(l, cloth, view)
	p.drawFormDepth(l, view)
}

// depthState is how depth maps are drawn, and returns what ends it. The offset grows
// with the slope, against a surface shading itself.
func (p *Painter) depthState() (end func()) {
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.CULL_FACE)
	gl.Enable(gl.POLYGON_OFFSET_FILL)
	gl.PolygonOffset(1.5, 2)
	return func() { gl.Disable(gl.POLYGON_OFFSET_FILL) }
}

func (p *Painter) drawClothDepth(l *Loaded, cloth buffer, view mat4) {
	prog := p.depth
	if l.look.Own.Sheer > 0 {
		prog = p.sheer
	}
	prog.use()
	prog.setMat("camera", view)
	prog.setFloat("inset", 0)
	prog.setFloat("sheer", l.look.Own.Sheer)
	cloth.draw()
}

func (p *Painter) drawFormDepth(l *Loaded, view mat4) {
	p.depth.use()
	p.depth.setMat("camera", view)
	p.depth.setFloat("inset", formInset)
	gl.Enable(gl.CULL_FACE) // it is closed
	gl.CullFace(gl.BACK)
	l.form.draw()
	gl.Disable(gl.CULL_FACE)
}
