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
func rubs() []Pending {
	var out []Pending
	for _, mu := range []float64{0.2, 0.4} {
		out = append(out, figure(
			Check{Name: fmt.Sprintf("patch on cloth with μ = %g on a slope: slips at", mu), Want: deg(math.Atan(mu)),
				Tolerance: 0.5, Unit: "°", Source: coulomb},
			func(ctx context.Context) (float64, error) { return rubAngle(ctx, mu) }))
	}
	return append(out, bands("half round a drum", thinGap)...)
}

// thickBands are the bands at a gap as wide as in a cowl, where friction acts by less
// than it is given.
func thickBands() []Pending { return bands("half round a drum, layers half a spacing apart", thickGap) }

// bands are bands on cloth whose layers lie a gap (m) apart.
func bands(how string, gap float64) []Pending {
	var out []Pending
	for _, mu := range []float64{0.2, 0.4} {
		want := math.Exp(mu * math.Pi)
		out = append(out, figure(
			Check{Name: fmt.Sprintf("band on cloth with μ = %g %s: pull over load", mu, how), Want: want,
				Tolerance: 0.05 * want, Unit: "", Source: "closed form: capstan (Euler, Eytelwein), e^{μφ}"},
			func(ctx context.Context) (float64, error) { return clothCapstan(ctx, mu, gap) }))
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

// Gaps between the layers, m. Of the band the thin one is an eighth of its spacing,
// as good as the closed form's belt of no thickness, and the thick one a half, as
// wide as in a cowl: what rubs turns it by the gap, which upsets the press from
// crossing to crossing.
const (
	thinGap   = 0.5e-3
	thickGap  = 2e-3
	layerTurn = 20 * math.Pi / 180 // of the lower layer: yarns of two layers are seldom parallel
)

// layersOf cuts two layers of given sizes (m) off one piece by a slit right across.
func layersOf(lower, upper r2.Vec, spacing float64) (twoLayers, error) {
	var o twoLayers
	x, y := lower.X/2, upper.X/2
	piece := []r2.Vec{{X: -x, Y: -lower.Y}, {X: x, Y: -lower.Y}, {X: x}, {X: y}, {X: y, Y: upper.Y}, {X: -y, Y: upper.Y},
		{X: -y}, {X: -x}}
	l, err := lattice.Cut(piece, lattice.Options{Spacing: spacing,
		Slits: []lattice.Slit{{From: r2.Vec{X: -1}, To: r2.Vec{X: 1}}}})
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

// system returns the layers with the lower one fixed, a friction and a gap (m) between them.
func (o *twoLayers) system(s sim.Stiffness, mu, gap float64) *sim.System {
	sc := &sim.System{Cloth: sim.NewCloth(o.lattice, s), Rub: mu, Gap: gap, Fixed: make([]bool, len(o.upper)), Alone: true}
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
	sc := o.system(isotropic(0.15, 10e-6, 100), mu, thickGap)
	_, n := slope{angle}.Distance(r3.Vec{})
	down := r3.Vec{X: n.Y, Y: -n.X}
	pos := make([]r3.Vec, len(o.at))
	for i, p := range o.at {
		pos[i] = r3.Add(r3.Scale(p.X, down), r3.Vec{Z: p.Y})
		if o.upper[i] {
			pos[i] = r3.Add(pos[i], r3.Scale(thickGap, n))
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
func clothCapstan(ctx context.Context, mu, gap float64) (float64, error) {
	around := drumRadius + gap
	length := math.Pi*around + 2*bandLeg
	o, err := layersOf(r2.Vec{X: 0.05, Y: math.Pi*drumRadius + 0.02}, r2.Vec{X: bandWidth, Y: length}, 0.004)
	if err != nil {
		return 0, err
	}
	sc := o.system(bandCloth, mu, gap)
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
