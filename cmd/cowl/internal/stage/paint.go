//go:build cgo

package stage

import (
	"image"
	"image/color"
	"math"
	"strconv"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

const (
	seamWidth = 0.0014 // m
	rimWidth  = 0.0012 // m
	turnWidth = 0.0006 // m; fainter, since the lattice breaks this line
	skyLift   = 0.005  // m; twice a texel of the sky's depth maps
)

// Paint draws a loaded scene into the framebuffer that is bound, w × h pixels.
// Marks are not part of it: they belong to the picture.
func (p *Painter) Paint(l *Loaded, v View, w, h int) {
	p.PaintIn(l, v, Manner{}, image.Rect(0, 0, w, h), h)
}

// PaintIn draws a loaded scene into a part of the framebuffer that is bound;
// part is in pixels, Y down, of a framebuffer tall pixels high.
func (p *Painter) PaintIn(l *Loaded, v View, m Manner, part image.Rectangle, tall int) {
	light := p.light(l, v, m)
	x, y, w, h := int32(part.Min.X), int32(tall-part.Max.Y), int32(part.Dx()), int32(part.Dy())
	gl.Viewport(x, y, w, h)
	gl.Enable(gl.SCISSOR_TEST)
	gl.Scissor(x, y, w, h)
	bg := srgb(l.look.Background)
	gl.ClearColor(float32(bg[0]), float32(bg[1]), float32(bg[2]), 1)
	gl.Clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT)
	gl.Disable(gl.SCISSOR_TEST)
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.CULL_FACE)

	camera := v.camera(l.box, part.Dx(), part.Dy())
	form, cloth := p.form, p.cloth
	if m.Quick {
		form, cloth = p.quickForm, p.quickCloth
	}
	for _, prog := range []program{form, cloth} {
		prog.use()
		prog.setMat("camera", camera)
		prog.setVec("eye", v.Eye)
		light(prog)
	}
	solid := m.Opacity == 0 || m.Opacity >= 1
	if solid {
		p.paintCloth(l, cloth, m) // first, so that what it hides is not shaded
	}
	if !m.NoForm {
		p.paintForm(l, form)
		p.line.use()
		p.line.setMat("camera", camera)
		p.paintLines(l.seams, v.Eye, seamWidth, l.look.Seam)
	}
	if !solid {
		p.paintCloth(l, cloth, m)
	}
	p.line.use()
	p.line.setMat("camera", camera)
	hems := l.hems
	if m.Quick {
		hems = l.cuts
	}
	ends, turns := rim(&l.scene.Cloth, hems, v.Eye)
	p.paintLines(ends, v.Eye, rimWidth, l.look.Rim)
	p.paintLines(turns, v.Eye, turnWidth, l.look.Rim)
}

// light prepares the lights for a view and returns what sets them in a program.
// Shadows are drawn only where they are asked for.
func (p *Painter) light(l *Loaded, v View, m Manner) func(program) {
	key, fill := lights(v)
	set := func(prog program) {
		prog.setVec("keyDir", key)
		prog.setVec("fillDir", fill)
	}
	if m.Quick {
		return set
	}
	back := drawFrame()
	keyView, field := parallelView(key, l.box)
	skyViews := p.skyViews(l)
	p.lookUp(l, skyViews)
	p.drawDepth(l, p.key, 0, keyView)
	gl.BindFramebuffer(gl.FRAMEBUFFER, back)
	p.key.bind(keyUnit)
	p.sky.bind(skyUnit)
	return func(prog program) {
		set(prog)
		prog.setInt("keyDepth", keyUnit)
		prog.setMat("keyView", keyView)
		prog.setFloat("keyTexel", field/keySide)
		prog.setInt("skyDepth", skyUnit)
		prog.setMat("skyView", skyViews...)
		prog.setVec("skyDir", p.skyDirs...)
		prog.setFloat("skyLift", skyLift)
	}
}

func (p *Painter) paintForm(l *Loaded, prog program) {
	prog.use()
	prog.setFloat("inset", formInset)
	prog.setColour("formColour", linear(l.look.Form))
	gl.Enable(gl.CULL_FACE) // it is closed
	gl.CullFace(gl.BACK)
	l.form.draw()
	gl.Disable(gl.CULL_FACE)
}

// paintCloth draws the cloth. See-through cloth is drawn twice, what faces away
// first, so that the nearer layer lies over the farther.
func (p *Painter) paintCloth(l *Loaded, prog program, m Manner) {
	prog.use()
	prog.setColour("rightColour", linear(l.look.Cloth))
	prog.setColour("wrongColour", linear(l.look.WrongSide))
	gl.Uniform2f(prog.at("warp"), float32(math.Sin(l.scene.Grain)), float32(math.Cos(l.scene.Grain)))
	m.set(prog, l.look)
	if m.Opacity == 0 || m.Opacity >= 1 {
		l.cloth.draw()
		return
	}
	gl.Enable(gl.BLEND)
	gl.BlendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA)
	gl.DepthMask(false)
	gl.Enable(gl.CULL_FACE)
	for _, side := range []uint32{gl.FRONT, gl.BACK} {
		gl.CullFace(side)
		l.cloth.draw()
	}
	gl.Disable(gl.CULL_FACE)
	gl.DepthMask(true)
	gl.Disable(gl.BLEND)
}

// set passes the manner to the program of the cloth, which is in use.
func (m Manner) set(prog program, look Look) {
	opacity, show, step := m.Opacity, int32(0), look.GrainStep
	if opacity == 0 {
		opacity = 1
	}
	if m.Bare {
		step = noGrain
	}
	if m.Yarns != nil {
		show = 1
		prog.setColour("warpColour", linear(m.Yarns.Warp))
		prog.setColour("weftColour", linear(m.Yarns.Weft))
	}
	if m.Map != nil {
		show = 2
		gl.Uniform2f(prog.at("mapRange"), float32(m.Map.Low), float32(m.Map.High))
		for i, c := range m.Map.Ramp {
			prog.setColour("ramp["+strconv.Itoa(i)+"]", srgb(c))
		}
	}
	prog.setFloat("grainStep", step)
	prog.setFloat("opacity", opacity)
	prog.setInt("show", show)
}

// noGrain is a step of grain lines of which none crosses a piece, m.
const noGrain = 1e6

// paintLines draws ribbons wide m across with the line program in use.
func (p *Painter) paintLines(lines [][]seamPoint, eye r3.Vec, wide float64, c color.RGBA) {
	verts, index := ribbons(lines, eye, wide)
	b := upload(verts, index, 3)
	defer b.release()
	p.line.setColour("lineColour", srgb(c))
	b.draw()
}
