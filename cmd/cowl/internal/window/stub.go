//go:build !cgo

package window

import (
	"fmt"

	"cowl/cmd/cowl/internal/stage"
)

// App cannot be made in this binary.
type App struct{}

// Run always fails: this binary was built without OpenGL.
func Run(Options) error {
	return fmt.Errorf("view: %w: this binary was built without OpenGL; build it with CGO_ENABLED=1 and a C compiler",
		stage.ErrNoDrawing)
}
