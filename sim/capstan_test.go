package sim

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// roller is a cylinder along X through the origin.
type roller float64

func (c roller) Distance(p r3.Vec) (float64, r3.Vec) {
	l := math.Hypot(p.Y, p.Z)
	return l - float64(c), r3.Vec{Y: p.Y / l, Z: p.Z / l}
}

// A strip drawn over a roller by half a turn needs e^{μφ} times the load at its
// other end (L. Euler 1769; J. Eytelwein 1808). The load is a dead pull, the
// drawn end moves slowly, and the pull is the mean over the last third of the way.
func TestCapstan(t *testing.T) {
	if testing.Short() {
		t.Skip("slow pull")
	}
	const radius, width, load = 0.03, 0.008, 1.0
	around := radius + Shell
	leg := 0.045
	length := math.Pi*around + 2*leg
	l := cut(t, rectangle(width, length, 0), 0.004, 0)
	s := Stiffness{Weight: 1e-6, TensileWarp: 200, TensileWeft: 200, Shear: 50, BendWarp: 1e-7, BendWeft: 1e-7,
		Twist: 1e-7}
	for _, mu := range []float64{0, 0.2, 0.4} {
		sc := &System{Cloth: NewCloth(l, s), Obstacle: roller(radius), Friction: mu}
		end := func(y float64) []Hold { return row(l, r2.Vec{X: -width / 2, Y: y}, r2.Vec{X: width / 2, Y: y}, 5) }
		sc.Holds = append(end(-length/2), end(length/2)...)
		pos := make([]r3.Vec, len(l.Rest))
		for i, p := range l.Rest {
			a := p.Y / around
			if math.Abs(a) < math.Pi/2 {
				pos[i] = r3.Vec{X: p.X, Y: around * math.Cos(a), Z: around * math.Sin(a)}
			} else {
				pos[i] = r3.Vec{X: p.X, Y: math.Pi/2*around - math.Abs(p.Y), Z: math.Copysign(around, a)}
			}
		}
		st := NewState(sc, pos)
		for k, h := range sc.Holds {
			st.Target[k], st.Grip[k] = h.Point.At(pos), 50
			if k < 5 {
				st.Grip[k], st.Target[k].Y = dead, -load*width/5/dead
			}
		}
		w := NewStepper(sc, st)
		const steps = 24000
		mean := 0.0
		for step := range steps {
			w.Step()
			for k := 5; k < 10; k++ {
				st.Target[k].Y -= 1.5e-7
				if step >= steps*2/3 {
					mean -= st.Pull(sc.Holds[k], k).Y / (steps / 3)
				}
			}
		}
		got, want := mean/(load*width), math.Exp(mu*math.Pi)
		t.Logf("μ = %g: pull over load = %.4f, e^{μπ} = %.4f (%+.1f %%)", mu, got, want, 100*(got/want-1))
		if math.Abs(got/want-1) > 0.05 {
			t.Errorf("μ = %g: pull over load = %.4f, want e^{μπ} = %.4f ± 5 %%", mu, got, want)
		}
	}
}
