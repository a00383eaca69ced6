//go:build cgo

package stage

import (
	"image"
	"image/color"
	"math"

	"cowl/materials/look"
	"cowl/mesh"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

const (
	seamWidth = 0.0014 // m
	rimWidth  = 0.0012 // m
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
	s := p.sit(l, v, m, part.Dx(), part.Dy())
	s.clear(part, tall)
	if s.solid() {
		s.paintCloth() // first, so that what it hides is not shaded
	}
	s.paintForm()
	s.paintRest()
}

// paintRest draws what is to be seen of the cloth beside solid cloth itself. A rim that
// lies behind see-through cloth is drawn before it, and so is seen through it.
func (s sitting) paintRest() {
	s.paintRim()
	if !s.solid() {
		s.paintCloth()
	}
	s.paintLines()
}

// sitting is one painting of a scene: programs and lights are set.
type sitting struct {
	*Painter
	l           *Loaded
	v           View
	m           Manner
	camera      mat4
	form, cloth program
}

// sit prepares to paint a picture of w × h pixels.
func (p *Painter) sit(l *Loaded, v View, m Manner, w, h int) sitting {
	s := sitting{Painter: p, l: l, v: v, m: m, form: p.form, cloth: p.cloth}
	box := l.box
	switch {
	case m.Quick:
		s.form, s.cloth, box = p.quickForm, p.quickCloth, l.room
	case m.Sparing && l.smooth != nil:
		s.cloth = p.vertexCloth
	}
	s.camera = v.camera(box, w, h)
	light := p.light(l, v, m)
	for _, prog := range []program{s.form, s.cloth} {
		prog.use()
		prog.setMat("camera", s.camera)
		prog.setVec("eye", v.Eye)
		light(prog)
	}
	return s
}

// clear empties a part of the framebuffer that is bound and limits drawing to it.
func (s sitting) clear(part image.Rectangle, tall int) {
	x, y, w, h := int32(part.Min.X), int32(tall-part.Max.Y), int32(part.Dx()), int32(part.Dy())
	gl.Viewport(x, y, w, h)
	gl.Enable(gl.SCISSOR_TEST)
	gl.Scissor(x, y, w, h)
	bg := srgb(s.l.look.Background)
	gl.ClearColor(float32(bg[0]), float32(bg[1]), float32(bg[2]), 1)
	gl.Clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT)
	gl.Disable(gl.SCISSOR_TEST)
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.CULL_FACE)
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
	p.lookUp(l)
	cloth, _, _ := l.drawn(m)
	if want := (shade{l, cloth, keyView, l.look.Own.Sheer}); p.shade != want || l.moved {
		p.drawDepth(l, cloth, p.key, keyView)
		p.shade, l.moved = want, false
	}
	gl.BindFramebuffer(gl.FRAMEBUFFER, back)
	p.key.bind(keyUnit)
	return func(prog program) {
		set(prog)
		prog.setInt("keyDepth", keyUnit)
		prog.setMat("keyView", keyView)
		prog.setFloat("keyTexel", field/keySide)
	}
}

// paintForm draws form and seams, unless the cloth alone is wanted.
func (s sitting) paintForm() {
	if s.m.NoForm {
		return
	}
	s.form.use()
	s.form.setFloat("inset", formInset)
	s.form.setColour("formColour", linear(s.l.look.Form))
	gl.Enable(gl.CULL_FACE) // it is closed
	gl.CullFace(gl.BACK)
	s.l.form.draw()
	gl.Disable(gl.CULL_FACE)
	s.useLine()
	seams := s.ends.begin()
	for _, line := range s.l.seams {
		seams.add(s.v.Eye, seamWidth, line...)
	}
	s.paintRibbons(seams, s.l.look.Seam)
}

// paintCloth draws the cloth. See-through cloth is drawn from the back to the
// front, so that the nearer layer lies over the farther.
func (s sitting) paintCloth() {
	prog, l := s.cloth, s.l
	cloth, sheet, _ := l.drawn(s.m)
	prog.use()
	shown := s.shownLook()
	prog.setColour("rightColour", linear(shown.Cloth))
	prog.setColour("wrongColour", linear(shown.WrongSide))
	gl.Uniform2f(prog.at("warp"), float32(math.Sin(l.scene.Grain)), float32(math.Cos(l.scene.Grain)))
	s.m.set(prog, shown)
	if s.solid() {
		s.paintSolid(cloth)
		return
	}
	gl.Enable(gl.BLEND)
	gl.BlendFuncSeparate(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA, gl.ZERO, gl.ONE) // a picture is solid
	gl.DepthMask(false)
	cloth.drawOrdered(farToNear(sheet, s.v.Eye))
	gl.DepthMask(true)
	gl.Disable(gl.BLEND)
}

// paintSolid draws cloth with its program in use. Where shadows are asked for at every
// pixel they cost more than all else, so the layers that others hide are found out before.
func (s sitting) paintSolid(cloth buffer) {
	if s.cloth == s.Painter.cloth {
		s.useLine()
		gl.ColorMask(false, false, false, false)
		cloth.draw()
		gl.ColorMask(true, true, true, true)
		gl.DepthFunc(gl.LEQUAL)
		s.cloth.use()
	}
	cloth.draw()
	gl.DepthFunc(gl.LESS)
}

// drawn returns what of the cloth is painted: its smooth surface, or its lattice
// where it moves.
func (l *Loaded) drawn(m Manner) (buffer, *mesh.Sheet, [][]int32) {
	if l.smooth != nil && (!m.Quick || m.Fine) {
		return l.smooth.cloth, &l.smooth.Sheet, l.smooth.rims
	}
	return l.cloth, &l.scene.Cloth, l.rims
}

// paintRim draws where the cloth ends, and its fold line.
func (s sitting) paintRim() {
	s.useLine()
	_, cloth, rims := s.l.drawn(s.m)
	ends := s.ends.begin()
	for _, line := range rims {
		var at []seamPoint
		for _, v := range line {
			at = append(at, rimPoint(cloth, v, s.v.Eye))
		}
		ends.addRound(s.v.Eye, rimWidth, at...)
	}
	s.paintRibbons(ends, s.shownLook().Rim)
}

// paintLines draws the lines on the cloth.
func (s sitting) paintLines() {
	s.useLine()
	for _, l := range s.m.Lines {
		drawn := s.ends.begin()
		var line []seamPoint
		for _, p := range l.At {
			line = append(line, seamPoint{at: r3.Add(p, r3.Scale(lineLift, r3.Unit(r3.Sub(s.v.Eye, p))))})
		}
		drawn.add(s.v.Eye, lineWidth, line...)
		s.paintRibbons(drawn, l.Ink)
	}
}

// How a line on the cloth is drawn, m: so wide, and so far before the lattice, of which
// the smooth surface may stand out.
const (
	lineWidth = 0.0032
	lineLift  = 0.0025
)

// solid reports whether nothing is seen through the cloth.
func (s sitting) solid() bool {
	return (s.m.Opacity == 0 || s.m.Opacity >= 1) && !(s.m.own(s.l.look) && s.l.look.Own.Sheer > 0)
}

// shownLook is the look of the scene, without that of the cloth where another
// is shown.
func (s sitting) shownLook() Look {
	if s.m.own(s.l.look) {
		return s.l.look
	}
	toile := s.l.scene.Look
	toile.Own = look.Look{}
	return toile.withDefaults()
}

// useLine makes ready to draw in one colour.
func (s sitting) useLine() {
	s.line.use()
	s.line.setMat("camera", s.camera)
}

// paintRibbons draws ribbons with the line program in use.
func (p *Painter) paintRibbons(r *ribbons, c color.RGBA) {
	b := upload(r.verts, r.index, 3)
	defer b.release()
	p.line.setColour("lineColour", srgb(c))
	b.draw()
}
