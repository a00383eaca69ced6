//go:build cgo

package stage

import (
	"image"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// Canvas keeps a painted part of a window, so that it is painted again only
// when it changes and not with every move of the mouse. While the eye stands
// still it also keeps the form, over which quick cloth is painted. The zero
// Canvas is empty. All its methods belong on the thread of its context.
type Canvas struct {
	target  *target
	samples int32
	back    *target // the form alone
	backOf  backdrop
}

// backdrop is all that the form on a canvas depends on.
type backdrop struct {
	form buffer
	v    View
	room r3.Box
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
	if m.Quick && !m.NoForm {
		if err := c.paintOver(p, l, v, m); err != nil {
			return err
		}
	} else {
		gl.BindFramebuffer(gl.FRAMEBUFFER, c.target.smooth)
		p.PaintIn(l, v, m, image.Rect(0, 0, w, h), h)
	}
	if samples > 0 {
		c.target.resolve()
	}
	return nil
}

// paintOver paints the cloth over the form, and the form only where it has
// changed.
func (c *Canvas) paintOver(p *Painter, l *Loaded, v View, m Manner) error {
	t := c.target
	s := p.sit(l, v, m, int(t.w), int(t.h))
	if want := (backdrop{l.form, v, l.room}); c.back == nil || c.backOf != want {
		if c.back == nil {
			var err error
			if c.back, err = newTarget(int(t.w), int(t.h), c.samples); err != nil {
				return err
			}
		}
		gl.BindFramebuffer(gl.FRAMEBUFFER, c.back.smooth)
		s.clear(image.Rect(0, 0, int(t.w), int(t.h)), int(t.h))
		s.paintForm()
		c.backOf = want
	}
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, c.back.smooth)
	gl.BindFramebuffer(gl.DRAW_FRAMEBUFFER, t.smooth)
	gl.BlitFramebuffer(0, 0, t.w, t.h, 0, 0, t.w, t.h, gl.COLOR_BUFFER_BIT|gl.DEPTH_BUFFER_BIT, gl.NEAREST)
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.smooth)
	gl.Viewport(0, 0, t.w, t.h)
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	s.paintCloth()
	s.paintRim()
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
	for _, t := range []**target{&c.target, &c.back} {
		if *t != nil {
			(*t).release()
			*t = nil
		}
	}
}
