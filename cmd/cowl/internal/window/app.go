//go:build cgo

package window

import (
	"time"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/body"
	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r2"
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

	eye      Orbit
	goal     *Orbit  // where the eye is gliding to; nil: it stands
	stand    float64 // s, when it began to glide
	named    int     // the named view it stands at, −1: another
	shape    float64 // of the narrowest pane, width over height
	tool     tool
	grip     *grip     // what the hand holds
	mark     mark      // the place under the mouse
	slashing *slashing // what is being drawn on the flat piece
	trimming []r2.Vec  // m, the same
	draws    int       // what the mouse draws there
	drag     int       // mouse button that turns or moves the view, −1: none

	tab        int
	show       mapKind
	noForm     bool
	through    bool // see-through cloth
	trace      trace
	tape       tape
	remarks    remarks
	pointing   bool // the mouse is seen from afar
	back       lookback
	flat       bool // the flat piece is shown
	search     string
	path       string // being typed, to open
	folder     folder // being looked through
	wrote      string // path of what was saved last
	turning    *turning
	shownDrops []drop // of the demonstration, the last one
	offered    offering
	watched    watched

	note    note
	results chan func(*App) // from other goroutines
	tasks   []func()        // to be done between two pictures
	errand  *errand         // nil: none
	display display
	alarm   alarm

	laid    places // of the picture being drawn
	driver  string
	slow    bool    // the driver draws on the processor
	moved   float64 // s, when a pane last changed
	awake   float64 // s, until when every picture is drawn
	last    float64 // s, of the last picture
	now     float64 // s since the start
	start   time.Time
	quit    bool
	painter *stage.Painter
	overlay *stage.Overlay
	atlas   int // version of the atlas in the driver
	wide    int // pixels of the picture
	tall    int
	scale   float64
}

// newApp returns the app of a window that is not there yet.
func newApp(o Options, s Settings) *App {
	a := &App{
		opt: o, ui: panel.New(), set: s, drag: -1, named: firstView,
		dummies:  dummies{map[body.Body]*dummy{}, map[body.Body]bool{}},
		hangLike: drape.HangLike,
		results:  make(chan func(*App), 64),
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

// Style returns the style in the pane that the controls change.
func (a *App) Style() style.Style { return a.pane().Style.Clone() }
