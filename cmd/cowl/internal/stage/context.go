//go:build cgo

package stage

import (
	"fmt"
)

// open makes an OpenGL context current on this thread: without a display if
// that works, else in a hidden window. It returns what closes the context.
func open() (func(), error) {
	shut, errEGL := openEGL()
	if errEGL == nil {
		return shut, nil
	}
	shut, errHidden := openHidden()
	if errHidden == nil {
		return shut, nil
	}
	return nil, fmt.Errorf("stage: %w: OpenGL 4.1 cannot be started: %v; %v; "+
		"on Debian install libegl1 and libgl1-mesa-dri, or run under a display (xvfb-run)", ErrNoDrawing, errEGL, errHidden)
}
