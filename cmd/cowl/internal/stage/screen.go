//go:build cgo

package stage

import (
	"fmt"
	"image"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// UseContext loads the OpenGL functions of the context that is current on this
// thread, that of a window. It fails, wrapping ErrNoDrawing, where that is
// older than OpenGL 4.1.
func UseContext() error {
	if err := gl.Init(); err != nil {
		return fmt.Errorf("stage: %w: OpenGL 4.1 is wanted: %v", ErrNoDrawing, err)
	}
	return nil
}

// Driver names what draws in the current context.
func Driver() string { return gl.GoStr(gl.GetString(gl.RENDERER)) }

// contextLost is GL_CONTEXT_LOST of the extension KHR_robustness.
const contextLost = 0x0507

// Trouble returns why the current context can no longer draw, or nil.
func Trouble() error {
	switch e := gl.GetError(); e {
	case gl.OUT_OF_MEMORY:
		return fmt.Errorf("stage: %w: the graphics driver is out of memory", ErrNoDrawing)
	case contextLost:
		return fmt.Errorf("stage: %w: the graphics driver was reset", ErrNoDrawing)
	}
	return nil
}

// ClearScreen fills the framebuffer that is bound, w × h pixels.
func ClearScreen(l Look, w, h int) {
	bg := srgb(l.withDefaults().Background)
	gl.Viewport(0, 0, int32(w), int32(h))
	gl.ClearColor(float32(bg[0]), float32(bg[1]), float32(bg[2]), 1)
	gl.Clear(gl.COLOR_BUFFER_BIT)
}

// ReadScreen returns the picture in the framebuffer that is bound, top row first.
func ReadScreen(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	gl.PixelStorei(gl.PACK_ALIGNMENT, 1)
	gl.ReadPixels(0, 0, int32(w), int32(h), gl.RGBA, gl.UNSIGNED_BYTE, gl.Ptr(img.Pix))
	flip(img)
	return img
}

// Shot draws a loaded scene off screen, w × h pixels, and leaves the bound
// framebuffer bound. Where the driver has fewer samples a pixel than a picture
// is to have, it is drawn twice as wide and tall and brought together: without
// a GPU that takes no longer, and smooths highlights as well as rims. It fails
// where the picture is too large for the driver.
func (p *Painter) Shot(l *Loaded, v View, m Manner, w, h int) (*image.RGBA, error) {
	back := drawFrame()
	defer gl.BindFramebuffer(gl.FRAMEBUFFER, back)
	times, samples := 1, int32(still)
	if can, most := limits(); can < still && w > 0 && h > 0 && 2*max(w, h) <= most {
		times, samples = 2, 0
	}
	t, err := newTarget(times*w, times*h, samples)
	if err != nil {
		return nil, err
	}
	defer t.release()
	p.PaintIn(l, v, m, image.Rect(0, 0, times*w, times*h), times*h)
	img, err := t.read()
	if err != nil || times == 1 {
		return img, err
	}
	return halved(img), nil
}

// halved brings 2 × 2 pixels together in one.
func halved(img *image.RGBA) *image.RGBA {
	w, h := img.Rect.Dx()/2, img.Rect.Dy()/2
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		a, b := img.Pix[2*y*img.Stride:], img.Pix[(2*y+1)*img.Stride:]
		row := out.Pix[y*out.Stride:]
		for x := range w {
			for c := range 4 {
				i := 8*x + c
				row[4*x+c] = uint8((int(a[i]) + int(a[i+4]) + int(b[i]) + int(b[i+4]) + 2) / 4)
			}
		}
	}
	return out
}
