package window

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// What is under the mouse stays under it while the view is moved.
func TestOrbitPanFollowsMouse(t *testing.T) {
	o := Orbit{Target: r3.Vec{Y: 0.2}, Away: 2, Azimuth: 0.6, Height: 0.2}
	v := o.View()
	x, y, _ := v.Pixel(o.Target, 600, 700)
	p := o.Target
	o.Pan(50, -30, 700)
	v = o.View()
	x2, y2, _ := v.Pixel(p, 600, 700)
	if !near(x2-x, 50, 0.5) || !near(y2-y, -30, 0.5) {
		t.Errorf("the place moved by (%.2f, %.2f), want (50, -30)", x2-x, y2-y)
	}
}

// Turning keeps the distance, never goes over the top, and dragging to the right
// shows more of the wearer's right.
func TestOrbitTurn(t *testing.T) {
	o := Orbit{Away: 2}
	o.Turn(50, 0)
	if o.Azimuth >= 0 {
		t.Errorf("azimuth %.2f after a drag to the right, want below 0: the eye goes to the wearer's right", o.Azimuth)
	}
	o.Turn(0, 1e5)
	if v := o.View(); !near(r3.Norm(r3.Sub(v.Eye, v.Target)), 2, 1e-9) || o.Height > steepest {
		t.Errorf("eye %.3f m away at %.1f°, want 2 m and below the zenith", r3.Norm(r3.Sub(v.Eye, v.Target)), o.Height/degree)
	}
	o.Turn(0, -1e6)
	if o.Height < -steepest {
		t.Errorf("height %.1f°, want above the nadir", o.Height/degree)
	}
}

func TestOrbitZoomIsBounded(t *testing.T) {
	o := Orbit{Away: 2}
	o.Zoom(1)
	o.Zoom(-1)
	if !near(o.Away, 2, 1e-12) {
		t.Errorf("%.6f m after a step there and back, want 2", o.Away)
	}
	for _, c := range []struct{ steps, want float64 }{{1000, nearest}, {-1000, furthest}} {
		if o.Zoom(c.steps); o.Away != c.want {
			t.Errorf("%.2f m after %g steps, want %g", o.Away, c.steps, c.want)
		}
	}
}

// Every named view sees every place, in wide and in narrow panes.
func TestFramedSeesAll(t *testing.T) {
	places := []r3.Vec{{X: -0.22, Y: -0.1, Z: -0.1}, {X: 0.22, Y: 0.1, Z: 0.15}, {Y: 0.42, Z: 0.02}, {Y: 0.2, Z: 0.22}}
	n := 0
	for view := range views {
		for _, wide := range []float64{240, 700, 1500} {
			v := Framed(places, wide/700, view).View()
			for _, p := range places {
				n++
				if x, y, ahead := v.Pixel(p, wide, 700); x < 0 || y < 0 || x > wide || y > 700 || ahead <= 0 {
					t.Errorf("%s, %g wide: %v is seen at (%.0f, %.0f), want inside", views[view].name, wide, p, x, y)
				}
			}
		}
	}
	if n == 0 {
		t.Fatal("no case ran")
	}
}

// Going from one view to another takes the short way round and ends there.
func TestOrbitTowards(t *testing.T) {
	a, b := Orbit{Azimuth: 3, Away: 1}, Orbit{Azimuth: -3, Away: 2}
	if got := a.Towards(b, 0.5); !near(math.Abs(got.Azimuth), math.Pi, 1e-9) || !near(got.Away, 1.5, 1e-12) {
		t.Errorf("half way: azimuth %.3f, %.2f m, want ±π and 1.5 m", got.Azimuth, got.Away)
	}
	if got := a.Towards(b, 1); !near(math.Remainder(got.Azimuth-b.Azimuth, 2*math.Pi), 0, 1e-9) {
		t.Errorf("azimuth %.3f at the end, want %.3f", got.Azimuth, b.Azimuth)
	}
}

// A ray through the pixel at which a place is seen goes through the place.
func TestRayIsInverseOfPixel(t *testing.T) {
	v := Orbit{Target: r3.Vec{Y: 0.2}, Away: 1.7, Azimuth: -1.1, Height: 0.4}.View()
	p := r3.Vec{X: 0.11, Y: 0.33, Z: -0.07}
	x, y, _ := v.Pixel(p, 640, 480)
	ray := v.Ray(x, y, 640, 480)
	d := r3.Sub(p, v.Eye)
	if miss := r3.Norm(r3.Sub(d, r3.Scale(r3.Dot(d, ray), ray))); miss > 1e-9 {
		t.Errorf("the ray passes the place by %g m, want 0", miss)
	}
}
