//go:build cgo

package stage

import "github.com/go-gl/gl/v4.1-core/gl"

// LookUp finds out what sky the cloth of l sees where it lies now, wherever the eye is.
// Painting with shadows does so else, and takes the longer.
func (p *Painter) LookUp(l *Loaded) {
	back := drawFrame()
	p.lookUp(l, p.skyViews(l))
	gl.BindFramebuffer(gl.FRAMEBUFFER, back)
}

// lookUp finds out what sky the vertices of l see, unless that is known.
func (p *Painter) lookUp(l *Loaded, views []mat4) {
	if l.open != nil {
		return
	}
	for i, view := range views {
		p.drawDepth(l, l.cloth, p.sky, int32(i), view)
	}
	p.sky.bind(skyUnit)
	p.look.use()
	p.look.setInt("skyDepth", skyUnit)
	p.look.setMat("skyView", views...)
	p.look.setVec("skyDir", p.skyDirs...)
	p.look.setFloat("skyLift", skyLift)
	p.look.setFloat("inset", 0)
	l.open = l.cloth.record(2)
	p.look.setFloat("inset", formInset)
	l.form.see(l.form.record(2))
	l.cloth.see(l.open)
	if l.smooth != nil {
		l.smooth.see(l.open)
	}
}

// skyViews returns the views of the depth maps of the sky.
func (p *Painter) skyViews(l *Loaded) []mat4 {
	var out []mat4
	for _, dir := range p.skyDirs {
		view, _ := parallelView(dir, l.box)
		out = append(out, view)
	}
	return out
}

// drawFrame returns the framebuffer that is being drawn to.
func drawFrame() uint32 {
	var f int32
	gl.GetIntegerv(gl.DRAW_FRAMEBUFFER_BINDING, &f)
	return uint32(f)
}

// drawDepth draws cloth and form into one layer of a depth map. The offset
// grows with the slope, against a surface shading itself.
func (p *Painter) drawDepth(l *Loaded, cloth buffer, d depthMap, layer int32, view mat4) {
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.CULL_FACE)
	gl.Enable(gl.POLYGON_OFFSET_FILL)
	gl.PolygonOffset(1.5, 2)
	d.begin(layer)
	prog := p.depth
	if l.look.Own.Sheer > 0 {
		prog = p.sheer
	}
	prog.use()
	prog.setMat("camera", view)
	prog.setFloat("inset", 0)
	prog.setFloat("sheer", l.look.Own.Sheer)
	cloth.draw()
	p.depth.use()
	p.depth.setMat("camera", view)
	p.depth.setFloat("inset", formInset)
	gl.Enable(gl.CULL_FACE) // it is closed
	gl.CullFace(gl.BACK)
	l.form.draw()
	gl.Disable(gl.CULL_FACE)
	gl.Disable(gl.POLYGON_OFFSET_FILL)
}
