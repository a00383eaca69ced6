//go:build cgo

package stage

import (
	"image/color"
	"math"

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
	back := drawFrame()
	key, fill := lights(v)
	keyView, field := parallelView(key, l.box)
	p.drawDepth(l, p.key, 0, keyView)

	gl.BindFramebuffer(gl.FRAMEBUFFER, back)
	gl.Viewport(0, 0, int32(w), int32(h))
	bg := srgb(l.look.Background)
	gl.ClearColor(float32(bg[0]), float32(bg[1]), float32(bg[2]), 1)
	gl.Clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT)
	p.key.bind(keyUnit)
	p.sky.bind(skyUnit)

	camera := v.camera(l.box, w, h)
	for _, prog := range []program{p.form, p.cloth} {
		prog.use()
		prog.setMat("camera", camera)
		prog.setVec("eye", v.Eye)
		prog.setInt("keyDepth", keyUnit)
		prog.setMat("keyView", keyView)
		prog.setVec("keyDir", key)
		prog.setVec("fillDir", fill)
		prog.setFloat("keyTexel", field/keySide)
		prog.setInt("skyDepth", skyUnit)
		prog.setMat("skyView", l.skyView...)
		prog.setVec("skyDir", p.skyDirs...)
		prog.setFloat("skyLift", skyLift)
	}
	p.paintForm(l)
	p.paintCloth(l)
	p.line.use()
	p.line.setMat("camera", camera)
	p.paintLines(l.seams, v.Eye, seamWidth, l.look.Seam)
	ends, turns := rim(&l.scene.Cloth, l.hems, v.Eye)
	p.paintLines(ends, v.Eye, rimWidth, l.look.Rim)
	p.paintLines(turns, v.Eye, turnWidth, l.look.Rim)
}

func (p *Painter) paintForm(l *Loaded) {
	p.form.use()
	p.form.setFloat("inset", formInset)
	p.form.setColour("formColour", linear(l.look.Form))
	l.form.draw()
}

func (p *Painter) paintCloth(l *Loaded) {
	p.cloth.use()
	p.cloth.setColour("rightColour", linear(l.look.Cloth))
	p.cloth.setColour("wrongColour", linear(l.look.WrongSide))
	gl.Uniform2f(p.cloth.at("warp"), float32(math.Sin(l.scene.Grain)), float32(math.Cos(l.scene.Grain)))
	p.cloth.setFloat("grainStep", l.look.GrainStep)
	l.cloth.draw()
}

// paintLines draws ribbons wide m across with the line program in use.
func (p *Painter) paintLines(lines [][]seamPoint, eye r3.Vec, wide float64, c color.RGBA) {
	verts, index := ribbons(lines, eye, wide)
	b := upload(verts, index, 3)
	defer b.release()
	p.line.setColour("lineColour", srgb(c))
	b.draw()
}
