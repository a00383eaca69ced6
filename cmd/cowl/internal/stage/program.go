//go:build cgo

package stage

import (
	"fmt"
	"strings"

	"cowl/shaders"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// program is a linked pair of shaders.
type program uint32

// link compiles and links src; outputs of its vertex shader may be kept, see
// record. The error holds the message of the driver.
func link(src shaders.Source, kept ...string) (program, error) {
	p := gl.CreateProgram()
	for _, part := range []struct {
		kind uint32
		text string
	}{{gl.VERTEX_SHADER, src.Vertex}, {gl.FRAGMENT_SHADER, src.Fragment}} {
		s, err := compile(part.kind, part.text)
		if err != nil {
			return 0, fmt.Errorf("stage: shader %s: %w", src.Name, err)
		}
		gl.AttachShader(p, s)
		gl.DeleteShader(s) // goes with the program
	}
	if len(kept) > 0 {
		for i := range kept {
			kept[i] += "\x00"
		}
		names, free := gl.Strs(kept...)
		gl.TransformFeedbackVaryings(p, int32(len(kept)), names, gl.INTERLEAVED_ATTRIBS)
		free()
	}
	gl.LinkProgram(p)
	var ok, size int32
	gl.GetProgramiv(p, gl.LINK_STATUS, &ok)
	if ok == gl.FALSE {
		gl.GetProgramiv(p, gl.INFO_LOG_LENGTH, &size)
		log := make([]byte, size+1)
		gl.GetProgramInfoLog(p, size, nil, &log[0])
		return 0, fmt.Errorf("stage: shader %s does not link: %s", src.Name, text(log))
	}
	return program(p), nil
}

func compile(kind uint32, source string) (uint32, error) {
	s := gl.CreateShader(kind)
	lines, free := gl.Strs(source + "\x00")
	defer free()
	gl.ShaderSource(s, 1, lines, nil)
	gl.CompileShader(s)
	var ok, size int32
	gl.GetShaderiv(s, gl.COMPILE_STATUS, &ok)
	if ok == gl.FALSE {
		gl.GetShaderiv(s, gl.INFO_LOG_LENGTH, &size)
		log := make([]byte, size+1)
		gl.GetShaderInfoLog(s, size, nil, &log[0])
		return 0, fmt.Errorf("does not compile: %s", text(log))
	}
	return s, nil
}

func text(log []byte) string { return strings.TrimRight(string(log), "\x00\n ") }

// at returns the place of a uniform, or -1, which OpenGL ignores, where the
// driver removed one that has no effect.
func (p program) at(name string) int32 {
	return gl.GetUniformLocation(uint32(p), gl.Str(name+"\x00"))
}

func (p program) use() { gl.UseProgram(uint32(p)) }

func (p program) setMat(name string, ms ...mat4) {
	var all []float32
	for _, m := range ms {
		f := m.float32s()
		all = append(all, f[:]...)
	}
	gl.UniformMatrix4fv(p.at(name), int32(len(ms)), false, &all[0])
}

func (p program) setVec(name string, vs ...r3.Vec) {
	all := appendVec(nil, vs...)
	gl.Uniform3fv(p.at(name), int32(len(vs)), &all[0])
}

func (p program) setColour(name string, c [3]float64) {
	gl.Uniform3f(p.at(name), float32(c[0]), float32(c[1]), float32(c[2]))
}

func (p program) setFloat(name string, x float64) { gl.Uniform1f(p.at(name), float32(x)) }

func (p program) setInt(name string, i int32) { gl.Uniform1i(p.at(name), i) }
