//go:build cgo

package window

import (
	"errors"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// A change that the machine has not the memory for is refused before it is hung, for
// all panes together.
func TestAfford(t *testing.T) {
	tooMuch := errors.New("too much")
	s := style.Default()
	a := &App{panes: []*Pane{{Style: s}, {Style: s}},
		opt: Options{Afford: func(s style.Style, p draft.Cowl, panes int) error {
			if panes != 2 || len(p.Outline) == 0 {
				t.Errorf("asked for %d panes of %d points, want 2 of the piece", panes, len(p.Outline))
			}
			return tooMuch
		}}}
	if _, _, err := a.try(&s); !errors.Is(err, tooMuch) {
		t.Errorf("try = %v, want %v", err, tooMuch)
	}
}
