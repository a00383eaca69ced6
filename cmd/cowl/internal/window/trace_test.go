//go:build cgo

package window

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"cowl/cmd/cowl/internal/panel"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// On two squares of 0.2 m apart in the flat a line at 45° is as long as the square's
// diagonal, lies on the same place in space, and breaks in the gap.
func TestFollow(t *testing.T) {
	s := twoLayers()
	way := r2.Scale(math.Sqrt2/2, r2.Vec{X: 1, Y: 1})
	runs := follow(&s, r2.Vec{X: 0.1, Y: 0.1}, way)
	if len(runs) != 1 {
		t.Fatalf("%d runs, want one", len(runs))
	}
	first, last := runs[0][0].flat(&s), runs[0][len(runs[0])-1].flat(&s)
	if long := r2.Norm(r2.Sub(last, first)); !near(long, 0.2*math.Sqrt2, 2*traceStep) {
		t.Errorf("the line is %.3f m long, want the diagonal, %.3f m", long, 0.2*math.Sqrt2)
	}
	for _, f := range runs[0] {
		if want, ok := inSpace(&s, f.flat(&s)); !ok || r3.Norm(r3.Sub(want, f.at(&s))) > 1e-9 {
			t.Fatalf("%v lies at %v, want %v", f.flat(&s), f.at(&s), want)
		}
	}
	if runs := follow(&s, r2.Vec{X: 0.1, Y: 0.1}, r2.Vec{X: 1}); len(runs) != 2 {
		t.Errorf("along both squares: %d runs, want two", len(runs))
	}
}

// W shows the flat piece and the lines; a click there picks their place, and they are
// drawn in both.
func linesFollowed(d *drive) {
	d.key("w")
	d.until("the flat piece", func(a *App) bool { return a.flat && a.trace.on })
	r := d.place("flatpiece")
	var at panel.Point
	var want r2.Vec
	d.ask(func(a *App) {
		want = r2.Vec{X: -0.05, Y: a.pane().cowl.FoldY - 0.15}
		at = fitFlat(panel.Rect{X: r.X + 24, Y: r.Y + 44, W: r.W - 48, H: r.H - 92}, a.pane().cowl.Outline).at(want)
	})
	d.x("mousemove", px(at.X), px(at.Y))
	d.settle()
	d.x("click", "1")
	d.settle()
	d.ask(func(a *App) {
		p := a.pane()
		if off := r2.Norm(r2.Sub(a.trace.at, want)); off > 0.004 {
			d.Errorf("picked %v, want %v", a.trace.at, want)
		}
		lines := p.traced.ribbons(&p.frame.Sheet)
		if len(lines) < 3 || p.drawn.trace != a.trace {
			d.Errorf("%d lines on the drape, drawn %+v, want three or more of %+v", len(lines), p.drawn.trace, a.trace)
		}
		p.keep.unsaved = false
	})
	d.x("mousemove", "640", "3")
	d.golden("lines.png")
}

// The pattern is saved under the name of the style, a second time beside the first.
func patternSaved(d *drive) {
	d.click("tab/Files")
	for _, c := range []struct{ button, file, also string }{
		{"pattern/PDF", "trial.pdf", "trial-sheet.pdf"}, {"pattern/PDF", "trial-2.pdf", "trial-2-sheet.pdf"},
		{"pattern/SVG", "trial.svg", "trial-sheet.svg"}, {"pattern/DXF", "trial.dxf", "trial-sheet.dxf"},
	} {
		d.click(c.button)
		d.until(c.file, func(a *App) bool {
			_, err := os.Stat(filepath.Join(d.out, c.file))
			_, also := os.Stat(filepath.Join(d.out, c.also))
			return err == nil && also == nil && a.errand == nil
		})
	}
	d.shot("files.png")
}
