//go:build cgo

package window

import (
	"reflect"

	"cowl/cmd/cowl/internal/style"

	"gonum.org/v1/gonum/spatial/r2"
)

// state returns the present state.
func (a *App) state() desk {
	d := desk{active: a.active}
	for _, p := range a.panes {
		d.panes = append(d.panes, paneState{p.Style.Clone(), p.hands.clone(), p.own})
	}
	return d
}

// change makes a change to the style of the active pane: what says it in words,
// key joins the steps of one drag. A style that cannot be cut is refused and the
// one before it stays.
func (a *App) change(what, key string, edit func(*style.Style) error) {
	a.changePane(a.pane(), what, key, edit)
}

func (a *App) changePane(p *Pane, what, key string, edit func(*style.Style) error) {
	s := p.Style.Clone()
	err := edit(&s)
	if err == nil {
		_, _, err = a.try(&s)
	}
	if err != nil {
		a.complain(err)
		return
	}
	a.past.Record(a.state(), what, key)
	p.Style = s
	if err := a.mount(p); err != nil {
		a.complain(err)
		return
	}
	if a.note.bad {
		a.note = note{}
	}
	p.touched(a.now)
}

// set is change for one number of the style.
func (a *App) setNumber(name string, v float64, what, key string) {
	a.change(what, key, func(s *style.Style) error { return s.Set(name, v, "") })
}

// again places the cloth of every pane by another hand.
func (a *App) again() {
	a.past.Record(a.state(), "another placing", "")
	for _, p := range a.panes {
		p.Style.Hang.Seed = p.seed() + 1
		p.hands = hands{}
		if p.dummy != nil {
			p.restart()
		}
		p.touched(a.now)
	}
}

// seed is that of the hand that placed the cloth.
func (p *Pane) seed() uint64 { return p.Style.Hang.Seed }

// undo takes the last change back; redo makes it again.
func (a *App) undo() { a.goTo(a.past.Undo, "Undone: ") }
func (a *App) redo() { a.goTo(a.past.Redo, "Done again: ") }

func (a *App) goTo(step func(desk) (desk, string, bool), word string) {
	to, what, ok := step(a.state())
	if !ok {
		a.say("There is nothing to go back to.")
		return
	}
	a.restore(to)
	a.say(word + what + ".")
}

// restore makes d the present state. Cloth that was pulled since hangs anew.
func (a *App) restore(d desk) {
	a.count(len(d.panes))
	a.active = d.active
	for i, want := range d.panes {
		p := a.panes[i]
		anew := p.hands.touch != want.hands.touch
		was := p.hands
		if !reflect.DeepEqual(p.Style, want.style) || !reflect.DeepEqual(was, want.hands) {
			p.touched(a.now)
		}
		p.Style, p.hands, p.own = want.style.Clone(), want.hands.clone(), want.own
		if err := a.mount(p); err != nil {
			a.complain(err)
			continue
		}
		switch {
		case p.live == nil:
		case anew:
			p.restart()
		default:
			p.repin(was, p.hands)
		}
	}
}

// repin sets and takes out pins so that those of one state become those of another.
func (p *Pane) repin(was, want hands) {
	has := func(list []pinMark, q r2.Vec) bool {
		for _, m := range list {
			if m.flat == q {
				return true
			}
		}
		return false
	}
	for _, m := range was.own {
		if !has(want.own, m.flat) {
			p.live.Unpin(m.flat)
		}
	}
	for _, m := range was.gone {
		if !has(want.gone, m.flat) {
			p.live.Pin(m.flat, m.at)
		}
	}
	for _, m := range want.own {
		if !has(was.own, m.flat) {
			p.live.Pin(m.flat, m.at)
		}
	}
	for _, m := range want.gone {
		if !has(was.gone, m.flat) {
			p.live.Unpin(m.flat)
		}
	}
}

// count makes n panes: more of what the active one shows, or fewer.
func (a *App) count(n int) {
	for len(a.panes) > n {
		last := len(a.panes) - 1
		a.panes[last].release()
		a.panes = a.panes[:last]
	}
	for len(a.panes) < n {
		p := &Pane{Style: a.pane().Style.Clone()}
		a.panes = append(a.panes, p)
		if err := a.mount(p); err != nil {
			a.complain(err)
		}
	}
	a.active = min(a.active, n-1)
}
