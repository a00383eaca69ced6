//go:build cgo

package window

import (
	"github.com/go-gl/glfw/v3.3/glfw"
)

// wait sleeps until there is something to draw.
func (a *App) wait() {
	if a.opt.Frames > 0 {
		glfw.PollEvents()
		return
	}
	switch {
	case a.moving() && a.slow:
		// Drawing and walking share the processor: no more pictures than help.
		pace := a.opt.Pace
		if pace == 0 {
			pace = 40
		}
		glfw.WaitEventsTimeout(max(1/pace-(a.clockNow()-a.last), 0.001))
	case a.moving():
		glfw.WaitEventsTimeout(1.0 / 120)
	case a.now < a.awake:
		glfw.WaitEventsTimeout(0.05)
	default:
		glfw.WaitEventsTimeout(idleLook)
	}
}

// moving reports whether the picture changes by itself.
func (a *App) moving() bool {
	if a.goal != nil || a.ui.In.Waiting() || a.ui.Typing() || a.turning != nil || len(a.tasks) > 0 || a.errand != nil ||
		a.back.playing {
		return true
	}
	for _, p := range a.panes {
		if p.live != nil && !p.resting() { // a form that is finished wakes the window
			return true
		}
	}
	return false
}

// fullLattice reports whether the cloth hangs on the lattice of its style.
func (a *App) fullLattice() bool {
	p := a.pane()
	return p.frame.Read && p.frame.Outcome.Spacing < p.spacing()+1e-5
}

// idleLook is how often files are looked at, and news that has grown old is taken off,
// while nothing happens, s. Whatever else happens wakes the window.
const idleLook = 1.0

// idle reports whether the picture on the screen may stand as it is.
func (a *App) idle() bool {
	if a.moving() || a.ui.In.Waiting() {
		a.stir()
	}
	expired := a.last < a.note.until && a.note.until <= a.now
	if a.opt.Frames > 0 || a.now < a.awake || expired {
		a.last = a.now
		return false
	}
	return true
}
