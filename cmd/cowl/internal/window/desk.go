//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/style"
)

// desk is a state that undo goes back to.
type desk struct {
	panes  []paneState
	active int
}

// paneState is the state of one pane.
type paneState struct {
	style style.Style
	hands hands
	own   bool
}
