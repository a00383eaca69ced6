//go:build cgo

package stage

import "github.com/go-gl/gl/v4.1-core/gl"

// buffer is a triangle mesh in the memory of the driver.
type buffer struct {
	array, verts, index uint32
	count               int32  // indices
	vertices            int32  // and how many they are of
	sky                 uint32 // a buffer of what sky each vertex sees
	at                  uint32 // its attribute
}

// upload copies interleaved vertices, whose attributes have the given numbers
// of float32, and triangle indices.
func upload(verts []float32, index []uint32, attributes ...int32) buffer {
	b := buffer{count: int32(len(index)), at: uint32(len(attributes))}
	if b.count == 0 {
		return b
	}
	gl.GenVertexArrays(1, &b.array)
	gl.BindVertexArray(b.array)
	gl.GenBuffers(1, &b.verts)
	gl.BindBuffer(gl.ARRAY_BUFFER, b.verts)
	gl.BufferData(gl.ARRAY_BUFFER, 4*len(verts), gl.Ptr(verts), gl.STATIC_DRAW)
	gl.GenBuffers(1, &b.index)
	gl.BindBuffer(gl.ELEMENT_ARRAY_BUFFER, b.index)
	gl.BufferData(gl.ELEMENT_ARRAY_BUFFER, 4*len(index), gl.Ptr(index), gl.STATIC_DRAW)
	var stride int32
	for _, n := range attributes {
		stride += 4 * n
	}
	var offset uintptr
	for i, n := range attributes {
		gl.EnableVertexAttribArray(uint32(i))
		gl.VertexAttribPointerWithOffset(uint32(i), n, gl.FLOAT, false, stride, offset)
		offset += 4 * uintptr(n)
	}
	b.vertices = int32(4*len(verts)) / stride
	gl.GenBuffers(1, &b.sky)
	return b
}

// refill puts other vertices of the same number in place.
func (b buffer) refill(verts []float32) {
	if b.count == 0 {
		return
	}
	gl.BindBuffer(gl.ARRAY_BUFFER, b.verts)
	gl.BufferData(gl.ARRAY_BUFFER, 4*len(verts), gl.Ptr(verts), gl.STREAM_DRAW)
}

// openSky is what part of the sky a vertex is taken to see where none has been
// looked at: with it cloth that moves is as bright as at rest, within 2 of 255.
const openSky = 0.92

// see gives every vertex what it sees of the sky on either side, two numbers a
// vertex; of none, openSky.
func (b buffer) see(sky []float32) {
	if b.count == 0 {
		return
	}
	gl.BindVertexArray(b.array)
	if len(sky) == 0 {
		gl.DisableVertexAttribArray(b.at)
		return
	}
	gl.BindBuffer(gl.ARRAY_BUFFER, b.sky)
	gl.BufferData(gl.ARRAY_BUFFER, 4*len(sky), gl.Ptr(sky), gl.STATIC_DRAW)
	gl.EnableVertexAttribArray(b.at)
	gl.VertexAttribPointerWithOffset(b.at, 2, gl.FLOAT, false, 8, 0)
}

// record runs the vertex shader in use over all vertices and returns its
// outputs, n numbers a vertex, without drawing anything.
func (b buffer) record(n int32) []float32 {
	if b.count == 0 {
		return nil
	}
	out := make([]float32, n*b.vertices)
	var kept uint32
	gl.GenBuffers(1, &kept)
	gl.BindBuffer(gl.TRANSFORM_FEEDBACK_BUFFER, kept)
	gl.BufferData(gl.TRANSFORM_FEEDBACK_BUFFER, 4*len(out), nil, gl.STREAM_READ)
	gl.BindBufferBase(gl.TRANSFORM_FEEDBACK_BUFFER, 0, kept)
	gl.BindVertexArray(b.array)
	gl.Enable(gl.RASTERIZER_DISCARD)
	gl.BeginTransformFeedback(gl.POINTS)
	gl.DrawArrays(gl.POINTS, 0, b.vertices)
	gl.EndTransformFeedback()
	gl.Disable(gl.RASTERIZER_DISCARD)
	gl.GetBufferSubData(gl.TRANSFORM_FEEDBACK_BUFFER, 0, 4*len(out), gl.Ptr(out))
	gl.DeleteBuffers(1, &kept)
	return out
}

func (b buffer) draw() {
	if b.count == 0 {
		return
	}
	gl.BindVertexArray(b.array)
	gl.VertexAttrib2f(b.at, openSky, openSky) // where the attribute is off
	gl.DrawElementsWithOffset(gl.TRIANGLES, b.count, gl.UNSIGNED_INT, 0)
}

// drawOrdered draws the triangles in another order.
func (b buffer) drawOrdered(index []uint32) {
	if b.count == 0 {
		return
	}
	gl.BindVertexArray(b.array)
	gl.BindBuffer(gl.ELEMENT_ARRAY_BUFFER, b.index)
	gl.BufferData(gl.ELEMENT_ARRAY_BUFFER, 4*len(index), gl.Ptr(index), gl.STREAM_DRAW)
	b.draw()
}

func (b buffer) release() {
	gl.DeleteVertexArrays(1, &b.array)
	gl.DeleteBuffers(1, &b.verts)
	gl.DeleteBuffers(1, &b.index)
	gl.DeleteBuffers(1, &b.sky)
}
