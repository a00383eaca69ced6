//go:build cgo

package window

import (
	"errors"

	"cowl/cmd/cowl/internal/panel"
)

// errand is something that takes a while, and goes on between pictures of the window or
// on another goroutine. There is one at a time.
type errand struct {
	text  string
	share float64                       // 0..1 of it is done
	step  func() (done bool, err error) // once a picture; nil: it goes on elsewhere
	then  func()                        // after the last step
	free  func()                        // lets go of what it holds, however it ends; may be nil
	stays bool                          // it cannot be stopped: it is nearly done
}

// begin starts an errand, unless another is on.
func (a *App) beginErrand(e *errand) bool {
	if a.errand != nil {
		a.say("Still busy: " + a.errand.text)
		return false
	}
	a.errand = e
	return true
}

// endErrand lets go of the errand.
func (a *App) endErrand() {
	if e := a.errand; e != nil && e.free != nil {
		e.free()
	}
	a.errand = nil
}

// cancel stops the errand where it can be stopped, and reports whether it did.
func (a *App) cancel() bool {
	if a.errand == nil || a.errand.stays {
		return false
	}
	a.endErrand()
	a.say("Stopped. Nothing was saved.")
	return true
}

// doTasks does one thing that was put off until after a picture, and a step of the errand.
func (a *App) doTasks() {
	if len(a.tasks) > 0 {
		do := a.tasks[0]
		a.tasks = a.tasks[1:]
		do()
	}
	e := a.errand
	if e == nil || e.step == nil {
		return
	}
	switch done, err := e.step(); {
	case err != nil:
		a.endErrand()
		a.complain(err)
	case done:
		a.endErrand()
		if e.then != nil {
			e.then()
		}
	}
}

// errandBar shows how far the errand is, and a button that stops it. It takes its room
// off the right of r.
func (a *App) errandBar(r *panel.Rect) {
	u, e := a.ui, a.errand
	if e == nil {
		return
	}
	if !e.stays {
		if u.Button("cancel", r.Right(72).Shrunk(0, 3), "Stop", "Stops it; nothing is saved. Escape does the same.") {
			a.cancel()
			return
		}
		r.Right(10)
	}
	bar := r.Right(110)
	u.Bar(panel.Rect{X: bar.X, Y: bar.Y + bar.H/2 - 3, W: bar.W, H: 6}, e.share)
	r.Right(10)
	text := u.Fit(e.text, r.W, panel.Plain)
	u.Words(text, r.X+r.W, r.Y+20, 1, panel.Plain, u.Theme.Ink)
	r.Right(u.Width(text, panel.Plain) + 16)
}

var errNoCloth = errors.New("there is no cloth yet: the form is still being made")
