//go:build !cgo

package stage

import (
	"errors"
	"testing"
)

func TestNewWithoutCgo(t *testing.T) {
	st, err := New()
	if st != nil || !errors.Is(err, ErrNoDrawing) {
		t.Errorf("New() = %v, %v, want nil and ErrNoDrawing", st, err)
	}
}
