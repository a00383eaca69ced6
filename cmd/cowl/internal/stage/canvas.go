//go:build cgo

package stage

import (
	"image"

	"cowl/mesh"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// Canvas keeps a painted part of a window, so that it is painted again only
// when it changes and not with every move of the mouse. While the eye stands
// still it also keeps the form, over which quick cloth is painted. The zero
// Canvas is empty. All its methods belong on the thread of its context.
type Canvas struct {
	plain, smooth board // of one sample a pixel, and of several
	shown         *board
}

// board is a canvas of so many samples a pixel.
type board struct {
	target *target // nil: none yet
	back   *target // the form alone; nil: none yet
	backOf backdrop
}

// backdrop is all that the form on a canvas depends on.
type backdrop struct {
	form *mesh.Surface
	sky  int // that it sees
	v    View
	room r3.Box
}

// Paint draws a loaded scene, w × h pixels; smooth asks for several samples a
// pixel. It leaves the framebuffer of the window bound.
func (c *Canvas) Paint(p *Painter, l *Loaded, v View, m Manner, w, h int, smooth bool) error {
	defer gl.BindFramebuffer(gl.FRAMEBUFFER, 0)
	b, samples := &c.plain, int32(0)
	if smooth {
		b, samples = &c.smooth, smoothly
	}
	if t := b.target; t == nil || t.w != int32(w) || t.h != int32(h) {
		b.release()
		t, err := newTarget(w, h, samples)
		if err != nil {
			return err
		}
		b.target = t
	}
	c.shown = b
	if m.Quick && !m.NoForm {
		if err := b.paintOver(p, l, v, m, samples); err != nil {
			return err
		}
	} else {
		gl.BindFramebuffer(gl.FRAMEBUFFER, b.target.smooth)
		p.PaintIn(l, v, m, image.Rect(0, 0, w, h), h)
	}
	if smooth {
		b.target.resolve()
	}
	return nil
}

// paintOver paints the cloth over the form, and the form only where it has
// changed.
func (b *board) paintOver(p *Painter, l *Loaded, v View, m Manner, samples int32) error {
	t := b.target
	s := p.sit(l, v, m, int(t.w), int(t.h))
	if want := (backdrop{l.scene.Form, l.sky, v, l.room}); b.back == nil || b.backOf != want {
		if b.back == nil {
			var err error
			if b.back, err = newTarget(int(t.w), int(t.h), samples); err != nil {
				return err
			}
		}
		gl.BindFramebuffer(gl.FRAMEBUFFER, b.back.smooth)
		s.clear(image.Rect(0, 0, int(t.w), int(t.h)), int(t.h))
		s.paintForm()
		b.backOf = want
	}
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, b.back.smooth)
	gl.BindFramebuffer(gl.DRAW_FRAMEBUFFER, t.smooth)
	gl.BlitFramebuffer(0, 0, t.w, t.h, 0, 0, t.w, t.h, gl.COLOR_BUFFER_BIT|gl.DEPTH_BUFFER_BIT, gl.NEAREST)
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.smooth)
	gl.Viewport(0, 0, t.w, t.h)
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthFunc(gl.LESS)
	if s.solid() {
		s.paintCloth()
	}
	s.paintRest()
	return nil
}

// Show copies the canvas into the window, tall pixels high, with its upper left
// corner at (x, y) pixels, Y down.
func (c *Canvas) Show(x, y, tall int) {
	if c.shown == nil || c.shown.target == nil {
		return
	}
	t := c.shown.target
	from := t.plain
	if c.shown == &c.plain {
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
	c.plain.release()
	c.smooth.release()
	c.shown = nil
}

func (b *board) release() {
	for _, t := range []*target{b.target, b.back} {
		if t != nil {
			t.release()
		}
	}
	*b = board{}
}
