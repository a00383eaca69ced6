//go:build cgo

package window

import (
	"math"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rolled is 0.3 × 0.2 m of cloth laid round a cylinder of the radius 0.1 m.
func rolled() (s mesh.Sheet) {
	const n, m = 150, 20
	for i := range n + 1 {
		for j := range m + 1 {
			q := r2.Vec{X: 0.3 * float64(i) / n, Y: 0.2 * float64(j) / m}
			sin, cos := math.Sincos(q.X / 0.1)
			s.Flat, s.Pos = append(s.Flat, q), append(s.Pos, r3.Vec{X: 0.1 * sin, Y: q.Y, Z: 0.1 * cos})
			if k := int32(i*(m+1) + j); i < n && j < m {
				s.Tris = append(s.Tris, [3]int32{k, k + m + 1, k + 1}, [3]int32{k + 1, k + m + 1, k + m + 2})
			}
		}
	}
	s.Facing = make([]bool, len(s.Tris))
	return s
}

// Round a cylinder a tape is as long as on the flat, level and aslant, and its chord is
// that of the angle; over an edge of the cloth it breaks.
func TestTape(t *testing.T) {
	s := rolled()
	chord := func(dx, dy float64) float64 { return math.Hypot(2*0.1*math.Sin(dx/0.1/2), dy) }
	for _, c := range []struct {
		at           []r2.Vec
		along, chord float64
		broken       bool
	}{
		{[]r2.Vec{{X: 0.02, Y: 0.1}, {X: 0.22, Y: 0.1}}, 0.2, chord(0.2, 0), false},
		{[]r2.Vec{{X: 0.02, Y: 0.05}, {X: 0.14, Y: 0.14}}, 0.15, chord(0.12, 0.09), false},
		{[]r2.Vec{{X: 0.02, Y: 0.05}, {X: 0.02, Y: 0.15}, {X: 0.12, Y: 0.15}}, 0.2, chord(0.1, 0.1), false},
		{[]r2.Vec{{X: 0.1, Y: 0.1}, {X: 0.35, Y: 0.1}}, 0.2, 0, true},
	} {
		l := tape{version: 7}
		for _, q := range c.at {
			l.add(q)
		}
		var laid tapeOnCloth
		laid.update(&l, &s, 1)
		got, runs := laid.says, laid.runs
		if math.Abs(got.along-c.along) > 0.0021 || math.Abs(got.chord-c.chord) > 1e-4 || got.broken != c.broken ||
			len(runs) == 0 {
			t.Errorf("tape over %v: %+v in %d runs, want %.3f m along, %.4f m straight, broken %t", c.at, got, len(runs),
				c.along, c.chord, c.broken)
		}
	}
}

// C takes the tape: two clicks on the drape lay it, a third on the flat piece lays it on;
// its length is along the cloth. Backspace takes a place back, Delete all.
func tapeChecks(d *drive) {
	d.key("1")
	d.key("c")
	d.until("the front view", func(a *App) bool { return a.goal == nil && a.tool == toolTape })
	for _, at := range [][2]string{{"600", "260"}, {"680", "560"}} {
		d.x("mousemove", at[0], at[1])
		d.settle()
		d.x("click", "1")
		d.settle()
	}
	d.ask(func(a *App) {
		p := a.pane()
		if len(a.tape.at) != 2 {
			d.Fatalf("two clicks lay %d places", len(a.tape.at))
		}
		from, to := a.tape.at[0], a.tape.at[1]
		along, last := 0.0, r3.Vec{}
		for k := range 501 {
			q, ok := inSpace(&p.frame.Sheet, r2.Add(from, r2.Scale(float64(k)/500, r2.Sub(to, from))))
			if !ok {
				d.Fatal("the line leaves the cloth: this test tries nothing")
			}
			if k > 0 {
				along += r3.Norm(r3.Sub(q, last))
			}
			last = q
		}
		says := p.taped.says
		if !near(says.along, along, 0.002) || says.along < says.chord+0.002 ||
			!strings.Contains(a.tapeWords(p), Centimetres.Length(says.along)+" along the cloth") {
			d.Errorf("the tape says %+v, %q; want %.4f m along", says, a.tapeWords(p), along)
		}
		if p.drawn.tape != a.tape.version {
			d.Error("the tape is not drawn on the drape")
		}
		a.flat = true
	})
	r := d.place("flatpiece")
	var at panel.Point
	d.ask(func(a *App) {
		at = fitFlat(panel.Rect{X: r.X + 24, Y: r.Y + 44, W: r.W - 48, H: r.H - 92},
			a.pane().cowl.Outline).at(r2.Vec{X: -0.05, Y: a.pane().cowl.FoldY - 0.2})
	})
	d.x("mousemove", px(at.X), px(at.Y))
	d.settle()
	d.x("click", "1")
	d.until("a third place", func(a *App) bool { return len(a.tape.at) == 3 })
	d.shot("tape.png")
	d.key("BackSpace")
	d.until("two places", func(a *App) bool { return len(a.tape.at) == 2 })
	d.key("Delete")
	d.until("no tape", func(a *App) bool { return len(a.tape.at) == 0 })
}
