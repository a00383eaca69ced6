//go:build cgo

package window

import (
	"math"

	"cowl/cmd/cowl/internal/panel"

	"github.com/go-gl/glfw/v3.3/glfw"
)

// listen hands what mouse and keyboard do to the panel.
func (a *App) listen(w *glfw.Window) {
	in := &a.ui.In
	var held panel.Mods
	ratio := func() (float64, float64) { // pixels of the picture to those of the mouse
		ww, wh := w.GetSize()
		return float64(a.wide) / float64(max(ww, 1)), float64(a.tall) / float64(max(wh, 1))
	}
	moved := func(x, y float64) {
		kx, ky := ratio()
		in.Post(panel.Event{Kind: panel.Moved, X: x * kx, Y: y * ky, Mods: held})
	}
	w.SetCursorPosCallback(func(_ *glfw.Window, x, y float64) { moved(x, y) })
	w.SetMouseButtonCallback(func(w *glfw.Window, b glfw.MouseButton, act glfw.Action, m glfw.ModifierKey) {
		if b > glfw.MouseButtonMiddle {
			return
		}
		held = mods(m)
		x, y := w.GetCursorPos()
		moved(x, y)
		kind := panel.Down
		if act == glfw.Release {
			kind = panel.Up
		}
		in.Post(panel.Event{Kind: kind, Button: int(b), Mods: held})
	})
	w.SetScrollCallback(func(_ *glfw.Window, x, y float64) {
		in.Post(panel.Event{Kind: panel.Wheeled, X: x, Y: y, Mods: held})
	})
	w.SetCharCallback(func(_ *glfw.Window, r rune) {
		in.Post(panel.Event{Kind: panel.Typed, Rune: r, Mods: held})
	})
	w.SetKeyCallback(func(_ *glfw.Window, k glfw.Key, _ int, act glfw.Action, m glfw.ModifierKey) {
		held = mods(m)
		switch k {
		case glfw.KeyLeftShift, glfw.KeyRightShift:
			held.Shift = act != glfw.Release
		case glfw.KeyLeftControl, glfw.KeyRightControl:
			held.Ctrl = act != glfw.Release
		}
		if key := keyOf(k); key != panel.KeyNone && act != glfw.Release {
			in.Post(panel.Event{Kind: panel.Pressed, Press: panel.Press{Key: key, Mods: held}, Mods: held})
		}
	})
	w.SetDropCallback(func(_ *glfw.Window, names []string) {
		for _, n := range names {
			a.openFile(n)
		}
	})
	w.SetRefreshCallback(func(*glfw.Window) { a.awake = a.now + 2*calm })
	w.SetCursorEnterCallback(func(_ *glfw.Window, entered bool) { in.Present = entered })
	a.ui.Paste = glfw.GetClipboardString
	a.ui.Copy = glfw.SetClipboardString
}

func mods(m glfw.ModifierKey) panel.Mods {
	return panel.Mods{Shift: m&glfw.ModShift != 0, Ctrl: m&(glfw.ModControl|glfw.ModSuper) != 0, Alt: m&glfw.ModAlt != 0}
}

var keys = map[glfw.Key]panel.Key{
	glfw.KeyTab: panel.KeyTab, glfw.KeyEnter: panel.KeyEnter, glfw.KeyKPEnter: panel.KeyEnter,
	glfw.KeyEscape: panel.KeyEscape, glfw.KeySpace: panel.KeySpace,
	glfw.KeyLeft: panel.KeyLeft, glfw.KeyRight: panel.KeyRight, glfw.KeyUp: panel.KeyUp, glfw.KeyDown: panel.KeyDown,
	glfw.KeyHome: panel.KeyHome, glfw.KeyEnd: panel.KeyEnd, glfw.KeyPageUp: panel.KeyPageUp,
	glfw.KeyPageDown:  panel.KeyPageDown,
	glfw.KeyBackspace: panel.KeyBackspace, glfw.KeyDelete: panel.KeyDelete,
	glfw.KeyEqual: panel.KeyPlus, glfw.KeyKPAdd: panel.KeyPlus, glfw.KeyMinus: panel.KeyMinus,
	glfw.KeyKPSubtract: panel.KeyMinus,
	glfw.KeyF1:         panel.KeyF1, glfw.KeyF9: panel.KeyF9, glfw.KeyF10: panel.KeyF10, glfw.KeyF11: panel.KeyF11,
}

// keyOf returns the key of the panel, KeyNone for those it does not listen to.
func keyOf(k glfw.Key) panel.Key {
	switch {
	case k >= glfw.KeyA && k <= glfw.KeyZ:
		return panel.KeyA + panel.Key(k-glfw.KeyA)
	case k >= glfw.Key0 && k <= glfw.Key9:
		return panel.Key0 + panel.Key(k-glfw.Key0)
	case k >= glfw.KeyKP0 && k <= glfw.KeyKP9:
		return panel.Key0 + panel.Key(k-glfw.KeyKP0)
	}
	return keys[k]
}

// largeLetters is how much larger everything is for a projector.
const largeLetters = 1.4

// measure reads the size of the picture and settles the scale: that of the
// display or the user's, less where the window would be too small for it.
func (a *App) measure(w *glfw.Window) {
	was := [2]int{a.wide, a.tall}
	a.wide, a.tall = w.GetFramebufferSize()
	if was != [2]int{a.wide, a.tall} {
		a.awake = a.now + 2*calm
	}
	s := a.set.Scale
	if a.opt.Scale > 0 {
		s = a.opt.Scale
	}
	if s == 0 {
		x, _ := w.GetContentScale()
		s = max(float64(x), 1)
	}
	if a.set.Large {
		s *= largeLetters
	}
	a.scale = max(min(s, a.mostScale()), 0.75)
	a.scale = math.Round(a.scale*20) / 20
	if !a.display.full {
		a.set.Wide, a.set.Tall = w.GetSize()
	}
}

// mostScale is the largest scale at which everything has room in the window.
func (a *App) mostScale() float64 {
	return min(float64(a.wide)/leastWide, float64(a.tall)/leastTall)
}

// setLarge turns large letters on or off, and says so where they cannot grow.
func (a *App) setLarge(on bool) {
	if on && !a.set.Large && a.mostScale() < 1.1*a.scale {
		a.say("There is no room for larger letters: make the window larger.")
	}
	a.set.Large = on
}

// fullScreen goes to the full screen and back.
func (a *App) fullScreen() {
	a.display.want = !a.display.full
	if a.display.want {
		a.say("The whole screen, with all keys as before. F11 or Escape brings the panels back.")
	}
}
