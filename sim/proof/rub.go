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

// rubs are frictions between two layers: a patch of cloth on a fixed sheet on a
// slope, and a band round a drum that is wrapped in cloth. Tolerances are those of
// the same trials on a bare slope and drum: two steps of the slope, and for the
// band what its pull swings about while it is drawn.
func rubs() []Trial {
	var out []Trial
	for _, mu := range []float64{0.2, 0.4} {
		out = append(out, figure(
			Check{Name: fmt.Sprintf("patch on cloth with μ = %g on a slope: slips at", mu), Want: deg(math.Atan(mu)), Tolerance: 0.5, Unit: "°", Source: coulomb},
			func(ctx context.Context) (float64, error) { return rubAngle(ctx, mu) }))
	}
	for _, mu := range []float64{0.2, 0.4} {
		want := math.Exp(mu * math.Pi)
		out = append(out, figure(
			Check{Name: fmt.Sprintf("band on cloth with μ = %g half round a drum: pull over load", mu), Want: want, Tolerance: 0.05 * want, Unit: "", Source: "closed form: capstan (Euler, Eytelwein), e^{μφ}"},
			func(ctx context.Context) (float64, error) { return clothCapstan(ctx, mu) }))
	}
	return out
}

// twoLayers is a fixed lower layer of cloth and a free upper one that touch
// nothing but each other.
type twoLayers struct {
	lattice *lattice.Lattice
	upper   []bool   // len = nodes
	at      []r2.Vec // m, len = nodes; flat place about the middle of its layer
}

const (
	// layerGap is an eighth of the spacing of the band. What rubs turns it by the gap,
	// which upsets the press from crossing to crossing: gaps of 1 and 2 mm gave 3.32
	// and 3.17 for 3.51.
	layerGap  = 0.5e-3             // m
	layerTurn = 20 * math.Pi / 180 // of the lower layer: yarns of two layers are seldom parallel
)

// layersOf cuts two layers of given sizes (m) off one piece by a slit right across.
func layersOf(lower, upper r2.Vec, spacing float64) (twoLayers, error) {
	var o twoLayers
	x, y := lower.X/2, upper.X/2
	piece := []r2.Vec{{X: -x, Y: -lower.Y}, {X: x, Y: -lower.Y}, {X: x}, {X: y}, {X: y, Y: upper.Y}, {X: -y, Y: upper.Y}, {X: -y}, {X: -x}}
	l, err := lattice.Cut(piece, lattice.Options{Spacing: spacing, Slits: []lattice.Slit{{From: r2.Vec{X: -1}, To: r2.Vec{X: 1}}}})
	if err != nil {
		return o, err
	}
	o = twoLayers{l, make([]bool, len(l.Rest)), make([]r2.Vec, len(l.Rest))}
	tip, _ := l.Locate(r2.Vec{Y: upper.Y - spacing/2})
	for todo := []int32{tip.Node[0]}; len(todo) > 0; {
		i := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if i == lattice.None || o.upper[i] {
			continue
		}
		o.upper[i] = true
		todo = append(todo, l.U[i].Prev, l.U[i].Next, l.V[i].Prev, l.V[i].Next)
	}
	sin, cos := math.Sincos(layerTurn)
	for i, p := range l.Rest {
		if o.upper[i] {
			o.at[i] = r2.Vec{X: p.X, Y: p.Y - upper.Y/2}
			continue
		}
		p.Y += lower.Y / 2
		o.at[i] = r2.Vec{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y}
	}
	return o, nil
}

// scene returns the layers with the lower one fixed and a friction between them.
func (o *twoLayers) scene(s sim.Stiffness, mu float64) *sim.Scene {
	sc := &sim.Scene{Cloth: sim.NewCloth(o.lattice, s), Rub: mu, Gap: layerGap, Fixed: make([]bool, len(o.upper)), Alone: true}
	for i, up := range o.upper {
		sc.Fixed[i] = !up
	}
	return sc
}

// rubAngle steps a slope up by a quarter of a degree until a patch slides off
// the cloth on it by more than its friction's give.
func rubAngle(ctx context.Context, mu float64) (float64, error) {
	o, err := layersOf(r2.Vec{X: 0.07, Y: 0.07}, r2.Vec{X: 0.04, Y: 0.04}, 0.01)
	if err != nil {
		return 0, err
	}
	for a := deg(math.Atan(mu)) - 1; a < 90; a += 0.25 {
		if o.slides(mu, rad(a)) || ctx.Err() != nil {
			return a - 0.125, ctx.Err()
		}
	}
	return 90, nil
}

// slides lays the upper layer on the lower and tells whether it is off and away.
func (o *twoLayers) slides(mu, angle float64) bool {
	sc := o.scene(isotropic(0.15, 10e-6, 100), mu)
	_, n := slope{angle}.Distance(r3.Vec{})
	down := r3.Vec{X: n.Y, Y: -n.X}
	pos := make([]r3.Vec, len(o.at))
	for i, p := range o.at {
		pos[i] = r3.Add(r3.Scale(p.X, down), r3.Vec{Z: p.Y})
		if o.upper[i] {
			pos[i] = r3.Add(pos[i], r3.Scale(layerGap, n))
		}
	}
	st := sim.NewState(sc, pos)
	w := sim.NewStepper(sc, st)
	for range 8000 {
		w.Step()
	}
	var way, nodes float64
	for i, p := range o.at {
		if o.upper[i] {
			way, nodes = way+r3.Dot(st.Pos[i], down)-p.X, nodes+1
		}
	}
	return way > 0.001*nodes
}

// clothCapstan is capstan with a fixed layer of cloth between band and drum.
func clothCapstan(ctx context.Context, mu float64) (float64, error) {
	const around = drumRadius + layerGap
	length := math.Pi*around + 2*bandLeg
	o, err := layersOf(r2.Vec{X: 0.05, Y: math.Pi*drumRadius + 0.02}, r2.Vec{X: bandWidth, Y: length}, 0.004)
	if err != nil {
		return 0, err
	}
	sc := o.scene(bandCloth, mu)
	pos := make([]r3.Vec, len(o.at))
	for i, p := range o.at {
		r := drumRadius
		if o.upper[i] {
			r = around
		}
		pos[i] = onDrum(p, r)
	}
	const rim = 1e-3 // m
	return drawn(ctx, sc, pos, [2]float64{rim, length - rim})
}
