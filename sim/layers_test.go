package sim

import (
	"context"
	"math"
	"testing"

	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// floor is the plane y = 0.
type floor struct{}

func (floor) Distance(p r3.Vec) (float64, r3.Vec) { return p.Y, r3.Vec{Y: 1} }

// folded returns a strip of 30 × 120 mm with a friction of layers, folded over and
// held open above a floor.
func folded(t testing.TB, grain, gap, rub float64) (*System, *State) {
	t.Helper()
	l := cut(t, rectangle(0.03, 0.12, 0), 0.005, grain)
	s := Stiffness{Weight: 0.2, TensileWarp: 100, TensileWeft: 100, Shear: 20, BendWarp: 1e-6, BendWeft: 1e-6, Twist: 5e-7}
	sc := &System{Cloth: NewCloth(l, s), Obstacle: floor{}, Friction: 0.3, Gap: gap, Rub: rub}
	const open = 0.008 // m, width of the fold at the start
	turn := math.Pi * open / 2
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		q := r3.Vec{X: p.X, Y: Shell}
		switch sn, cs := math.Sincos(math.Pi * p.Y / turn); {
		case p.Y > turn/2:
			q.Y, q.Z = Shell+open, turn/2-p.Y
		case p.Y < -turn/2:
			q.Z = p.Y + turn/2
		default:
			q.Y, q.Z = Shell+open/2*(1+sn), open/2*cs
		}
		pos[i] = q
	}
	return sc, NewState(sc, pos)
}

// A strip folded over and laid on a floor falls onto itself and stays a gap
// apart, unpierced, and the floor holds the lower layer at the shell, whether the
// layers rub or not. Without friction it swings on the floor for some rounds.
func TestLayersLieApart(t *testing.T) {
	const gap = 0.002
	for _, c := range []struct{ grain, rub float64 }{{0, 0}, {30, 0}, {45, 0}, {30, 0.4}} {
		grain := c.grain
		sc, st := folded(t, grain, gap, c.rub)
		l := sc.Cloth.Lattice
		var r Result
		for n := 0; n < 8 && r.Status != Settled; n++ {
			r = Relax(context.Background(), sc, st, Settings{Residual: 5e-3, Steps: 5000}) // a round of a drape
		}
		if r.Status != Settled {
			t.Errorf("grain %g°, μ %g: %s at %.4f, want rest at 0.005", grain, c.rub, r.Status, r.Residual)
		}
		sheet := l.Skin().Sheet(st.Pos, 1)
		if n := contact.Pierced(&sheet); n != 0 {
			t.Errorf("grain %g°, μ %g: Pierced = %d, want 0", grain, c.rub, n)
		}
		low, near, tip := math.Inf(1), math.Inf(1), math.Inf(-1)
		for _, p := range sheet.Pos {
			low = math.Min(low, p.Y)
		}
		for i, p := range st.Pos {
			if l.Rest[i].Y < 0.035 {
				continue
			}
			tip = math.Max(tip, p.Y)
			for j, q := range st.Pos {
				if l.Rest[j].Y < -0.02 {
					near = math.Min(near, r3.Norm(r3.Sub(p, q)))
				}
			}
		}
		t.Logf("grain %g°, μ %g: %s at %.4f after %d steps of the last round, lowest %.3f mm, layers at least %.3f mm "+
			"apart, upper end at %.3f mm", grain, c.rub, r.Status, r.Residual, r.Steps, low*1000, near*1000, tip*1000)
		// The floor gives by 0.05 mm under a hundred weights of cloth (see press).
		if low < Shell-5e-5 {
			t.Errorf("grain %g°, μ %g: lowest place of the cloth at %.3f mm, want %.3f", grain, c.rub, low*1000, Shell*1000)
		}
		if near < 0.98*gap {
			t.Errorf("grain %g°, μ %g: layers %.3f mm apart, want %.3f or more", grain, c.rub, near*1000, gap*1000)
		}
		if tip > 2.5*gap+Shell {
			t.Errorf("grain %g°, μ %g: upper layer at %.3f mm, want it to have fallen onto the lower", grain, c.rub, tip*1000)
		}
	}
}
