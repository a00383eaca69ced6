package sim

import (
	"context"
	"math"
	"testing"

	"cowl/mesh/lattice"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Bent to 100/m and back, the moment at 50/m differs by 2·HB between the ways
// there and back, and the elastic part is the same: the KES-F bending loop
// (S. Kawabata, The Standardization and Analysis of Hand Evaluation, 1980).
func TestBendingLoop(t *testing.T) {
	const b, hb, h = 8e-6, 0.6e-3, 0.001
	l := cut(t, rectangle(0.02, 0.02, 0), h, 0)
	c := NewCloth(l, Stiffness{Weight: 0.1, TensileWarp: 1000, TensileWeft: 1000, Shear: 10, BendWarp: b, BendWeft: b,
		Twist: b / 2, BendFriction: hb})
	st := NewState(&System{Cloth: c}, make([]r3.Vec, len(l.Rest)))
	mid := int32(0)
	for i, p := range l.Rest {
		if math.Hypot(p.X, p.Y) < h/2 {
			mid = int32(i)
		}
	}
	at := func(k float64) float64 {
		for i, p := range l.Rest {
			st.Pos[i] = r3.Vec{X: p.X, Y: math.Sin(k*p.Y) / k, Z: (math.Cos(k*p.Y) - 1) / k}
		}
		f := make([]contact.Sum, len(l.Rest))
		for _, s := range c.bendU {
			if s.o == mid {
				k := newCurls(len(f))
				c.curl(0, st.Pos, k)
				c.curl(1, st.Pos, k)
				s.pull(r3.Scale(-c.stiff(&s, k.of[0][mid]), k.of[0][mid]), f)
				c.face([]stencil{s}, nil, st.Pos, k.normal)
				c.rub([]stencil{s}, st.Slip.U, k.of[0], k.normal, f)
			}
		}
		return -f[mid].Force.Z / 2 * h * h / l.Area[mid] // moment per width; the strip bends towards −Z
	}
	var up, down float64
	for k := 1.0; k <= 100; k++ {
		if m := at(k); k == 50 {
			up = m
		}
	}
	for k := 99.0; k >= 50; k-- {
		down = at(k)
	}
	if d := up - down; math.Abs(d-2*hb) > 0.01*2*hb {
		t.Errorf("moment there − back at 50/m = %.4g N, want 2HB = %.4g", d, 2*hb)
	}
	if m := (up + down) / 2; math.Abs(m-b*50) > 0.01*b*50 {
		t.Errorf("mean moment at 50/m = %.4g N, want B·κ = %.4g", m, b*50)
	}
}

// Sheared to 8° and back, the force at 5° differs by 2·HG between the ways there
// and back, and the elastic part is the same: the KES-F shear loop (S. Kawabata,
// The Standardization and Analysis of Hand Evaluation, 1980). The force per
// width is read as work per angle and area.
func TestShearLoop(t *testing.T) {
	const g, hg, h = 25, 0.4, 0.005
	l := cut(t, rectangle(4*h, 4*h, 0), h, 0)
	c := NewCloth(l, Stiffness{Weight: 0.1, TensileWarp: 1000, TensileWeft: 1000, Shear: g, BendWarp: 1e-6, BendWeft: 1e-6,
		ShearFriction: hg})
	st := NewState(&System{Cloth: c}, make([]r3.Vec, len(l.Rest)))
	p, q := l.Warp(), l.Weft()
	area := 0.0
	for _, k := range l.Cell {
		area += k.Area
	}
	at := func(degrees float64) float64 {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		turning := make([]r3.Vec, len(l.Rest))
		for i, r := range l.Rest {
			u, v := r2.Dot(r, p), r2.Dot(r, q)
			st.Pos[i] = r3.Vec{X: u + v*sin, Y: v * cos}
			turning[i] = r3.Vec{X: v * cos, Y: -v * sin}
		}
		f := make([]contact.Sum, len(l.Rest))
		c.shearAndTwist(c.cells, st.Pos, st.Slip.Shear, newCurls(len(f)), f)
		work := 0.0
		for i := range f {
			work -= r3.Dot(f[i].Force, turning[i])
		}
		return work / area
	}
	var up, down float64
	for k := 0.0; k <= 8; k += 0.1 {
		if f := at(k); math.Abs(k-5) < 0.01 {
			up = f
		}
	}
	for k := 8.0; k > 4.95; k -= 0.1 {
		down = at(k)
	}
	if d := up - down; math.Abs(d-2*hg) > 0.01*2*hg {
		t.Errorf("force there − back at 5° = %.4g N/m, want 2HG = %.4g", d, 2*hg)
	}
	if m, want := (up+down)/2, g*5*math.Pi/180; math.Abs(m-want) > 0.01*want {
		t.Errorf("mean force at 5° = %.4g N/m, want G·γ = %.4g", m, want)
	}
}

// Friction that is taken over by another lattice holds what it held: the bends in metres
// of a second difference; the shear as it is, and where the cell lies that has it, half
// a spacing from the node that owns it. So what grows evenly over the cloth is taken
// over as it is, but for cells beyond the outermost centres.
func TestTake(t *testing.T) {
	for _, grain := range []float64{0, 0.5} {
		coarse, fine := cut(t, rectangle(0.08, 0.08, 0), 0.01, grain), cut(t, rectangle(0.08, 0.08, 0), 0.005, grain)
		made := func(l *lattice.Lattice) *State {
			c := NewCloth(l, Stiffness{Weight: 0.1, TensileWarp: 1000, TensileWeft: 1000, Shear: 20, BendWarp: 1e-6,
				BendWeft: 1e-6})
			return NewState(&System{Cloth: c}, make([]r3.Vec, len(l.Rest)))
		}
		centre := func(l *lattice.Lattice, i int) r2.Vec {
			return r2.Add(l.Rest[i], r2.Scale(l.Spacing/2, r2.Add(l.Warp(), l.Weft())))
		}
		sine := func(q r2.Vec) float64 { return 0.1 + 3*q.X - 2*q.Y }
		a, b := made(coarse), made(fine)
		const kappaU, kappaV = 30.0, -20.0 // 1/m
		for i, q := range coarse.Rest {
			a.Pos[i] = r3.Vec{X: q.X, Y: 2 * q.Y, Z: q.X}
			a.Slip.U[i], a.Slip.V[i] = kappaU*1e-4, kappaV*1e-4
			if coarse.Cell[i].Corner[0] != lattice.None {
				a.Slip.Shear[i] = sine(centre(coarse, i))
			}
		}
		if missed := b.Take(fine, a, coarse, nil); missed != 0 {
			t.Errorf("grain %g: %d crossings have no place, want none", grain, missed)
		}
		inside, most := 0, 0.0
		for i, q := range fine.Rest {
			if d := r3.Norm(r3.Sub(b.Pos[i], r3.Vec{X: q.X, Y: 2 * q.Y, Z: q.X})); d > 1e-12 {
				t.Errorf("grain %g: crossing %d is %g m off", grain, i, d)
			}
			if u, v := b.Slip.U[i]/25e-6, b.Slip.V[i]/25e-6; math.Abs(u-kappaU) > 1e-9 || math.Abs(v-kappaV) > 1e-9 {
				t.Errorf("grain %g: node %d is set at %g, %g 1/m, want %g, %g", grain, i, u, v, kappaU, kappaV)
			}
			if fine.Cell[i].Corner[0] == lattice.None {
				continue
			}
			c := centre(fine, i)
			off := math.Abs(b.Slip.Shear[i] - sine(c))
			if most = max(most, off); math.Abs(c.X) < 0.025 && math.Abs(c.Y) < 0.025 {
				inside++
				if off > 1e-12 {
					t.Errorf("grain %g: cell %d is set at %g, want %g", grain, i, b.Slip.Shear[i], sine(c))
				}
			}
		}
		// Beyond the outermost centres it is that of the nearest, a spacing off at most.
		if inside < 90 || most > 0.01*math.Sqrt2*5 {
			t.Errorf("grain %g: %d cells inside, want 90 or more; at the rim %g off", grain, inside, most)
		}
	}
}

// A short heavy strip with friction droops as the bilinear law M = Bκ + HB·min(κ/yield, 1)
// says under M = w(L−s)²/2, in small deflection; the plain Coulomb form
// y = (w/8B)(L² − 2HB/w)² lies near by.
func TestOverhangWithFriction(t *testing.T) {
	const length, h, b = 0.006, 0.0003, 1e-6
	const w = 8.0 // N/m²
	hb := 0.4 * length * length * w / 2
	l := cut(t, rectangle(0.003, 2*length, 0), h, 0)
	c := NewCloth(l, Stiffness{Weight: w / Gravity, TensileWarp: 100, TensileWeft: 100, Shear: 50, BendWarp: b,
		BendWeft: b, Twist: b / 2, BendFriction: hb})
	sc := &System{Cloth: c, Fixed: make([]bool, len(l.Rest))}
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Z: p.Y}
		sc.Fixed[i] = math.Abs(p.Y) < 1e-9
	}
	st := NewState(sc, pos)
	if r := Relax(context.Background(), sc, st, Settings{Residual: 1e-3}); r.Status != Settled {
		t.Fatalf("Relax = %+v, want settled", r)
	}
	tip, _ := l.Locate(r2.Vec{Y: length})
	got := -tip.At(st.Pos).Y
	var slope, want float64
	const n = 4000
	for k := range n {
		s := (float64(k) + 0.5) * length / n
		m := w * (length - s) * (length - s) / 2
		kappa := m / (b + hb/yield)
		if kappa > yield {
			kappa = (m - hb) / b
		}
		slope += kappa * length / n
		want += slope * length / n
	}
	coulomb := w / (8 * b) * math.Pow(length*length-2*hb/w, 2)
	elastic := w * math.Pow(length, 4) / (8 * b)
	t.Logf("tip %.4f mm, bilinear %.4f, Coulomb %.4f, elastic %.4f", got*1e3, want*1e3, coulomb*1e3, elastic*1e3)
	if math.Abs(got-want) > 0.04*want {
		t.Errorf("tip drops %.4f mm, want %.4f ± 4 %%", got*1e3, want*1e3)
	}
	if math.Abs(got-coulomb) > 0.15*elastic {
		t.Errorf("tip drops %.4f mm, want near %.4f (Coulomb), far from %.4f (elastic)", got*1e3, coulomb*1e3, elastic*1e3)
	}
}

// Yarns that jam hold the shear back: a bias strip pulled on stretches less
// with a locking angle than without, and its force is the slope of its energy.
func TestJam(t *testing.T) {
	for _, a := range []float64{-0.8, -0.55, -0.3, 0.2, 0.51, 0.7} {
		const e = 1e-6
		want := (jamEnergy(a+e, 0.5) - jamEnergy(a-e, 0.5)) / (2 * e)
		if got := jam(a, 0.5); math.Abs(got-want) > 1e-6 {
			t.Errorf("jam(%g) = %g, want the slope %g", a, got, want)
		}
	}
	if jam(0.4, 0.5) != 0 || jam(3, 0) != 0 {
		t.Error("jam below the locking angle or without one, want none")
	}
	if slope := 1 + (jam(0.5+knee+1e-6, 0.5)-jam(0.5+knee-1e-6, 0.5))/2e-6; math.Abs(slope-11) > 1e-3 {
		t.Errorf("slope one knee beyond = %g, want 11", slope)
	}
}
