//go:build cgo

package stage

import (
	"image"
	"testing"

	"github.com/go-gl/gl/v4.1-core/gl"
	"gonum.org/v1/gonum/spatial/r3"
)

// onStage runs do on the thread of the context, with a scene loaded.
func onStage(t *testing.T, s Scene, do func(p *Painter, l *Loaded)) {
	t.Helper()
	st := newStage(t)
	done := make(chan struct{})
	st.jobs <- func() {
		defer close(done)
		l, err := st.painter.Load(s)
		if err != nil {
			t.Error(err)
			return
		}
		defer l.Release()
		do(st.painter, l)
	}
	<-done
}

// A canvas that paints cloth over the form it has kept shows what a painting
// from nothing shows, after the cloth and after the eye have moved.
func TestCanvasKeepsTheForm(t *testing.T) {
	s := testScene(12)
	rest := testScene(12).Cloth.Pos
	front, side := Front(bodiceBox(s), 1), Side(bodiceBox(s), 1)
	ran := 0
	onStage(t, s, func(p *Painter, l *Loaded) {
		var c Canvas
		defer c.Release()
		m := Manner{Quick: true}
		for _, step := range []struct {
			by  r3.Vec
			eye View
		}{{r3.Vec{}, front}, {r3.Vec{Z: 0.03}, front}, {r3.Vec{Z: 0.03}, side}, {r3.Vec{Y: 0.3}, side}} {
			pos := make([]r3.Vec, len(rest))
			for i, q := range rest {
				pos[i] = r3.Add(q, step.by)
			}
			if err := p.Move(l, pos, nil); err != nil {
				t.Error(err)
			}
			if err := c.Paint(p, l, step.eye, m, 200, 200, true); err != nil {
				t.Error(err)
				return
			}
			got, err := c.shown.target.read()
			if err != nil {
				t.Error(err)
				return
			}
			fresh, err := newTarget(200, 200, smoothly)
			if err != nil {
				t.Error(err)
				return
			}
			p.PaintIn(l, step.eye, m, image.Rect(0, 0, 200, 200), 200)
			want, err := fresh.read()
			fresh.release()
			if err != nil {
				t.Error(err)
				return
			}
			if mean, far := difference(got, want); mean > 0.3 || far > 0.003 {
				t.Errorf("step %d differs by %.2f on average, clearly in %.2f %% of channels", ran, mean, 100*far)
			}
			ran++
		}
	})
	if ran != 4 {
		t.Errorf("%d steps ran, want 4", ran)
	}
}

// Cloth moved to no number is refused; a map colours the cloth by its values.
func TestMoveAndMap(t *testing.T) {
	s := testScene(12)
	eye := Front(bodiceBox(s), 1)
	onStage(t, s, func(p *Painter, l *Loaded) {
		bad := append([]r3.Vec(nil), s.Cloth.Pos...)
		zero := 0.0
		bad[3].Y /= zero
		if err := p.Move(l, bad, nil); err == nil {
			t.Error("a place at infinity is taken")
		}
		values := make([]float64, len(s.Cloth.Pos))
		for i := range values {
			values[i] = 2 // beyond the high end
		}
		if err := p.Move(l, s.Cloth.Pos, values); err != nil {
			t.Error(err)
		}
		var red Ramp
		for i := range red {
			red[i].R, red[i].A = 0xFF, 0xFF
		}
		img, err := p.Shot(l, eye, Manner{Quick: true, Map: &Map{Low: 0, High: 1, Ramp: red}}, 100, 100)
		if err != nil {
			t.Error(err)
			return
		}
		if c := img.RGBAAt(50, 60); c.R < 120 || c.G > 20 || c.B > 20 {
			t.Errorf("the cloth is %v under a red map, want red", c)
		}
		if e := gl.GetError(); e != gl.NO_ERROR {
			t.Errorf("OpenGL error 0x%X", e)
		}
	})
}
