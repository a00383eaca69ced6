//go:build cgo

package stage

import (
	"fmt"
	"image"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// target is an off-screen picture: smooth has several samples a pixel and is
// drawn to, plain has one and is read.
type target struct {
	smooth, plain         uint32
	colour, depth, single uint32
	w, h                  int32
}

// Samples a pixel, in a window and in a picture that is kept; drivers may have
// fewer, see Shot.
const (
	smoothly = 4
	still    = 8
)

// newTarget takes so many samples a pixel, or as many as the driver has; 0 is
// one without smoothing.
func newTarget(w, h int, samples int32) (*target, error) {
	can, most := limits()
	if w < 1 || h < 1 || w > most || h > most {
		return nil, fmt.Errorf("stage: picture of %d × %d pixels, want 1–%d each", w, h, most)
	}
	samples = min(samples, can)
	t := &target{w: int32(w), h: int32(h)}
	gl.GenFramebuffers(1, &t.smooth)
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.smooth)
	t.colour = t.attach(gl.COLOR_ATTACHMENT0, gl.RGBA8, samples)
	t.depth = t.attach(gl.DEPTH_ATTACHMENT, gl.DEPTH_COMPONENT32F, samples)
	state := gl.CheckFramebufferStatus(gl.FRAMEBUFFER)
	gl.GenFramebuffers(1, &t.plain)
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.plain)
	t.single = t.attach(gl.COLOR_ATTACHMENT0, gl.RGBA8, 0)
	if s := gl.CheckFramebufferStatus(gl.FRAMEBUFFER); state != gl.FRAMEBUFFER_COMPLETE || s != gl.FRAMEBUFFER_COMPLETE {
		t.release()
		return nil, fmt.Errorf("stage: %w: the driver refuses a picture of %d × %d pixels (0x%X, 0x%X)", ErrNoDrawing, w, h,
			state, s)
	}
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.smooth)
	return t, nil
}

// limits returns how many samples a pixel the driver has, and how many pixels a
// picture may be wide and tall.
func limits() (samples int32, most int) {
	var side int32
	gl.GetIntegerv(gl.MAX_SAMPLES, &samples)
	gl.GetIntegerv(gl.MAX_RENDERBUFFER_SIZE, &side)
	return samples, int(side)
}

func (t *target) attach(where, format uint32, samples int32) (buffer uint32) {
	gl.GenRenderbuffers(1, &buffer)
	gl.BindRenderbuffer(gl.RENDERBUFFER, buffer)
	gl.RenderbufferStorageMultisample(gl.RENDERBUFFER, samples, format, t.w, t.h)
	gl.FramebufferRenderbuffer(gl.FRAMEBUFFER, where, gl.RENDERBUFFER, buffer)
	return buffer
}

// resolve brings the samples of smooth together in plain.
func (t *target) resolve() {
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, t.smooth)
	gl.BindFramebuffer(gl.DRAW_FRAMEBUFFER, t.plain)
	gl.BlitFramebuffer(0, 0, t.w, t.h, 0, 0, t.w, t.h, gl.COLOR_BUFFER_BIT, gl.NEAREST)
}

// read resolves the samples and returns the picture, top row first.
func (t *target) read() (*image.RGBA, error) {
	img, err := t.raw()
	if err == nil {
		flip(img)
	}
	return img, err
}

// raw is read with the rows as OpenGL counts them, from below.
func (t *target) raw() (*image.RGBA, error) {
	t.resolve()
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, t.plain)
	gl.PixelStorei(gl.PACK_ALIGNMENT, 1)
	img := image.NewRGBA(image.Rect(0, 0, int(t.w), int(t.h)))
	gl.ReadPixels(0, 0, t.w, t.h, gl.RGBA, gl.UNSIGNED_BYTE, gl.Ptr(img.Pix))
	if e := gl.GetError(); e != gl.NO_ERROR {
		return nil, fmt.Errorf("stage: OpenGL error 0x%X while drawing", e)
	}
	return img, nil
}

// flip turns the rows over.
func flip(img *image.RGBA) {
	h := img.Rect.Dy()
	row := make([]byte, img.Stride)
	for y := range h / 2 {
		a, b := img.Pix[y*img.Stride:][:img.Stride], img.Pix[(h-1-y)*img.Stride:][:img.Stride]
		copy(row, a)
		copy(a, b)
		copy(b, row)
	}
}

func (t *target) release() {
	gl.DeleteFramebuffers(1, &t.smooth)
	gl.DeleteFramebuffers(1, &t.plain)
	for _, b := range []uint32{t.colour, t.depth, t.single} {
		gl.DeleteRenderbuffers(1, &b)
	}
}
