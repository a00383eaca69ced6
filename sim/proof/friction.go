package proof

import (
	"context"
	"fmt"
	"math"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

const coulomb = "closed form: Coulomb's law, tan⁻¹ μ"

// frictions are a patch on a slope and a band round a drum.
func frictions() []Pending {
	var out []Pending
	for _, mu := range []float64{0.15, 0.3, 0.5} {
		out = append(out, figure(
			Check{Name: fmt.Sprintf("patch with μ = %g on a slope: slips at", mu), Want: deg(math.Atan(mu)), Tolerance: 0.5,
				Unit: "°", Source: coulomb},
			func(ctx context.Context) (float64, error) { return slipAngle(ctx, mu) }))
	}
	for _, mu := range []float64{0.2, 0.4} {
		want := math.Exp(mu * math.Pi)
		out = append(out, figure(
			Check{Name: fmt.Sprintf("band with μ = %g half round a drum: pull over load", mu), Want: want,
				Tolerance: 0.05 * want, Unit: "", Source: "closed form: capstan (Euler, Eytelwein), e^{μφ}"},
			func(ctx context.Context) (float64, error) { return capstan(ctx, mu) }))
	}
	return out
}

// slope is a plane through the origin that falls towards +X.
type slope struct{ angle float64 }

// Distance is that of the plane.
func (s slope) Distance(p r3.Vec) (float64, r3.Vec) {
	n := r3.Vec{X: math.Sin(s.angle), Y: math.Cos(s.angle)}
	return r3.Dot(p, n), n
}

// slipAngle steps a slope up by a quarter of a degree until a patch slides off
// by more than its friction's give.
func slipAngle(ctx context.Context, mu float64) (float64, error) {
	l, err := lattice.Cut(square(0.04), lattice.Options{Spacing: 0.01})
	if err != nil {
		return 0, err
	}
	for a := deg(math.Atan(mu)) - 3; a < 90; a += 0.25 {
		if slides(l, mu, rad(a)) || ctx.Err() != nil {
			return a - 0.125, ctx.Err()
		}
	}
	return 90, nil
}

// slides lays the patch on the slope and tells whether it is off and away.
func slides(l *lattice.Lattice, mu, angle float64) bool {
	s := slope{angle}
	sc := &sim.System{Cloth: sim.NewCloth(l, isotropic(0.15, 10e-6, 100)), Obstacle: s, Friction: mu}
	pos := make([]r3.Vec, len(l.Rest))
	_, n := s.Distance(r3.Vec{})
	down := r3.Vec{X: n.Y, Y: -n.X}
	for i, p := range l.Rest {
		pos[i] = r3.Add(r3.Add(r3.Scale(p.X, down), r3.Vec{Z: p.Y}), r3.Scale(sim.Shell, n))
	}
	st := sim.NewState(sc, pos)
	w := sim.NewStepper(sc, st)
	for range 4000 {
		w.Step()
	}
	var way float64
	for i, p := range l.Rest {
		way += (r3.Dot(st.Pos[i], down) - p.X) / float64(len(l.Rest))
	}
	return way > 0.005
}

// drum is a cylinder along X about the origin.
type drum float64

// Distance is that of the cylinder.
func (d drum) Distance(p r3.Vec) (float64, r3.Vec) {
	r := math.Hypot(p.Y, p.Z)
	if r == 0 {
		return -float64(d), r3.Vec{Y: 1}
	}
	return r - float64(d), r3.Vec{Y: p.Y / r, Z: p.Z / r}
}

// A band for the capstan: half round a drum, a leg down on either side.
const (
	drumRadius = 0.03
	drumAround = drumRadius + sim.Shell
	bandWidth  = 0.008
	bandLeg    = 0.045
	bandLoad   = 1.0 // N/m
	bandSteps  = 24_000
)

// capstan hangs a load on one end of the band, draws the other down slowly and
// returns pull over load, the mean of the last third of the way.
func capstan(ctx context.Context, mu float64) (float64, error) {
	length := math.Pi*drumAround + 2*bandLeg
	l, err := lattice.Cut(box(bandWidth, length), lattice.Options{Spacing: 0.004})
	if err != nil {
		return 0, err
	}
	sc := &sim.System{Cloth: sim.NewCloth(l, bandCloth), Obstacle: drum(drumRadius), Friction: mu}
	pos := make([]r3.Vec, len(l.Rest))
	for i, p := range l.Rest {
		pos[i] = onDrum(p, drumAround)
	}
	return drawn(ctx, sc, pos, [2]float64{-length / 2, length / 2})
}

// bandCloth is light and limp.
var bandCloth = sim.Stiffness{Weight: 1e-6, TensileWarp: 200, TensileWeft: 200, Shear: 50, BendWarp: 1e-7,
	BendWeft: 1e-7, Twist: 1e-7}

// drawn hangs a load on the first end of a band at pos, ends being flat y (m), and
// draws the second down.
func drawn(ctx context.Context, sc *sim.System, pos []r3.Vec, ends [2]float64) (float64, error) {
	const pins = 5
	for _, y := range ends {
		for k := range pins {
			p, _ := sc.Cloth.Lattice.Locate(r2.Vec{X: bandWidth * (float64(k)/(pins-1) - 0.5), Y: y})
			sc.Holds = append(sc.Holds, sim.Hold{Name: "end", Point: p, Only: sim.All})
		}
	}
	st := sim.NewState(sc, pos)
	for k, h := range sc.Holds {
		st.Target[k], st.Grip[k] = h.Point.At(pos), 50
	}
	const dead = 1e-4 // N/m: a spring so soft and long that its pull is a weight
	for k := range pins {
		st.Grip[k], st.Target[k].Y = dead, -bandLoad*bandWidth/pins/dead
	}
	w := sim.NewStepper(sc, st)
	var mean float64
	for step := range bandSteps {
		w.Step()
		for k := pins; k < 2*pins; k++ {
			st.Target[k].Y -= 1.5e-7
			if step >= bandSteps*2/3 {
				mean -= st.Pull(sc.Holds[k], k).Y / (bandSteps / 3)
			}
		}
	}
	return mean / (bandLoad * bandWidth), ctx.Err()
}

// onDrum lays the flat place p on the drum at a distance r (m) from its axis: half
// round it, what is longer straight down on either side.
func onDrum(p r2.Vec, r float64) r3.Vec {
	a := p.Y / r
	if math.Abs(a) >= math.Pi/2 {
		return r3.Vec{X: p.X, Y: math.Pi/2*r - math.Abs(p.Y), Z: math.Copysign(r, a)}
	}
	return r3.Vec{X: p.X, Y: r * math.Cos(a), Z: r * math.Sin(a)}
}

// square and box return outlines about the origin.
func square(side float64) []r2.Vec { return box(side, side) }

func box(w, h float64) []r2.Vec {
	return []r2.Vec{{X: -w / 2, Y: -h / 2}, {X: w / 2, Y: -h / 2}, {X: w / 2, Y: h / 2}, {X: -w / 2, Y: h / 2}}
}
