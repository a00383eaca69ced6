// Package shaders holds the GLSL 4.10 core programs of the project as text.
// It knows no OpenGL: whoever draws compiles them. Parts that two programs
// share (*.glsl) are put in front of both. Start at Cloth.
package shaders

import "embed"

//go:embed *.vert *.frag *.glsl
var files embed.FS

// SkyCount is the number of directions from which sky.glsl asks whether a
// vertex can see the open sky; uniforms skyView and skyDir have this length.
const SkyCount = 32

// RampSteps is the number of colours of a map; uniform ramp has this length.
const RampSteps = 9

// Source is one program: a vertex and a fragment shader, each complete.
type Source struct {
	Name             string // for messages
	Vertex, Fragment string
}

// Cloth draws the sheet: grain lines, a right and a wrong side.
func Cloth() Source { return lit("cloth") }

// Form draws the dress form.
func Form() Source { return lit("form") }

// QuickCloth and QuickForm draw the same without shadows and without asking
// the sky, for what moves.
func QuickCloth() Source { return quick("cloth") }

// QuickForm is the form for QuickCloth.
func QuickForm() Source { return quick("form") }

// Panel draws the letters and areas of a window, in pixels.
func Panel() Source { return plain("panel") }

// Line draws seam ribbons in one flat colour.
func Line() Source { return plain("line") }

// Depth fills a depth map and writes no colour.
func Depth() Source { return plain("depth") }

// SkyLook finds out what sky vertices see; its output is sky.
func SkyLook() Source {
	return Source{"sky look", version + read("sky.glsl") + read("skylook.vert"), version + read("depth.frag")}
}

func lit(name string) Source {
	return Source{name,
		version + read(name+".vert"),
		version + read("light.glsl") + read(name+".frag")}
}

func quick(name string) Source {
	return Source{"quick " + name,
		version + read(name+".vert"),
		version + read("quick.glsl") + read(name+".frag")}
}

func plain(name string) Source {
	return Source{name, version + read(name+".vert"), version + read(name+".frag")}
}

const version = "#version 410 core\n"

// read panics on a missing name: the files are part of the binary.
func read(name string) string {
	text, err := files.ReadFile(name)
	if err != nil {
		panic("shaders: " + err.Error())
	}
	return string(text)
}
