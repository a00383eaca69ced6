//go:build cgo

package stage

import (
	"image"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// Canvas keeps a painted part of a window, so that it is painted again only
// when it changes and not with every move of the mouse. The zero Canvas is
// empty. All its methods belong on the thread of its context.
type Canvas struct {
	target  *target
	samples int32
}

// Paint draws a loaded scene, w × h pixels; smooth asks for several samples a
// pixel. It leaves the framebuffer of the window bound.
func (c *Canvas) Paint(p *Painter, l *Loaded, v View, m Manner, w, h int, smooth bool) error {
	defer gl.BindFramebuffer(gl.FRAMEBUFFER, 0)
	samples := int32(0)
	if smooth {
		samples = smoothly
	}
	if t := c.target; t == nil || t.w != int32(w) || t.h != int32(h) || c.samples != samples {
		c.Release()
		t, err := newTarget(w, h, samples)
		if err != nil {
			return err
		}
		c.target, c.samples = t, samples
	}
	gl.BindFramebuffer(gl.FRAMEBUFFER, c.target.smooth)
	p.PaintIn(l, v, m, image.Rect(0, 0, w, h), h)
	if samples > 0 {
		c.target.resolve()
	}
	return nil
}

// Show copies the canvas into the window, tall pixels high, with its upper left
// corner at (x, y) pixels, Y down.
func (c *Canvas) Show(x, y, tall int) {
	if c.target == nil {
		return
	}
	t := c.target
	from := t.plain
	if c.samples == 0 {
		from = t.smooth // it has one sample a pixel, and needs no bringing together
	}
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, from)
	gl.BindFramebuffer(gl.DRAW_FRAMEBUFFER, 0)
	x0, y0 := int32(x), int32(tall-y)-t.h
	gl.BlitFramebuffer(0, 0, t.w, t.h, x0, y0, x0+t.w, y0+t.h, gl.COLOR_BUFFER_BIT, gl.NEAREST)
	gl.BindFramebuffer(gl.FRAMEBUFFER, 0)
}

// Release frees what the canvas holds in the driver; it is empty then.
func (c *Canvas) Release() {
	if c.target != nil {
		c.target.release()
		c.target = nil
	}
}
