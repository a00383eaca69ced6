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
