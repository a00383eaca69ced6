package stage

import (
	"image"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// The views of a sheet stand side by side without a gap, hold cloth and form
// from below the hem up, and show a centimetre at one length.
func TestSideBySide(t *testing.T) {
	field := image.Rect(0, 0, 2000, 900)
	dirs := []r3.Vec{{Z: 1}, towards(quarterTurn, quarterHeight), {X: 1}}
	for _, c := range []struct {
		name  string
		scene Scene
	}{
		{"on a form", testScene(12)},
		{"cloth alone", Scene{Cloth: testSheet(12)}},
	} {
		panels, shots := sideBySide(c.scene, field, dirs)
		edge, reach := 0, 0.0
		for i, s := range shots {
			if panels[i].Min.X != edge || panels[i].Dx() != s.w || s.h != 900 {
				t.Fatalf("%s: panel %d is %v for a shot %d × %d, want it from %d on", c.name, i, panels[i], s.w, s.h, edge)
			}
			edge = panels[i].Max.X
			box := Bounds(c.scene.places())
			for _, p := range c.scene.bodice() {
				at, ok := s.onPicture(p, box)
				x, y := math.Abs(2*at.X/float64(s.w)-1), math.Abs(2*at.Y/float64(s.h)-1)
				if reach = max(reach, x, y); !ok || max(x, y) > 1-2*margin+1e-9 {
					t.Fatalf("%s: panel %d shows %v at %v, want within the margin", c.name, i, p, at)
				}
			}
			up := r3.Add(s.view.Target, r3.Vec{Y: 0.01})
			a, _ := s.onPicture(s.view.Target, box)
			b, _ := s.onPicture(up, box)
			first, _ := shots[0].onPicture(shots[0].view.Target, box)
			second, _ := shots[0].onPicture(r3.Add(shots[0].view.Target, r3.Vec{Y: 0.01}), box)
			tilt := math.Sqrt(1 - math.Pow(r3.Unit(r3.Sub(s.view.Eye, s.view.Target)).Y, 2)) // foreshortens what is upright
			if got, want := (a.Y-b.Y)/tilt, first.Y-second.Y; math.Abs(got/want-1) > 0.005 {
				t.Errorf("%s: 1 cm is %.2f px in panel %d and %.2f px in the first, want the same", c.name, got, i, want)
			}
		}
		if edge != field.Max.X || math.Abs(reach-(1-2*margin)) > 1e-9 {
			t.Errorf("%s: panels end at %d and places reach %.3f of the way out, want %d and %.2f", c.name, edge, reach,
				field.Max.X, 1-2*margin)
		}
	}
}

// The form is shown down to 6 cm below the cloth and no further.
func TestBodiceStopsBelowTheHem(t *testing.T) {
	s := testScene(12)
	got := Bounds(s.bodice()).Min.Y - Bounds(s.Cloth.Pos).Min.Y
	if got > -0.05 || got < -belowHem {
		t.Errorf("bodice reaches %.3f m below the cloth, want -0.06 to a ring of the form less", got)
	}
	if top := Bounds(s.bodice()).Max.Y; top < formTop {
		t.Errorf("bodice reaches up to %.3f m, want the top of the form at %.3f", top, formTop)
	}
}
