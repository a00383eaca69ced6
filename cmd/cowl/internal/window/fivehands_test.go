//go:build cgo

package window

import (
	"context"
	"slices"
	"testing"

	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// An amount and its spread have one unit where both have the same.
func TestPlusMinus(t *testing.T) {
	for _, c := range [][3]string{
		{"12.8 cm", "0.3 cm", "12.8 ± 0.3 cm"}, {"5 1/8 in", "3/32 in", "5 1/8 ± 3/32 in"},
		{"1 1/4 in", "0 in", "1 1/4 ± 0 in"}, {"3 mm", "0.4 cm", "3 mm ± 0.4 cm"}, {"2", "1", "2 ± 1"},
	} {
		if got := plusMinus(c[0], c[1]); got != c[2] {
			t.Errorf("plusMinus(%q, %q) = %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

// H hangs the style by four more hands beside the window: stopped, nothing is told; let
// go on, figures are told with the spread of the five, until the style is changed.
func fiveHandsHang(d *drive) {
	on := make(chan bool, manyHands) // lets one hand come to rest
	var seeds []uint64
	d.ask(func(a *App) {
		base := a.pane().frame.Job.Seed
		a.hangLike = func(ctx context.Context, j drape.Job, first *drape.Outcome) (*drape.Run, error) {
			j.Report(drape.Progress{Stage: drape.StageSettling, Residual: 0.03})
			select {
			case <-on:
			case <-ctx.Done():
				return nil, ctx.Err()
			}
			o := *first
			o.EdgeDrop += []float64{0, -0.004, -0.002, 0.002, 0.004}[j.Seed-base] // a deviation of √10 mm
			d.app.post(func(*App) { seeds = append(seeds, j.Seed-base) })
			return &drape.Run{Outcome: o}, nil
		}
	})
	drop := func(a *App) string {
		f := measure.Named("edge_drop_mm")
		return a.withSpread(a.pane(), f, f.SI(&a.pane().frame.Outcome))
	}
	d.x("mousemove", "640", "300")
	d.key("h")
	on <- true
	d.until("a second hand, a third on its way", func(a *App) bool {
		f := a.pane().five
		return f != nil && len(f.each) == 2 && f.share[2] > 0.3 && drop(a) == "12.8 cm"
	})
	d.click("tab/Compare")
	d.shot("five-hanging.png")
	d.click("compare/five")
	d.until("none", func(a *App) bool { return a.pane().five == nil && drop(a) == "12.8 cm" })
	seeds = nil
	d.key("h")
	for range manyHands - 1 {
		on <- true
	}
	d.until("five hands", func(a *App) bool { return a.pane().five != nil && a.pane().five.cancel == nil })
	d.shot("five.png")
	d.ask(func(a *App) {
		if got, want := drop(a), "12.8 ± 0.3 cm"; got != want || !slices.Equal(seeds, []uint64{1, 2, 3, 4}) {
			d.Errorf("hands %v beside the one shown: the drop is %q, want four, and %q", seeds, got, want)
		}
		a.setNumber("extension", 0.10, "the extension", "")
		if got := drop(a); got != "12.8 cm" {
			d.Errorf("after a change the drop is %q, want no spread", got)
		}
		a.undo()
		a.pane().stopFive()
		a.hangLike = drape.HangLike
	})
}
