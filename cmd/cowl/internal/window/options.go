// Package window is cowl's window: controls on the left, the form and the cloth
// in the middle, readings on the right. One hangs a style, changes its cut and
// its cloth, takes hold of it and watches it settle. The drape walks on
// goroutines of its own (drape.Live); everything here runs on the thread of the
// window, but for what takes long: forms, smooth surfaces, files, and the other hands
// that tell how far a figure spreads (fiveHands). A tape and remarks lie over the
// cloth and on pictures that are saved. Start at Run and App.
package window

import (
	"context"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// Options says what a window opens with. Folders left empty are those of the
// user.
type Options struct {
	Style  style.Style
	Path   string  // file the style was read from; empty: the built-in demo
	Config string  // folder of settings and of the style kept safe
	Out    string  // folder to save to; empty: that of the settings
	Scale  float64 // pixels a unit; 0: that of the settings, else of the display
	Size   [2]int  // pixels of the window; 0: that of the settings

	// Save writes files into a folder, all of them whole or none at all, and makes
	// the folder where it is missing.
	Save func(dir string, files []File) error
	// Pattern writes the flat piece in a format: svg, pdf or dxf. The names of the
	// files begin with "draft" where a name of the style is to stand.
	Pattern func(s style.Style, p draft.Cowl, format string) ([]File, error)
	// Result writes an outcome as result.json does.
	Result func(style.Style, draft.Cowl, drape.Outcome) ([]byte, error)
	// Afford refuses a style that the machine has not the memory for in so many
	// panes; nil: none.
	Afford func(s style.Style, p draft.Cowl, panes int) error

	Pace    float64         // pictures a second at most while cloth falls, where the processor draws; 0: 40
	Context context.Context // ends the window when it is done; nil: never
	Frames  int             // >0: draw this many pictures as fast as can be, report, end
	Report  func(Timing)    // with Frames
	Ready   func(*App)      // called once, on the thread of the window, for tests
	Drawn   func(*App)      // called there when a picture is on the screen, for tests
}

// File is a file to be saved.
type File struct {
	Name string
	Data []byte
}

// Timing is how long pictures took, in ms.
type Timing struct {
	Driver            string
	Pictures, Nodes   int
	Mean, Worst, Busy float64 // Busy: on the processor of the drawing thread, without waiting for the screen
}
