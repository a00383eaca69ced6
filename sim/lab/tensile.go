package lab

import (
	"context"
	"fmt"
	"math"
	"time"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// TensileSetup is a strip under load; zero values take the default. Weight is left
// out, as in a level pull tester.
type TensileSetup struct {
	Length  float64        // m between the ends, 0.02–1; 0 means 0.3
	Width   float64        // m, 0.005–0.5; 0 means a sixth of the length
	Grain   float64        // rad, from the length of the strip to the warp
	Load    float64        // N per m of width, 0.001–1000; 0 means 5, that of a hanging cowl
	Free    bool           // ends free to narrow and to skew, instead of clamped in jaws that swivel
	Spacing float64        // m; 0 means a twelfth of the width
	Report  func(Progress) // called now and then, may be nil
}

// TensileResult is what a pull test reads.
type TensileResult struct {
	Extension float64 // of the whole strip from end to end, a fraction
	Strain    float64 // of the middle third, a fraction
	Modulus   float64 // N/m, load over strain
	Shear     float64 // rad, mean change of the angle between the yarns in the central zone
	Narrowing float64 // of the width in the middle, a fraction
	Run               // its residual is over the load
}

// Tensile draws a strip out by its ends. It fails where the setup is out of range
// or too coarse.
func Tensile(ctx context.Context, s sim.Stiffness, p TensileSetup) (TensileResult, error) {
	p.defaults()
	var r TensileResult
	if err := p.check(); err != nil {
		return r, err
	}
	s.Weight = weightless
	k, err := p.setUp(s)
	if err != nil {
		return r, err
	}
	p.draw(ctx, k, &r.Run)
	p.read(k, &r)
	return r, nil
}

// weightless is a weight that no load feels, kg/m²; the residual needs one.
const weightless = 1e-6

func (p *TensileSetup) defaults() {
	if p.Length == 0 {
		p.Length = 0.3
	}
	if p.Width == 0 {
		p.Width = p.Length / 6
	}
	if p.Load == 0 {
		p.Load = 5
	}
	if p.Spacing == 0 {
		p.Spacing = math.Max(p.Width/12, math.Sqrt(p.Length*p.Width/mostDrawn))
	}
}

// mostDrawn is the number of nodes that a strip under load is held to.
const mostDrawn = 8000

// check tells what is out of range.
func (p TensileSetup) check() error {
	for _, c := range []struct {
		name            string
		v, low, high, k float64
		unit            string
	}{
		{"length", p.Length, 0.02, 1, 1000, "mm"},
		{"width", p.Width, 0.005, 0.5, 1000, "mm"},
		{"load", p.Load, 0.001, 1000, 1, "N/m"},
		{"spacing", p.Spacing, 0.0005, p.Width / 3, 1000, "mm"},
	} {
		if err := within(c.name, c.v, c.low, c.high, c.k, c.unit); err != nil {
			return err
		}
	}
	return nil
}

// points is the number of points by which each end is held.
func (p TensileSetup) points() int { return int(math.Ceil(1.5*p.Width/p.Spacing)) + 1 }

// ends returns the points of both ends, low end first.
func (p TensileSetup) ends() []r2.Vec {
	var out []r2.Vec
	for _, y := range [2]float64{-p.Length / 2, p.Length / 2} {
		out = append(out, row(r2.Vec{X: -p.Width / 2, Y: y}, r2.Vec{X: p.Width / 2, Y: y}, p.points())...)
	}
	return out
}

// setUp puts the strip flat between its ends.
func (p TensileSetup) setUp(s sim.Stiffness) (*bench, error) {
	l, err := lattice.Cut(rectangle(p.Width, p.Length), lattice.Options{Spacing: p.Spacing, Grain: p.Grain})
	if err != nil {
		return nil, err
	}
	k := &bench{
		lattice: l, system: &sim.System{Cloth: sim.NewCloth(l, s)},
		stage: fmt.Sprintf("strip under %.4g N/m", p.Load), report: p.Report,
	}
	only := sim.All
	if p.Free {
		only = r3.Vec{Y: 1}
	}
	for _, q := range p.ends() {
		if err := k.hold(q, only); err != nil {
			return nil, err
		}
	}
	if err := k.hold(r2.Vec{}, sim.All); err != nil {
		return nil, err
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		pos[i] = r3.Vec{X: q.X, Y: q.Y}
	}
	k.state = sim.NewState(k.system, pos)
	n := len(k.system.Holds) - 1
	k.state.Grip[n] = s.Shear
	for i := range n {
		k.state.Grip[i] = jaw * s.TensileWarp * p.Width / float64(p.points()) / p.Spacing
		if p.Free {
			k.state.Grip[i] = dead
		}
	}
	return k, nil
}

// jaw is how many times stiffer than the yarns under it a jaw holds.
const jaw = 4

// dead is the grip, N/m, of a spring so soft, to a target so far, that its pull
// is a dead load.
const dead = 1e-4

// draw loads the ends and walks to rest.
func (p TensileSetup) draw(ctx context.Context, k *bench, r *Run) {
	start, o := time.Now(), sim.Settings{Residual: 1e-4, Steps: 300_000}
	force := p.Load * p.Width
	unit := force / k.system.Cloth.Weight()
	p.aim(k)
	w := sim.NewStepper(k.system, k.state)
	got := sim.Result{Status: sim.StepLimit}
	for got.Steps < o.Steps && got.Status == sim.StepLimit {
		w.Step()
		got.Steps++
		if !p.Free {
			p.aim(k)
		}
		if got.Steps%50 != 0 {
			continue
		}
		got.Residual = w.Residual() / unit
		k.tell(got.Steps, o.Steps, got.Residual)
		switch {
		case ctx.Err() != nil:
			got.Status = sim.Cancelled
		case math.IsNaN(got.Residual) || math.IsInf(got.Residual, 0):
			got.Status = sim.Diverged
		case got.Residual <= o.Residual:
			got.Status = sim.Settled
		}
	}
	r.note(k, got, start)
}

// aim sets the targets of the ends. A jaw lies where its points lie on the
// whole, at the angle that they have on the whole, so that it neither pushes
// nor turns; each of its points is drawn out by its share of the load.
func (p TensileSetup) aim(k *bench) {
	n := p.points()
	share := p.Load * p.Width / float64(n)
	for e := range 2 {
		holds, target := k.system.Holds[e*n:(e+1)*n], k.state.Target[e*n:(e+1)*n]
		out := r3.Vec{Y: float64(2*e-1) * share / k.state.Grip[e*n]}
		if p.Free {
			for i, h := range holds {
				target[i] = r3.Add(h.Point.At(k.state.Pos), out)
			}
			continue
		}
		for i, h := range holds {
			target[i] = h.Point.At(k.state.Pos)
		}
		p.straighten(target)
		for i := range target {
			target[i] = r3.Add(target[i], out)
		}
	}
}

// straighten moves the points onto the rigid bar that fits them best.
func (p TensileSetup) straighten(x []r3.Vec) {
	n := float64(len(x))
	var mid, dir r3.Vec
	for i, q := range x {
		mid = r3.Add(mid, r3.Scale(1/n, q))
		dir = r3.Add(dir, r3.Scale(float64(i)-(n-1)/2, q))
	}
	dir = r3.Scale(p.Width/n/r3.Norm(dir), dir)
	for i := range x {
		x[i] = r3.Add(mid, r3.Scale(float64(i)-(n-1)/2, dir))
	}
}

// read reads the strip at rest.
func (p TensileSetup) read(k *bench, r *TensileResult) {
	reach := func(a, b r2.Vec) float64 { return r3.Norm(r3.Sub(k.at(a), k.at(b))) }
	x, y := r2.Vec{X: p.Width / 2}, r2.Vec{Y: p.Length / 6}
	r.Strain = reach(y, r2.Scale(-1, y))/(p.Length/3) - 1
	r.Modulus = p.Load / r.Strain
	r.Narrowing = 1 - reach(x, r2.Scale(-1, x))/p.Width
	n := p.points()
	var ends [2]r3.Vec
	for i, h := range k.system.Holds[:2*n] {
		ends[i/n] = r3.Add(ends[i/n], r3.Scale(1/float64(n), h.Point.At(k.state.Pos)))
	}
	r.Extension = r3.Norm(r3.Sub(ends[1], ends[0]))/p.Length - 1
	sum, area := 0.0, 0.0
	for i, c := range k.lattice.Cell {
		if at := k.lattice.Rest[i]; c.Corner[0] != lattice.None && math.Abs(at.X) < p.Width/4 && math.Abs(at.Y) < p.Length/6 {
			sum, area = sum+c.Area*shearAngle(c.Corner, k.state.Pos), area+c.Area
		}
	}
	if area > 0 {
		r.Shear = math.Abs(sum / area)
	}
}

// shearAngle returns the departure from a right angle of the mean edges of a cell, rad.
func shearAngle(q [4]int32, x []r3.Vec) float64 {
	d := r3.Sub(x[q[3]], x[q[0]])
	e := r3.Sub(x[q[1]], x[q[2]])
	return math.Asin(r3.Cos(r3.Add(d, e), r3.Sub(d, e)))
}
