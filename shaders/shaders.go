// Package shaders holds the GLSL 4.10 core programs of the project as text.
// It knows no OpenGL: whoever draws compiles them. Parts that two programs
// share (*.glsl) are put in front of both. Start at Cloth.
package shaders

import (
	"embed"
	"strings"
)

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
func Cloth() Source { return lit("cloth", "line.glsl", "weave.glsl") }

// Form draws the dress form.
func Form() Source { return lit("form") }

// QuickCloth and QuickForm draw the same without shadows and without asking
// the sky, for what moves.
func QuickCloth() Source { return quick("cloth", "line.glsl", "weave.glsl") }

// VertexCloth is Cloth with the shadow of the key light asked for at its vertices, for
// fine triangles where the processor draws: most of their pixels are shaded twice there,
// and asking costs as much as all else.
func VertexCloth() Source {
	const at = "#define KEY_AT_VERTICES\n"
	s := quick("cloth", "line.glsl", "weave.glsl")
	return Source{
		"cloth by vertices", version + at + read("key.glsl") + strings.TrimPrefix(s.Vertex, version),
		version + at + strings.TrimPrefix(s.Fragment, version),
	}
}

// QuickForm is the form for QuickCloth.
func QuickForm() Source { return quick("form") }

// Panel draws the letters and areas of a window, in pixels.
func Panel() Source { return plain("panel") }

// Line draws seam ribbons in one flat colour.
func Line() Source { return plain("line") }

// Depth fills a depth map and writes no colour.
func Depth() Source { return plain("depth") }

// SheerDepth is Depth for cloth that lets light through.
func SheerDepth() Source {
	return Source{"sheer depth", version + read("depth.vert"), version + read("sheer.frag")}
}

// SkyLook finds out what sky vertices see; its output is sky.
func SkyLook() Source {
	return Source{"sky look", version + read("sky.glsl") + read("skylook.vert"), version + read("depth.frag")}
}

func lit(name string, parts ...string) Source {
	return shaded(name, name, read("key.glsl")+read("light.glsl"), parts)
}

func quick(name string, parts ...string) Source {
	return shaded("quick "+name, name, read("quick.glsl"), parts)
}

// shaded is a program whose fragment shader has a light and parts before it.
func shaded(title, name, light string, parts []string) Source {
	fragment := version + light + read("encode.glsl")
	for _, p := range parts {
		fragment += read(p)
	}
	return Source{title, version + read(name+".vert"), fragment + read(name+".frag")}
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
