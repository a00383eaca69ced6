package fold

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cowl/mesh"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// A sheet stretched 3 % down, 5 % across and hung 0.11 m low, 0.04 m forward:
// every figure is arithmetic.
func TestReadStretched(t *testing.T) {
	p := strip{half: 0.1, length: 0.3, facing: 0.05, cell: 0.01}
	s := p.onLattice(func(x, s float64) r3.Vec { return r3.Vec{X: 1.05*x + 0.002, Y: -0.11 - 1.03*s, Z: 0.04} })
	f := p.frame()
	f.NeckL.Y, f.NeckR.Y, f.NeckL.Z, f.NeckR.Z = 0.01, 0.03, 0.01, 0.02
	f.Clearance = func(q r3.Vec) float64 { return q.Z - 0.01 }
	r, err := Read(s, f)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name      string
		got, want float64
	}{
		{"EdgeDrop", r.EdgeDrop, 0.13},
		{"EdgeBelowNeck", r.EdgeBelowNeck, 0.03},
		{"StandOff", r.StandOff, 0.03},
		{"Forward", r.Forward, 0.025},
		{"Drift", r.Drift, 0.002},
		{"Twist", r.Twist, 0.004}, // off to the left as a whole: twice the drift
		{"Tilt", r.Tilt, 0},
		{"CFGrowth", r.CFGrowth, 0.03},
		{"EdgeGrowth", r.EdgeGrowth, 0.05},
		{"WrongSide", r.WrongSide, 0},
	} {
		if !near(tt.got, tt.want, 1e-12) {
			t.Errorf("Read: %s %.15f, want %g", tt.name, tt.got, tt.want)
		}
	}
	if !r.OnForm || len(r.Folds) != 0 {
		t.Errorf("Read: OnForm %v, %d folds; want true, 0", r.OnForm, len(r.Folds))
	}
}

func TestReadFreeHang(t *testing.T) {
	p := strip{half: 0.1, length: 0.3, cell: 0.01}
	r, err := Read(p.onLattice(flat), p.frame())
	if err != nil || r.OnForm || r.StandOff != 0 || r.Forward != 0 {
		t.Errorf("Read: OnForm %v, StandOff %g, Forward %g, %v; want false, 0, 0", r.OnForm, r.StandOff, r.Forward, err)
	}
}

func TestReadErrors(t *testing.T) {
	p := strip{half: 0.1, length: 0.3, cell: 0.02}
	nan := math.NaN()
	for _, tt := range []struct {
		name  string
		spoil func(s *mesh.Sheet, f *Frame)
		want  string
	}{
		{"empty", func(s *mesh.Sheet, f *Frame) { *s = mesh.Sheet{} }, "empty"},
		{"no triangles", func(s *mesh.Sheet, f *Frame) { s.Tris = nil }, "empty"},
		{"NaN position", func(s *mesh.Sheet, f *Frame) { s.Pos[7].Y = nan }, "vertex 7"},
		{"infinite position", func(s *mesh.Sheet, f *Frame) { s.Pos[3].Z = math.Inf(-1) }, "vertex 3"},
		{"flat too short", func(s *mesh.Sheet, f *Frame) { s.Flat = s.Flat[1:] }, "flat places"},
		{"bad index", func(s *mesh.Sheet, f *Frame) { s.Tris[2][1] = 9999 }, "triangle 2"},
		{"no flat area", func(s *mesh.Sheet, f *Frame) {
			for i := range s.Flat {
				s.Flat[i].X = 0
			}
		}, "spacing"},
		{"blown up", func(s *mesh.Sheet, f *Frame) { s.Pos[0].X = 1e6 }, "extent"},
		{"CF off the sheet", func(s *mesh.Sheet, f *Frame) {
			for i := range s.Flat {
				s.Flat[i].X += 1
			}
		}, "flat line x = 0"},
		{"CF stops short", func(s *mesh.Sheet, f *Frame) { f.WaistY = -0.35 }, "CF ends at"},
		{"edge above the sheet", func(s *mesh.Sheet, f *Frame) { f.FoldY = 0.1 }, "does not reach"},
		{"waist above edge", func(s *mesh.Sheet, f *Frame) { f.WaistY = 0.1 }, "WaistY"},
		{"no edge", func(s *mesh.Sheet, f *Frame) { f.HalfEdge = 0 }, "HalfEdge"},
		{"NaN neck", func(s *mesh.Sheet, f *Frame) { f.NeckR.Z = nan }, "NeckR"},
		{"NaN front", func(s *mesh.Sheet, f *Frame) { f.Front = func(float64) float64 { return nan } }, "front at height"},
		{"NaN clearance", func(s *mesh.Sheet, f *Frame) { f.Clearance = func(r3.Vec) float64 { return nan } }, "clearance"},
	} {
		s, f := p.onLattice(flat), p.frame()
		tt.spoil(s, &f)
		if _, err := Read(s, f); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("Read(%s): error %v, want one naming %q", tt.name, err, tt.want)
		}
	}
	if _, err := Read(nil, p.frame()); err == nil {
		t.Error("Read(nil): no error, want one")
	}
}

// A slit across CF is no CF.
func TestReadSlit(t *testing.T) {
	p := strip{half: 0.1, length: 0.3, cell: 0.02}
	s := p.onLattice(flat)
	var left [][3]int32
	for _, tri := range s.Tris {
		y := (s.Flat[tri[0]].Y + s.Flat[tri[1]].Y + s.Flat[tri[2]].Y) / 3
		if y > -0.14 || y < -0.18 {
			left = append(left, tri)
		}
	}
	s.Tris = left
	if _, err := Read(s, p.frame()); err == nil || !strings.Contains(err.Error(), "CF ends at flat y -0.14") {
		t.Errorf("Read(slit sheet): error %v, want CF ending at −0.14 m", err)
	}
}

// drawCowl is a lopsided folded sheet with a facing that turns inside.
func drawCowl(t *rapid.T, p strip) *mesh.Sheet {
	a := rapid.Float64Range(0, 0.03).Draw(t, "amplitude")
	wave := rapid.Float64Range(0.06, 0.2).Draw(t, "wave")
	skew := rapid.Float64Range(0.002, 0.05).Draw(t, "skew")
	return p.onLattice(func(x, s float64) r3.Vec {
		u := math.Abs(s)
		z := a * math.Sin(2*math.Pi*u/wave) * (1 - 4*x*x)
		return r3.Vec{X: 0.95*x + skew*u, Y: -0.9*u - 0.3*x*x + skew*x, Z: z - 0.1*max(-s, 0)}
	})
}

var tiny = cmpopts.EquateApprox(0, 1e-9)

// Where the wearer stands does not matter.
func TestReadMovesWithTheFrame(t *testing.T) {
	p := strip{half: 0.1, length: 0.3, facing: 0.04, cell: 0.01}
	rapid.Check(t, func(t *rapid.T) {
		s, f := drawCowl(t, p), p.frame()
		by := r3.Vec{
			X: rapid.Float64Range(-1, 1).Draw(t, "x"),
			Y: rapid.Float64Range(-1, 1).Draw(t, "y"), Z: rapid.Float64Range(-1, 1).Draw(t, "z"),
		}
		f.BustY = -0.13
		f.Front = func(y float64) float64 { return 0.1 * y }
		want, err := Read(s, f)
		if err != nil {
			t.Fatal(err)
		}
		for i := range s.Pos {
			s.Pos[i] = r3.Add(s.Pos[i], by)
		}
		f.NeckL, f.NeckR, f.FrontNeck = r3.Add(f.NeckL, by), r3.Add(f.NeckR, by), r3.Add(f.FrontNeck, by)
		f.BustY += by.Y
		f.Front = func(y float64) float64 { return 0.1*(y-by.Y) + by.Z }
		got, err := Read(s, f)
		if err != nil {
			t.Fatal(err)
		}
		for i := range got.Folds {
			fd := &got.Folds[i]
			fd.Height -= by.Y
			for _, at := range []*r2.Vec{&fd.At, &fd.Before.At, &fd.After.At} {
				*at = r2.Sub(*at, r2.Vec{X: by.Z, Y: by.Y})
			}
		}
		// The picture has square pixels, so a rounding may flip some.
		if !near(got.WrongSide, want.WrongSide, 0.002*0.35) {
			t.Errorf("WrongSide %g moved, %g at home", got.WrongSide, want.WrongSide)
		}
		skip := cmpopts.IgnoreFields(Reading{}, "Section", "WrongSide")
		if d := cmp.Diff(want, got, tiny, skip); d != "" {
			t.Errorf("Read after a move by %v, −home +moved:\n%s", by, d)
		}
	})
}

// Seen in a mirror the twist, tilt and drift turn their sign and all else stays.
func TestReadMirrored(t *testing.T) {
	p := strip{half: 0.1, length: 0.3, facing: 0.04, cell: 0.01, bias: true} // a mesh that is its own mirror
	rapid.Check(t, func(t *rapid.T) {
		s, f := drawCowl(t, p), p.frame()
		want, err := Read(s, f)
		if err != nil {
			t.Fatal(err)
		}
		for i := range s.Pos {
			s.Pos[i].X, s.Flat[i].X = -s.Pos[i].X, -s.Flat[i].X
		}
		for i, tri := range s.Tris {
			s.Tris[i] = [3]int32{tri[0], tri[2], tri[1]}
		}
		got, err := Read(s, f)
		if err != nil {
			t.Fatal(err)
		}
		if want.Twist == 0 || want.Tilt == 0 {
			t.Fatalf("Twist %g, Tilt %g: want a lopsided sheet", want.Twist, want.Tilt)
		}
		want.Twist, want.Tilt, want.Drift = -want.Twist, -want.Tilt, -want.Drift
		if d := cmp.Diff(want, got, tiny, cmpopts.IgnoreFields(Reading{}, "WrongSide")); d != "" {
			t.Errorf("Read in a mirror, −want +got:\n%s", d)
		}
	})
}

func ExampleRead() {
	c := sine{a: 0.02, wave: 0.15} // two folds, 40 mm deep
	p := strip{half: 0.1, length: 0.36, cell: 5e-3}
	r, err := Read(p.onLattice(c.over(1)), p.frame())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d folds\n", r.Count)
	for _, f := range r.Folds {
		fmt.Printf("%.0f mm deep, %.0f mm down CF\n", f.Depth*1e3, f.CF*1e3)
	}
	// Output:
	// 2 folds
	// 40 mm deep, 87 mm down CF
	// 40 mm deep, 260 mm down CF
}

var sink Reading

func BenchmarkRead(b *testing.B) {
	p := strip{half: 0.24, length: 0.48, facing: 0.048, cell: 8e-3} // 7,920 triangles
	c := sine{0.02, 0.15}
	on := c.over(1)
	s := p.onLattice(func(x, s float64) r3.Vec { return on(x, math.Abs(s)) })
	f := p.frame()
	for b.Loop() {
		r, err := Read(s, f)
		if err != nil {
			b.Fatal(err)
		}
		sink = r
	}
}
