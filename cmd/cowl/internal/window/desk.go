//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/style"
)

// desk is a state that undo goes back to.
type desk struct {
	panes  []sheet
	active int
}

// sheet is the state of one pane.
type sheet struct {
	style style.Style
	hands hands
	own   bool
}
