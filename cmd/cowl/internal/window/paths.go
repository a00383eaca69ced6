//go:build cgo

package window

import (
	"os"
	"time"
)

// paths are the files that the window opens and has written.
type paths struct {
	path    string   // being typed, to open
	folder  folder   // being looked through
	wrote   string   // of what was saved last
	offered offering // what was not saved
	watched watched
}

// watched is the fabric file in use: it is read again when it changes.
type watched struct {
	path string
	pane *Pane
	seen time.Time // when the file was changed last
	look float64   // s, when to look next
}

// changed returns when a file was changed last; zero where it is gone.
func changed(path string) time.Time {
	info, err := os.Stat(path)
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}
