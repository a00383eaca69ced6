//go:build !cgo

package stage

import (
	"fmt"
	"image"
)

// Stage cannot draw in this binary.
type Stage struct{}

func noOpenGL() error {
	return fmt.Errorf("stage: %w: this binary was built without OpenGL; build it with CGO_ENABLED=1 and a C compiler",
		ErrNoDrawing)
}

// New always fails: this binary was built without OpenGL.
func New() (*Stage, error) { return nil, noOpenGL() }

// Draw always fails: this binary was built without OpenGL.
func (*Stage) Draw(Scene, View, int, int) (*image.RGBA, error) { return nil, noOpenGL() }

// drawAll always fails, as Draw does.
func (*Stage) drawAll(Scene, []shot) ([]*image.RGBA, error) { return nil, noOpenGL() }

// Close does nothing.
func (*Stage) Close() {}
