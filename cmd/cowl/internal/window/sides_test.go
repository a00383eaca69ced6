//go:build cgo

package window

import (
	"testing"

	"cowl/cmd/cowl/internal/panel"
)

// In the panel as it opens at 1280 and at 1920 the name of every fabric of the library is
// read whole, as the chosen one too.
func TestNamesAreWhole(t *testing.T) {
	a := newApp(Options{Style: quickStyle(t)}, defaults())
	n := 0
	for _, wide := range []int{1280, 1920} {
		a.wide, a.tall, a.scale = wide, 800, 1
		a.ui.Begin(wide, 800, 1, 0)
		room := a.layout().left.W - 2*16 - 2*11 - 12 // rims, insets and scroll bar
		for _, f := range limpest {
			n++
			if u := a.ui; u.Width(f.Title, panel.Style{Size: panel.Small.Size, Bold: true}) > room {
				t.Errorf("at %d: %q is %.0f wide, there is room for %.0f", wide, f.Title, u.Width(f.Title, panel.Strong), room)
			}
		}
	}
	if n < 20 {
		t.Fatalf("%d names, want the library twice", n)
	}
}

// A panel is drawn out by its rim, put away by a double click or a key and brought back
// by a click; the widths are kept as settings.
func panelsDrawn(d *drive) {
	rim := func() (x, y float64) {
		r := d.place("side/left")
		return r.X + r.W/2, 400
	}
	x, y := rim()
	d.x("mousemove", px(x), px(y))
	d.settle()
	d.x("mousedown", "1")
	d.settle()
	d.x("mousemove", px(x+60), px(y))
	d.settle()
	d.x("mouseup", "1")
	d.settle()
	d.ask(func(a *App) {
		if got := a.layout().left.W; !near(got, sideWide+60, 2) || !near(a.set.Sides.Left.Wide, got, 1) {
			d.Errorf("drawn out by 60 the panel is %g wide, want %d", got, sideWide+60)
		}
	})
	d.shot("wide.png")
	x, _ = rim()
	d.x("mousemove", px(x), px(y))
	d.settle()
	d.x("click", "--repeat", "2", "--delay", "40", "1")
	d.until("a panel that is away", func(a *App) bool { return a.set.Sides.Left.Away && a.layout().left.Empty() })
	d.key("F10")
	d.until("both away", func(a *App) bool { return a.layout().right.Empty() && a.layout().centre.W > 1240 })
	d.shot("away.png")
	d.key("F10")
	d.click("side/left")
	d.until("both back", func(a *App) bool { l := a.layout(); return !l.left.Empty() && !l.right.Empty() })
	d.ask(func(a *App) { a.set.Sides.Left.Wide = 0 })
}

// F11 fills the screen and puts the panels away; Escape brings window and panels back.
func TestFullScreen(t *testing.T) {
	d := start(t, func(o *Options) { o.Size = [2]int{1000, 700} })
	d.until("a window", func(a *App) bool { return a.wide == 1000 && a.pane().dummy != nil })
	d.ask(func(a *App) { freeze(t, a) })
	d.x("mousemove", "500", "300")
	d.settle()
	d.key("F11")
	d.until("the whole screen", func(a *App) bool {
		l := a.layout()
		return a.wide == 1280 && a.tall == 800 && l.panes[0] == panel.Rect{W: 1280 / a.scale, H: 800 / a.scale}
	})
	d.shot("full.png")
	d.key("3")
	d.until("the side view", func(a *App) bool { return a.named == 2 })
	d.key("Escape")
	d.until("the window", func(a *App) bool { return a.wide == 1000 && a.tall == 700 && !a.layout().left.Empty() })
	d.ask(func(a *App) {
		if a.set.Wide != 1000 {
			t.Errorf("the window opens %d wide the next time, want 1000", a.set.Wide)
		}
	})
}
