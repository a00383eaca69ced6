//go:build cgo

package stage

import (
	"errors"
	"fmt"
	"os"
	"runtime"

	"github.com/go-gl/gl/v4.1-core/gl"
	"github.com/go-gl/glfw/v3.3/glfw"
)

// openHidden makes the context of a window that is never shown current on this
// thread and returns what closes it. It needs a display, and on macOS, where
// windows belong to the main thread, it fails.
func openHidden() (func(), error) {
	// With no display glfw.Init succeeds and the next call panics.
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" {
		return nil, errors.New("window: DISPLAY is not set")
	}
	if err := glfw.Init(); err != nil {
		return nil, fmt.Errorf("window: %w", err)
	}
	window, err := hiddenWindow()
	if err != nil {
		glfw.Terminate()
		return nil, fmt.Errorf("window: %w", err)
	}
	window.MakeContextCurrent()
	closeAll := func() {
		window.Destroy()
		glfw.Terminate()
	}
	if err := gl.Init(); err != nil {
		closeAll()
		return nil, fmt.Errorf("window: %w", err)
	}
	return closeAll, nil
}

func hiddenWindow() (window *glfw.Window, err error) {
	defer func() {
		if r := recover(); r != nil { // the binding panics where the display refuses
			err = fmt.Errorf("%v", r)
		}
	}()
	glfw.WindowHint(glfw.Visible, glfw.False)
	glfw.WindowHint(glfw.ContextVersionMajor, 4)
	glfw.WindowHint(glfw.ContextVersionMinor, 1)
	glfw.WindowHint(glfw.OpenGLProfile, glfw.OpenGLCoreProfile)
	glfw.WindowHint(glfw.OpenGLForwardCompatible, glfw.True)
	window, err = glfw.CreateWindow(16, 16, "cowl", nil, nil)
	if err == nil && window == nil {
		err = errors.New("no window and no reason given")
	}
	return window, err
}
