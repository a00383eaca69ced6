//go:build cgo && !linux

package stage

import "errors"

// openEGL reports that there is no surfaceless EGL here; a hidden window is
// used instead.
func openEGL() (func(), error) {
	return nil, errors.New("EGL: only used on Linux")
}
