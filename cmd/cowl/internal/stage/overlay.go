//go:build cgo

package stage

import (
	"image"

	"cowl/shaders"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// Overlay draws flat triangles in pixels over what is painted: the letters and
// areas of a window. All its methods belong on the thread of its context.
type Overlay struct {
	prog                program
	array, verts, index uint32
	atlas               uint32
}

// Flat is a list of triangles in pixels, Y down.
type Flat struct {
	Verts []float32 // 8 a vertex: x, y, place in the atlas (0..1), red, green, blue, alpha (0..1)
	Index []uint32
	Parts []FlatPart // drawn one after another
}

// FlatPart is a run of indices that is drawn inside Clip only.
type FlatPart struct {
	Clip         image.Rectangle // pixels, Y down
	First, Count int             // of Index
}

// NewOverlay prepares drawing in the current context. It fails where the driver
// refuses a shader.
func NewOverlay() (*Overlay, error) {
	o := &Overlay{}
	var err error
	if o.prog, err = link(shaders.Panel()); err != nil {
		return nil, err
	}
	gl.GenVertexArrays(1, &o.array)
	gl.BindVertexArray(o.array)
	gl.GenBuffers(1, &o.verts)
	gl.GenBuffers(1, &o.index)
	gl.BindBuffer(gl.ARRAY_BUFFER, o.verts)
	gl.BindBuffer(gl.ELEMENT_ARRAY_BUFFER, o.index)
	for i, n := range []int32{2, 2, 4} {
		gl.EnableVertexAttribArray(uint32(i))
		gl.VertexAttribPointerWithOffset(uint32(i), n, gl.FLOAT, false, 4*8, uintptr([]int{0, 8, 16}[i]))
	}
	gl.GenTextures(1, &o.atlas)
	return o, nil
}

// SetAtlas puts the letters in place; they are read from then on.
func (o *Overlay) SetAtlas(a *image.Alpha) {
	gl.ActiveTexture(gl.TEXTURE0)
	gl.BindTexture(gl.TEXTURE_2D, o.atlas)
	gl.PixelStorei(gl.UNPACK_ALIGNMENT, 1)
	gl.TexImage2D(gl.TEXTURE_2D, 0, gl.R8, int32(a.Rect.Dx()), int32(a.Rect.Dy()), 0, gl.RED, gl.UNSIGNED_BYTE,
		gl.Ptr(a.Pix))
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE)
}

// Draw draws f into the framebuffer that is bound, w × h pixels.
func (o *Overlay) Draw(f Flat, w, h int) {
	if len(f.Index) == 0 {
		return
	}
	gl.Viewport(0, 0, int32(w), int32(h))
	gl.Disable(gl.DEPTH_TEST)
	gl.Enable(gl.BLEND)
	gl.BlendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA)
	gl.Enable(gl.SCISSOR_TEST)
	o.prog.use()
	gl.Uniform2f(o.prog.at("size"), float32(w), float32(h))
	o.prog.setInt("atlas", 0)
	gl.ActiveTexture(gl.TEXTURE0)
	gl.BindTexture(gl.TEXTURE_2D, o.atlas)
	gl.BindVertexArray(o.array)
	gl.BindBuffer(gl.ARRAY_BUFFER, o.verts)
	gl.BufferData(gl.ARRAY_BUFFER, 4*len(f.Verts), gl.Ptr(f.Verts), gl.STREAM_DRAW)
	gl.BufferData(gl.ELEMENT_ARRAY_BUFFER, 4*len(f.Index), gl.Ptr(f.Index), gl.STREAM_DRAW)
	for _, p := range f.Parts {
		gl.Scissor(int32(p.Clip.Min.X), int32(h-p.Clip.Max.Y), int32(p.Clip.Dx()), int32(p.Clip.Dy()))
		gl.DrawElementsWithOffset(gl.TRIANGLES, int32(p.Count), gl.UNSIGNED_INT, 4*uintptr(p.First))
	}
	gl.Disable(gl.SCISSOR_TEST)
	gl.Disable(gl.BLEND)
}

// Release frees what the overlay holds in the driver.
func (o *Overlay) Release() {
	gl.DeleteProgram(uint32(o.prog))
	gl.DeleteVertexArrays(1, &o.array)
	gl.DeleteBuffers(1, &o.verts)
	gl.DeleteBuffers(1, &o.index)
	gl.DeleteTextures(1, &o.atlas)
}
