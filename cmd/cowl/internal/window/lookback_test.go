//go:build cgo

package window

import (
	"testing"

	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r3"
)

// However long a fall, its first and last moment are kept, and those between evenly; a
// new way makes the rest what was before.
func TestPastIsThinned(t *testing.T) {
	var h past
	for k := range 5000 {
		f := drape.Frame{Serial: uint64(k + 1), Stage: drape.StageSettling}
		if k == 4999 {
			f.Stage = drape.StageRest
		}
		h.keep(&f, 100+0.05*float64(k))
	}
	n := len(h.moments)
	if n > mostMoments || n < mostMoments/3 || h.moments[0].frame.Serial != 1 || h.moments[n-1].frame.Serial != 5000 {
		t.Fatalf("%d moments from %d to %d, want at most %d, from the first to the last", n, h.moments[0].frame.Serial,
			h.moments[n-1].frame.Serial, mostMoments)
	}
	for k := 1; k < n; k++ {
		if gap := h.moments[k].at - h.moments[k-1].at; gap <= 0 || gap > 3*h.every+1e-9 {
			t.Fatalf("moment %d comes %.2f s after the one before, want up to %.2f", k, gap, 3*h.every)
		}
	}
	if got := h.seenAt(125).Serial; got < 2300 || got > 2520 {
		t.Errorf("after 125 s moment %d is seen, want about 2500", got)
	}
	if h.begin(); h.former == nil || h.former.Serial != 5000 || h.moments != nil {
		t.Error("a new way does not begin from the rest before")
	}
}

// R shows the fall once more: paused, drawn to a moment by the slider, and back by R;
// B flips to the rest before the last change.
func lookingBack(d *drive) {
	d.ask(func(a *App) {
		p := a.pane()
		for k := range 21 { // it comes down by 20 cm in two seconds
			f := p.frame
			f.Serial, f.Stage, f.Read = f.Serial+1000+uint64(k), drape.StageSettling, false
			f.Sheet.Pos = nil
			for _, q := range p.frame.Sheet.Pos {
				f.Sheet.Pos = append(f.Sheet.Pos, r3.Add(q, r3.Vec{Y: 0.2 - 0.01*float64(k)}))
			}
			p.past.keep(&f, float64(k)/10)
			if k == 8 {
				p.past.former = copied(&f)
				p.past.former.Read, p.past.former.Outcome.EdgeDrop = true, 0.077
			}
		}
	})
	d.x("mousemove", "640", "300")
	d.settle()
	high := func(a *App) float64 { return a.pane().view().Sheet.Pos[0].Y - a.pane().frame.Sheet.Pos[0].Y }
	d.key("r")
	d.until("the fall", func(a *App) bool { return a.back.replay && a.back.at > 0.1 })
	d.until("its end", func(a *App) bool { return !a.back.playing && near(high(a), 0, 1e-9) })
	r := d.place("back/at")
	d.x("mousemove", px(r.X+7+(r.W-14)/2), px(r.Y+r.H/2))
	d.settle()
	d.x("click", "1")
	d.until("the middle of it, drawn", func(a *App) bool {
		return near(high(a), 0.1, 0.011) && a.pane().shown == a.pane().view().Serial
	})
	d.shot("replay.png")
	d.key("r")
	d.until("the present", func(a *App) bool { return a.pane().look == nil })
	d.key("b")
	d.until("the rest before, drawn", func(a *App) bool {
		return near(high(a), 0.12, 1e-9) && a.pane().shown == a.pane().view().Serial &&
			a.pane().view().Outcome.EdgeDrop == 0.077
	})
	d.shot("before.png")
	d.click("back/now")
	d.until("the present again", func(a *App) bool {
		return a.pane().look == nil && a.pane().shown == a.pane().frame.Serial
	})
	d.ask(func(a *App) { a.pane().past = past{} })
}
