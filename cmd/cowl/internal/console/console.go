// Package console is what a verb of the program talks through: standard output and
// error tamed, progress, JSON, what is saved, how the program ends. Start at [Console].
package console

import (
	"io"

	"cowl/cmd/cowl/internal/stage"
)

// Console is what a verb may write to and draw with.
type Console struct {
	Out, Err io.Writer
	Stage    func() (*stage.Stage, error)
}
