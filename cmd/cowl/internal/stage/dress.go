//go:build cgo

package stage

import (
	"strconv"

	"cowl/materials/look"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// What the cloth program shows.
const (
	showPaper = iota
	showYarns
	showMap
	showOwn
)

// own reports whether the cloth is drawn in its own look.
func (m Manner) own(l Look) bool {
	return l.Own.Known() && !m.Toile && m.Yarns == nil && m.Map == nil
}

// set passes the manner to the program of the cloth, which is in use.
func (m Manner) set(prog program, look Look) {
	opacity, show, step := m.Opacity, int32(showPaper), look.GrainStep
	if opacity == 0 {
		opacity = 1
	}
	if m.Bare {
		step = noGrain
	}
	if m.Yarns != nil {
		show = showYarns
		prog.setColour("warpColour", linear(m.Yarns.Warp))
		prog.setColour("weftColour", linear(m.Yarns.Weft))
	}
	if m.Map != nil {
		show = showMap
		gl.Uniform2f(prog.at("mapRange"), float32(m.Map.Low), float32(m.Map.High))
		for i, c := range m.Map.Ramp {
			prog.setColour("ramp["+strconv.Itoa(i)+"]", srgb(c))
		}
	}
	if m.own(look) {
		show = showOwn
		prog.dress(look.Own)
	}
	prog.setFloat("grainStep", step)
	prog.setFloat("opacity", opacity)
	prog.setInt("show", show)
}

// weaves are the numbers of the faces of cloth in weave.glsl.
var weaves = map[look.Face]int32{look.Plain: 0, look.Twill: 1, look.Satin: 2, look.Crepe: 3, look.Rib: 4}

// dress passes the look of a cloth to its program, which is in use.
func (p program) dress(l look.Look) {
	flag := map[bool]int32{true: 1}
	p.setFloat("sheen", l.Sheen)
	p.setFloat("roughness", l.Roughness)
	p.setFloat("sheer", l.Sheer)
	p.setInt("drawnOut", flag[l.Float != look.None])
	p.setFloat("floatAcross", float64(flag[l.Float == look.Weft]))
	p.setInt("face", weaves[l.Face])
	p.setColour("checkColour", linear(opaque(l.Check)))
	p.setFloat("checkStep", l.CheckStep)
	p.setFloat("checkWide", l.CheckWide)
}

// noGrain is a step of grain lines of which none crosses a piece, m.
const noGrain = 1e6
