//go:build cgo

package stage

import "github.com/go-gl/gl/v4.1-core/gl"

// buffer is a triangle mesh in the memory of the driver.
type buffer struct {
	array, verts, index uint32
	count               int32 // indices
}

// upload copies interleaved vertices, whose attributes have the given numbers
// of float32, and triangle indices.
func upload(verts []float32, index []uint32, attributes ...int32) buffer {
	b := buffer{count: int32(len(index))}
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

func (b buffer) draw() {
	if b.count == 0 {
		return
	}
	gl.BindVertexArray(b.array)
	gl.DrawElementsWithOffset(gl.TRIANGLES, b.count, gl.UNSIGNED_INT, 0)
}

func (b buffer) release() {
	gl.DeleteVertexArrays(1, &b.array)
	gl.DeleteBuffers(1, &b.verts)
	gl.DeleteBuffers(1, &b.index)
}
