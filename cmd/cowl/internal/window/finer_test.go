//go:build cgo

package window

import (
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// Ticked, what rests is refined and its figures tell what that moved; undo shows the coarse
// cloth again, redo the fine. A spacing too small to be halved takes the tick away, and the
// cloth hangs on.
func TestRefines(t *testing.T) {
	d := start(t, func(o *Options) { // halved once, to 10 mm
		f := &o.Style.Fabric
		f.BendWarp, f.BendWeft, f.BendBias = 290e-6, 290e-6, 290e-6
	})
	d.rest()
	d.click("tab/Cut")
	d.x("mousemove", "150", "500", "click", "--repeat", "40", "--delay", "5", "5") // scrolled to its end
	d.settle()
	d.click("refine")
	d.until("what rests to be refined", func(a *App) bool {
		p := a.pane()
		return p.Style.Hang.Fine && (p.frame.Refining && stageWords(p) == "at rest, refining" || isFine(a))
	})
	d.shot("refining.png")
	d.until("the finer lattice", isFine)
	d.shown()
	d.shot("refined.png")
	d.ask(func(a *App) {
		p := a.pane()
		if text := measure.HalvedIn(a.units, &p.frame.Outcome); !strings.HasPrefix(text, "20.0 mm → 10.0 mm: edge drop") ||
			!strings.Contains(string(p.Style.YAML()), "fine: true") || len(a.ui.Shortened) > 0 {
			t.Errorf("refined: %q, style %s, no room for %q", text, p.Style.YAML(), a.ui.Shortened)
		}
	})
	d.key("ctrl+z")
	d.until("the coarse cloth", func(a *App) bool { return !a.pane().Style.Hang.Fine && !isFine(a) && a.pane().resting() })
	d.key("ctrl+shift+z")
	d.until("the fine cloth", func(a *App) bool { return a.pane().Style.Hang.Fine && isFine(a) })
	d.ask(func(a *App) { a.setSpacing(0.0055) })
	d.until("cloth of 5.5 mm, not to be refined", func(a *App) bool {
		p := a.pane()
		return !p.Style.Hang.Fine && p.Style.Hang.Spacing == 0.0055 && p.asked.refused == nil && !p.stale() && p.hasCloth()
	})
}

// isFine reports whether the refined cloth is at rest before the eye.
func isFine(a *App) bool {
	f := &a.pane().frame
	return f.Stage == drape.StageRest && f.Outcome.Coarser != nil
}

// What can be halved once is halved, what is too close is left.
func TestFinest(t *testing.T) {
	s := style.Default()
	for _, c := range []struct {
		spacing float64
		halves  bool
	}{{0.020, true}, {0.006, true}, {0.0055, false}, {0.002, false}} {
		s.Hang.Spacing = c.spacing
		if got := finest(&s); (got < c.spacing) != c.halves {
			t.Errorf("finest of %g m = %g, want halved %t", c.spacing, got, c.halves)
		}
	}
}

// A style that leaves the lattice to the cloth is refined at rest until the tick is taken
// off; a slider that is moved keeps the tick.
func TestRefinesByItself(t *testing.T) {
	d := start(t, func(o *Options) { o.Style.Hang.Spacing = draft.Auto })
	lattice := func(what string, spacing float64, fine bool) {
		t.Helper()
		d.ask(func(a *App) {
			if h, on := a.pane().Style.Hang.Lattice(); h != spacing || on != fine {
				t.Errorf("%s: lattice of %g m, refined %t, want %g and %t", what, h, on, spacing, fine)
			}
		})
	}
	lattice("opened", style.Look, true)
	d.ask(func(a *App) { a.setSpacing(0.020) })
	lattice("slid", 0.020, true)
	d.ask(func(a *App) { a.setFine(false) })
	lattice("tick taken off", 0.020, false)
	d.ask((*App).undo)
	d.ask((*App).undo)
	lattice("undone", style.Look, true)
	d.ask(func(a *App) { a.setFine(false) })
	lattice("tick taken off at once", style.Look, false)
}
