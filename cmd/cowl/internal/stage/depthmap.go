//go:build cgo

package stage

import "github.com/go-gl/gl/v4.1-core/gl"

// depthMap is a stack of square depth pictures to be compared against in a
// shader (sampler2DShadow for one layer, sampler2DArrayShadow for more).
type depthMap struct {
	target, texture, frame uint32
	side                   int32
}

func newDepthMap(side, layers int32) depthMap {
	d := depthMap{target: gl.TEXTURE_2D, side: side}
	gl.GenTextures(1, &d.texture)
	if layers > 1 {
		d.target = gl.TEXTURE_2D_ARRAY
		gl.BindTexture(d.target, d.texture)
		gl.TexImage3D(d.target, 0, gl.DEPTH_COMPONENT32F, side, side, layers, 0, gl.DEPTH_COMPONENT, gl.FLOAT, nil)
	} else {
		gl.BindTexture(d.target, d.texture)
		gl.TexImage2D(d.target, 0, gl.DEPTH_COMPONENT32F, side, side, 0, gl.DEPTH_COMPONENT, gl.FLOAT, nil)
	}
	gl.TexParameteri(d.target, gl.TEXTURE_MIN_FILTER, gl.LINEAR)
	gl.TexParameteri(d.target, gl.TEXTURE_MAG_FILTER, gl.LINEAR)
	gl.TexParameteri(d.target, gl.TEXTURE_COMPARE_MODE, gl.COMPARE_REF_TO_TEXTURE)
	gl.TexParameteri(d.target, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_BORDER)
	gl.TexParameteri(d.target, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_BORDER)
	far := [4]float32{1, 1, 1, 1} // outside the map nothing is in shadow
	gl.TexParameterfv(d.target, gl.TEXTURE_BORDER_COLOR, &far[0])
	gl.GenFramebuffers(1, &d.frame)
	return d
}

// begin makes one layer the place that is drawn to, emptied.
func (d depthMap) begin(layer int32) {
	d.open(layer)
	gl.Clear(gl.DEPTH_BUFFER_BIT)
}

// beginOver makes one layer the place that is drawn to, with what that of under holds,
// which is as large.
func (d depthMap) beginOver(under depthMap, layer int32) {
	under.open(layer)
	d.open(layer)
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, under.frame)
	gl.BlitFramebuffer(0, 0, d.side, d.side, 0, 0, d.side, d.side, gl.DEPTH_BUFFER_BIT, gl.NEAREST)
}

func (d depthMap) open(layer int32) {
	gl.BindFramebuffer(gl.FRAMEBUFFER, d.frame)
	if d.target == gl.TEXTURE_2D {
		gl.FramebufferTexture2D(gl.FRAMEBUFFER, gl.DEPTH_ATTACHMENT, d.target, d.texture, 0)
	} else {
		gl.FramebufferTextureLayer(gl.FRAMEBUFFER, gl.DEPTH_ATTACHMENT, d.texture, 0, layer)
	}
	gl.DrawBuffer(gl.NONE)
	gl.ReadBuffer(gl.NONE)
	gl.Viewport(0, 0, d.side, d.side)
}

// bind makes the map readable through a texture unit.
func (d depthMap) bind(unit uint32) {
	gl.ActiveTexture(gl.TEXTURE0 + unit)
	gl.BindTexture(d.target, d.texture)
}

func (d depthMap) release() {
	gl.DeleteTextures(1, &d.texture)
	gl.DeleteFramebuffers(1, &d.frame)
}
