package sim

import (
	"math"
	"math/rand/v2"
	"testing"

	"cowl/mesh/lattice"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cut cuts an outline or ends the test; grain in degrees.
func cut(t testing.TB, outline []r2.Vec, spacing, grain float64) *lattice.Lattice {
	t.Helper()
	l, err := lattice.Cut(outline, lattice.Options{Spacing: spacing, Grain: grain * math.Pi / 180})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// upright returns the flat piece standing in the plane z = 0.
func upright(l *lattice.Lattice) []r3.Vec {
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = r3.Vec{X: p.X, Y: p.Y}
	}
	return pos
}

// uneven is a cloth with six different stiffnesses.
var uneven = Stiffness{Weight: 0.13, TensileWarp: 310, TensileWeft: 170, Shear: 23, BendWarp: 11e-6, BendWeft: 5e-6,
	Twist: 3e-6}

// crumple moves every node by up to a share of the spacing along each axis, on
// top of a smooth roll with shear.
func crumple(l *lattice.Lattice, r *rand.Rand, share float64) []r3.Vec {
	pos := make([]r3.Vec, len(l.Rest))
	g := r.Float64() - 0.5
	shake := func() float64 { return share * l.Spacing * (2*r.Float64() - 1) }
	for i, p := range l.Rest {
		s, c := math.Sincos(p.Y / 0.02)
		pos[i] = r3.Vec{X: p.X + g*p.Y + shake(), Y: 0.02*s + shake(), Z: 0.02*(1-c) + shake()}
	}
	return pos
}

// ball is a round obstacle with exact distance and gradient.
type ball struct {
	at r3.Vec
	r  float64
}

func (b ball) Distance(p r3.Vec) (float64, r3.Vec) {
	d := r3.Sub(p, b.at)
	l := r3.Norm(d)
	return l - b.r, r3.Scale(1/l, d)
}

// potential is the whole energy of a scene without friction, built apart from
// the forces: strain, height, holds and the penalty of the obstacle.
func potential(s *System, st *State) float64 {
	e := s.Stored(st.Pos).Total()
	for i, p := range st.Pos {
		e += s.Cloth.Load[i] * p.Y
		if s.Obstacle != nil {
			d, _ := s.Obstacle.Distance(p)
			depth := math.Max(0, Shell-d)
			q := 3 * depth / Shell // contact hardens by (3·depth/shell)²
			e += presses(s.Cloth.Lattice)[i] * depth * depth / 2 * (1 + q*q/2)
		}
	}
	for k, h := range s.Holds {
		d := r3.Sub(st.Target[k], h.Point.At(st.Pos))
		e += st.Grip[k] / 2 * (h.Only.X*d.X*d.X + h.Only.Y*d.Y*d.Y + h.Only.Z*d.Z*d.Z)
	}
	return e
}

// unbalanced computes the forces without a step.
func unbalanced(w *Stepper) {
	w.pair.Both(w.load)
	w.pair.Both(w.balance)
	for i := range w.force {
		w.force[i] = w.sum[0][i].Force
	}
}

// slopes returns −∂E/∂x of one node by central differences.
func slopes(s *System, st *State, i int) r3.Vec {
	const step = 1e-7
	at := st.Pos[i]
	along := func(d r3.Vec) float64 {
		st.Pos[i] = r3.Add(at, d)
		up := potential(s, st)
		st.Pos[i] = r3.Sub(at, d)
		down := potential(s, st)
		st.Pos[i] = at
		return (down - up) / (2 * step)
	}
	return r3.Vec{X: along(r3.Vec{X: step}), Y: along(r3.Vec{Y: step}), Z: along(r3.Vec{Z: step})}
}

// Every force is the slope of its energy: pull, shear, bending and twist one at
// a time, all of them, with holds, and against a ball, at uneven grain.
func TestForcesAreSlopes(t *testing.T) {
	l := cut(t, rectangle(0.04, 0.03, 0.1), 0.006, 30)
	grip := func(q r2.Vec, only r3.Vec) Hold {
		p, _ := l.Locate(q)
		return Hold{Point: p, Only: only}
	}
	holds := []Hold{grip(r2.Vec{X: 0.011, Y: 0.004}, All), grip(r2.Vec{X: -0.013, Y: -0.002}, r3.Vec{Y: 1}),
		grip(r2.Vec{X: 0.022, Y: 0.02}, r3.Vec{X: 1, Z: 1})}
	n := 0
	for _, c := range []struct {
		name string
		s    Stiffness
		hold []Hold
		on   contact.Obstacle
	}{
		{"pull", Stiffness{Weight: 0.1, TensileWarp: 310, TensileWeft: 170}, nil, nil},
		{"shear", Stiffness{Weight: 0.1, Shear: 23}, nil, nil},
		{"bend", Stiffness{Weight: 0.1, BendWarp: 11e-6, BendWeft: 5e-6}, nil, nil},
		{"bend that softens", Stiffness{Weight: 0.1, BendWarp: 11e-6, BendWeft: 5e-6, Softening: 0.004}, nil, nil},
		{"twist", Stiffness{Weight: 0.1, Twist: 3e-6}, nil, nil},
		{"all", uneven, nil, nil},
		{"holds", uneven, holds, nil},
		{"ball", uneven, nil, ball{r3.Vec{Y: -0.002, Z: 0.021}, 0.0195}},
	} {
		r := rand.New(rand.NewPCG(1, 2))
		for range 4 {
			sc := &System{Cloth: NewCloth(l, c.s), Holds: c.hold, Obstacle: c.on}
			st := NewState(sc, crumple(l, r, 0.1))
			for k := range c.hold {
				st.Grip[k], st.Target[k] = 40*r.Float64(), r3.Vec{X: r.Float64() / 100, Y: r.Float64() / 100, Z: r.Float64() / 100}
			}
			w := NewStepper(sc, st)
			unbalanced(w)
			var scale, worst float64
			for i := range st.Pos {
				scale = math.Max(scale, r3.Norm(w.force[i]))
				worst = math.Max(worst, r3.Norm(r3.Sub(w.force[i], slopes(sc, st, i))))
				n++
			}
			if !(worst <= 1e-6*scale) {
				t.Errorf("%s: force and slope differ by %g N where the largest force is %g N, want 1e-6 of it", c.name, worst,
					scale)
			}
		}
	}
	if n < 1000 {
		t.Errorf("%d nodes compared, want thousands", n)
	}
}

// The ball case must touch, or it would show nothing.
func TestBallTouches(t *testing.T) {
	l := cut(t, rectangle(0.04, 0.03, 0.1), 0.006, 30)
	b, n := ball{r3.Vec{Y: -0.002, Z: 0.021}, 0.0195}, 0
	for _, p := range crumple(l, rand.New(rand.NewPCG(1, 2)), 0.1) {
		if d, _ := b.Distance(p); d < Shell {
			n++
		}
	}
	if n < 5 || n == len(l.Rest) {
		t.Errorf("%d of %d nodes touch the ball, want some", n, len(l.Rest))
	}
}

// Cloth moved as a rigid body stores nothing and pulls nowhere.
func TestRigidMotion(t *testing.T) {
	n := 0
	for _, grain := range []float64{0, 30, 45, 77} {
		l := cut(t, rectangle(0.1, 0.06, 0), 0.007, grain)
		c := NewCloth(l, uneven)
		for _, axis := range []r3.Vec{{}, {X: 1}, {X: 1, Y: 2, Z: -1}, {Y: -3, Z: 0.3}} {
			pos := upright(l)
			if axis != (r3.Vec{}) {
				for i := range pos {
					pos[i] = r3.Add(r3.NewRotation(1.1, axis).Rotate(pos[i]), r3.Vec{X: 0.3, Y: -1, Z: 2})
				}
			}
			st := NewState(&System{Cloth: c}, pos)
			w := NewStepper(&System{Cloth: c}, st)
			unbalanced(w)
			for i, f := range w.force {
				if d := r3.Norm(r3.Add(f, r3.Vec{Y: c.Load[i]})); d > 1e-11 {
					t.Errorf("grain %g°, turned about %v: elastic force %g N on node %d, want 0", grain, axis, d, i)
				}
				n++
			}
			if e := c.Stored(pos).Total(); e > 1e-20 {
				t.Errorf("grain %g°, turned about %v: stores %g J, want 0", grain, axis, e)
			}
		}
	}
	if n < 1000 {
		t.Errorf("%d nodes, want thousands", n)
	}
}

// Cloth rolled on a cylinder stores ½Bκ² an area, where across the yarns
// B(θ) = Bu·cos⁴θ + Bv·sin⁴θ + 4·D66·cos²θ·sin²θ (R. M. Jones, Mechanics of
// Composite Materials, 1975, §4: bending of an orthotropic plate). The free rows
// of the rim bend freely, so the error falls with the spacing, first order.
func TestCylinder(t *testing.T) {
	const radius, size = 0.05, 0.12
	s := Stiffness{Weight: 0.1, BendWarp: 11e-6, BendWeft: 5e-6, Twist: 3e-6}
	n := 0
	for _, c := range []struct{ grain, tol float64 }{{0, 0.009}, {90, 0.009}, {45, 0.001}, {30, 0.001}, {13.7, 0.002}} {
		last := 0.0
		for _, h := range []float64{0.004, 0.002, 0.001} {
			l := cut(t, rectangle(size, size, 0), h, c.grain)
			pos := make([]r3.Vec, len(l.Rest))
			for i, p := range l.Rest {
				sn, cs := math.Sincos(p.Y / radius)
				pos[i] = r3.Vec{X: p.X, Y: radius * sn, Z: radius * (1 - cs)}
			}
			c2 := math.Pow(math.Cos(c.grain*math.Pi/180), 2)
			s2 := 1 - c2
			want := (s.BendWarp*c2*c2 + s.BendWeft*s2*s2 + 4*s.Twist*c2*s2) / (2 * radius * radius) * size * size
			miss := NewCloth(l, s).Stored(pos).Bend/want - 1
			if math.Abs(miss) > c.tol*h/0.001 {
				t.Errorf("grain %g° at %g mm: energy off by %.4f, want within %g", c.grain, h*1000, miss, c.tol*h/0.001)
			}
			if last != 0 && c.grain == 0 && math.Abs(last/miss-2) > 0.1 {
				t.Errorf("grain 0° at %g mm: energy off by %.4f, want half of the %.4f at twice the spacing", h*1000, miss, last)
			}
			last = miss
			n++
		}
	}
	if n != 15 {
		t.Errorf("%d cylinders, want 15", n)
	}
}

// Cloth drawn along a yarn, or sheared, stores its closed form: an even strain
// is held exactly on any cut and grain.
func TestEvenStrain(t *testing.T) {
	const size, e, g = 0.1, 0.003, 0.02
	for _, grain := range []float64{0, 45, 22.5} {
		l := cut(t, rectangle(size, size, 0.2), 0.007, grain)
		c := NewCloth(l, uneven)
		p, q := l.Warp(), l.Weft()
		pos := make([]r3.Vec, len(l.Rest))
		for i, r := range l.Rest {
			u, v := r2.Dot(r, p), r2.Dot(r, q)
			// Unit weft yarn turned by g, warp drawn by e.
			d := r2.Add(r2.Scale(u*(1+e), p), r2.Scale(v, r2.Add(r2.Scale(math.Cos(g), q), r2.Scale(math.Sin(g), p))))
			pos[i] = r3.Vec{X: d.X, Y: d.Y}
		}
		got := c.Stored(pos)
		for _, w := range []struct {
			name      string
			got, want float64
		}{
			{"Pull", got.Tensile, uneven.TensileWarp * e * e / 2 * size * size},
			{"Shear", got.Shear, uneven.Shear * g * g / 2 * size * size},
		} {
			if math.Abs(w.got-w.want) > 1e-5*w.want {
				t.Errorf("grain %g°: Stored.%s = %g J, want %g", grain, w.name, w.got, w.want)
			}
		}
		if math.Abs(c.MaxStrain(pos)-e) > 1e-9 {
			t.Errorf("grain %g°: MaxStrain = %g, want %g", grain, c.MaxStrain(pos), e)
		}
	}
}
