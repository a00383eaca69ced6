package stage

import (
	"image/color"
	"math"
	"testing"

	"cowl/shaders"

	"gonum.org/v1/gonum/spatial/r3"
)

// Even over the sphere: the mean is zero and the second moments are 1/3 each.
func TestSkyDirectionsAreEven(t *testing.T) {
	n := float64(shaders.SkyCount)
	var sum r3.Vec
	var xx, yy, zz, xy float64
	for _, d := range skyDirections(shaders.SkyCount) {
		if l := r3.Norm(d); math.Abs(l-1) > 1e-12 {
			t.Fatalf("direction %v has length %v, want 1", d, l)
		}
		sum = r3.Add(sum, d)
		xx, yy, zz, xy = xx+d.X*d.X, yy+d.Y*d.Y, zz+d.Z*d.Z, xy+d.X*d.Y
	}
	if r3.Norm(sum)/n > 0.02 {
		t.Errorf("mean direction %v, want 0", r3.Scale(1/n, sum))
	}
	for name, got := range map[string]float64{"xx": xx / n, "yy": yy / n, "zz": zz / n, "1/3 + xy": 1.0/3 + xy/n} {
		if math.Abs(got-1.0/3) > 0.02 {
			t.Errorf("second moment %s %v, want 1/3", name, got)
		}
	}
}

func TestLightsTurnWithTheEye(t *testing.T) {
	front := View{Eye: r3.Vec{Z: 3}}
	side := View{Eye: r3.Vec{X: 3}}
	for i := range 2 {
		pick := func(v View) r3.Vec { a, b := lights(v); return []r3.Vec{a, b}[i] }
		a, b := pick(front), pick(side)
		if want := (r3.Vec{X: a.Z, Y: a.Y, Z: -a.X}); apart(b, want) > 1e-12 || math.Abs(r3.Norm(a)-1) > 1e-12 {
			t.Errorf("light %d at %v from the front and %v from the side, want a quarter turn of a unit vector", i, a, b)
		}
	}
}

func TestParallelViewHoldsTheBox(t *testing.T) {
	box := r3.Box{Min: r3.Vec{X: -0.3, Y: 0.8, Z: -0.2}, Max: r3.Vec{X: 0.3, Y: 1.5, Z: 0.2}}
	for _, dir := range skyDirections(shaders.SkyCount) {
		m, field := parallelView(dir, box)
		for _, c := range box.Vertices() {
			if q, _ := m.apply(c); max(math.Abs(q.X), math.Abs(q.Y), math.Abs(q.Z)) > 1 {
				t.Fatalf("from %v corner %v goes to %v, want within the cube", dir, c, q)
			}
		}
		if diagonal := r3.Norm(r3.Sub(box.Max, box.Min)); field > diagonal+0.03 {
			t.Fatalf("from %v the field is %v m, want at most the diagonal %v m and the pad", dir, field, diagonal)
		}
	}
}

// IEC 61966-2-1: 0x80 is 21.586 % of full light, 0xBC is 50.289 %.
func TestLinear(t *testing.T) {
	for _, c := range []struct {
		in   uint8
		want float64
	}{{0, 0}, {255, 1}, {0x80, 0.21586}, {0xBC, 0.50289}, {10, 0.0030353}} {
		if got := linear(color.RGBA{c.in, 0, 0, 255})[0]; math.Abs(got-c.want) > 1e-5 {
			t.Errorf("linear(%d) = %v, want %v", c.in, got, c.want)
		}
	}
}
