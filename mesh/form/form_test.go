package form

import (
	"math"
	"slices"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/proptest"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestMain fixes the number and the seed of the random bodies.
func TestMain(m *testing.M) { proptest.Main(m, 30, 7) }

// size returns the body of a chart size.
func size(t testing.TB, n int) body.Body {
	t.Helper()
	b, err := body.FromChart(n)
	if err != nil {
		t.Fatalf("body.FromChart(%d): %v", n, err)
	}
	return b
}

var built, bareForms = map[int]*Form{}, map[int]*Form{}

// bareForm returns the form of a chart size without its distances, laid once for all
// tests.
func bareForm(t testing.TB, n int) *Form {
	t.Helper()
	if f := bareForms[n]; f != nil {
		return f
	}
	f, err := bare(size(t, n))
	if err != nil {
		t.Fatalf("lay(size %d): %v", n, err)
	}
	bareForms[n] = f
	return f
}

// build returns the whole form of a chart size, built once for all tests.
func build(t testing.TB, n int) *Form {
	t.Helper()
	if f := built[n]; f != nil {
		return f
	}
	f, err := FromBody(size(t, n))
	if err != nil {
		t.Fatalf("FromBody(size %d): %v", n, err)
	}
	built[n] = f
	return f
}

func TestFormCarriesTheBody(t *testing.T) {
	for _, n := range []int{6, 8, 10, 12, 14, 16, 18} {
		b := size(t, n)
		f := bareForm(t, n)
		tip := f.ShoulderPoint(1, b.Shoulder)
		fall := math.Atan2(f.NeckPoint(1).Y-tip.Y, tip.X-f.NeckPoint(1).X)
		for _, c := range []struct {
			name           string
			got, want, tol float64
		}{
			{"Girth at the apex", f.Girth(f.Apex(1).Y), b.Bust, 0.005},
			{"Girth at the waist", f.Girth(0), b.Waist, 0.005},
			{"Girth at the hip", f.Girth(-b.WaistToHip), b.Hip, 0.005},
			{"Girth at the neck points", f.Girth(f.NeckPoint(1).Y), b.Neck, 0.010},
			{"apex to apex", r3.Norm(r3.Sub(f.Apex(1), f.Apex(-1))), b.BustSpan, 1e-9},
			{"shoulder length", polyLength(f.Shoulder(1)), b.Shoulder, 1e-4},
			{"shoulder slope (rad)", fall, b.ShoulderSlope, 0.003},
			{"half neck width", f.NeckPoint(1).X, b.Neck/5 - 0.007, 1e-4},
			{"WaistQuarter", f.WaistQuarter(), b.Waist/4 + 0.005, 5e-4},
		} {
			if !(math.Abs(c.got-c.want) <= c.tol) {
				t.Errorf("size %d: %s = %.5f, want %.5f ± %g", n, c.name, c.got, c.want, c.tol)
			}
		}
	}
}

// TestApexIsForemost compares with the triangles, which the apex was not taken
// from: no vertex lies before it, and the foremost lies near it.
func TestApexIsForemost(t *testing.T) {
	f := build(t, 10)
	best := slices.MaxFunc(f.Surface().Pos, func(a, b r3.Vec) int {
		return int(math.Copysign(1, a.Z-b.Z))
	})
	best.X = math.Abs(best.X)
	a := f.Apex(1)
	if best.Z > a.Z+1e-6 || r3.Norm(r3.Sub(best, a)) > 0.012 {
		t.Errorf("foremost vertex %.4f, want at Apex %.4f within 12 mm and not before it", best, a)
	}
}

func TestSideViewReadsLikeADressForm(t *testing.T) {
	b, f := size(t, 10), build(t, 10)
	front := func(y float64) float64 { return f.shape.frontZ(0, y) }
	apex := f.Apex(1)
	for _, c := range []struct {
		name        string
		less, other float64
	}{
		{"under-bust behind the apex by 2 cm", f.shape.frontZ(apex.X, apex.Y-0.08), apex.Z - 0.02},
		{"pit of the neck behind the apex by 5 cm", f.FrontNeck().Z, apex.Z - 0.05},
		{"cleavage behind the taut tape", front(apex.Y), f.BridgedFront(apex.Y)},
		{"waist hollow of the back before the shoulder blades", f.shape.backZ(0, f.shape.at.underarm+0.05),
			f.shape.backZ(0, 0)},
		{"waist hollow of the back before the seat", f.shape.backZ(0, -b.WaistToHip), f.shape.backZ(0, 0)},
		{"waist behind the belly", front(0), front(-b.WaistToHip / 2)},
	} {
		if !(c.less < c.other) {
			t.Errorf("%s: %.4f, want < %.4f", c.name, c.less, c.other)
		}
	}
}

func TestSeamsLieOnTheSurface(t *testing.T) {
	f := build(t, 10)
	n := 0
	near := func(name string, pts []r3.Vec, low, high float64) {
		for _, p := range pts {
			n++
			if d, _ := f.Distance(p); d < low || d > high {
				t.Errorf("%s: Distance(%.4f) = %.5f m, want %g to %g", name, p, d, low, high)
				return
			}
		}
	}
	for _, side := range []float64{1, -1} {
		near("Shoulder", f.Shoulder(side), -0.001, 0.001)
		near("SideSeam", f.SideSeam(side), -0.001, 0.001)
		near("WaistPoint", []r3.Vec{f.WaistPoint(side, 0), f.WaistPoint(side, 0.4), f.WaistPoint(side, 1)}, -0.001, 0.001)
		near("Apex", []r3.Vec{f.Apex(side)}, -0.001, 0.001)
	}
	near("NeckLine", f.NeckLine(), -0.0015, 0.0015)
	near("CF", f.CF(), -0.001, 0.001)
	for _, l := range f.SeamLines() {
		near("SeamLines", l, 0.0002, 0.0004)
	}
	if n < 1000 {
		t.Errorf("looked at %d points, want 1000 and more", n)
	}
}

// TestPointsAlongSeams holds the arc length against the straight distance of
// neighbouring points, which it may exceed only a little.
func TestPointsAlongSeams(t *testing.T) {
	f := build(t, 10)
	const step = 0.01
	for i := range 10 {
		s := float64(i) * step
		for name, d := range map[string]float64{
			"ShoulderPoint": r3.Norm(r3.Sub(f.ShoulderPoint(1, s+step), f.ShoulderPoint(1, s))),
			"SidePoint":     r3.Norm(r3.Sub(f.SidePoint(-1, s+step), f.SidePoint(-1, s))),
		} {
			if d > step+1e-9 || d < 0.97*step {
				t.Errorf("%s: chord from %.2f to %.2f m = %.5f, want 0.0097 to 0.01", name, s, s+step, d)
			}
		}
	}
	if p := f.WaistPoint(1, 0); p.X != 0 || p.Y != 0 || p.Z <= 0 {
		t.Errorf("WaistPoint(1, 0) = %v, want on CF at the waist", p)
	}
	if p := f.WaistPoint(-1, 1); math.Abs(p.Z) > 1e-9 || p.X >= 0 {
		t.Errorf("WaistPoint(−1, 1) = %v, want on the right side seam", p)
	}
}

func TestFormIsDeterministic(t *testing.T) {
	a, b := build(t, 10), mustBuild(t, size(t, 10))
	if !slices.Equal(a.surf.Pos, b.surf.Pos) || !slices.Equal(a.grid.d, b.grid.d) {
		t.Error("FromBody twice: two forms differ, want the same bits")
	}
}

func mustBuild(t testing.TB, b body.Body) *Form {
	t.Helper()
	f, err := FromBody(b)
	if err != nil {
		t.Fatalf("FromBody(%+v): %v", b, err)
	}
	return f
}

func TestFromBodyRefuses(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*body.Body)
	}{
		{"zero bust", func(b *body.Body) { b.Bust = 0 }},
		{"NaN waist", func(b *body.Body) { b.Waist = math.NaN() }},
		{"hip in centimetres", func(b *body.Body) { b.Hip = 96 }},
		{"slope in degrees", func(b *body.Body) { b.ShoulderSlope = 20 }},
	} {
		b := size(t, 10)
		c.spoil(&b)
		if f, err := FromBody(b); err == nil || f != nil {
			t.Errorf("%s: FromBody = %v, %v, want nil and an error", c.name, f, err)
		}
	}
}
