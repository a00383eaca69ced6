//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape"
)

// App is everything behind the window. It belongs to the thread of the window.
type App struct {
	opt      Options
	ui       *panel.UI
	set      Settings
	units    Units
	panes    []*Pane
	active   int
	past     History[desk]
	dummies  dummies
	hangLike hanger

	camera
	mouse
	seeing
	paths
	demonstration
	times
	device
	extent

	tab         int
	remarks     remarks
	back        lookback
	search      string  // among the fabrics
	leanBy      float64 // rad, the wearer is to bend forward
	shownPlaces places  // of the picture being drawn
	display     display

	note    note
	results chan func(*App) // from other goroutines
	tasks   []func()        // to be done between two pictures
	errand  *errand         // nil: none
	alarm   alarm
	quit    bool
}

// newApp returns the app of a window that is not there yet.
func newApp(o Options, s Settings) *App {
	a := &App{
		opt: o, ui: panel.New(), set: s, camera: camera{named: firstView}, mouse: mouse{drag: -1},
		dummies:  dummies{map[standing]*dummy{}, map[standing]bool{}},
		hangLike: drape.HangLike, leanBy: usualLean,
		results: make(chan func(*App), 64),
	}
	a.panes = []*Pane{{Style: o.Style.Clone(), own: true}}
	if a.path = o.Path; a.path != "" {
		a.set.Recent = remembered(a.set.Recent, a.path)
	}
	return a
}

// post hands something to do to the thread of the window, and wakes it.
func (a *App) post(do func(*App)) {
	a.results <- do
	a.alarm.ring()
}

// pane returns the pane that the controls change.
func (a *App) pane() *Pane { return a.panes[a.active] }

// note is a line of news.
type note struct {
	text  string
	bad   bool
	until float64 // s; bad news stays until the next change
}

// say shows news for a while.
func (a *App) say(text string) { a.note = note{text, false, a.now + 6} }

// complain shows why something could not be done.
func (a *App) complain(err error) {
	a.note = note{a.set.Units.Words(err), true, a.now + 15}
}

// usualLean is how far a wearer bends at first, rad.
const usualLean = 30 * degree

// says is that of the pane that the controls change.
func (a *App) says(text string) string { return a.pane().says(text) }
