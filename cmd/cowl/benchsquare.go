package main

import (
	"context"
	"math"

	"cowl/mesh/lattice"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The square that bench hangs, m: by two corners brought nearer.
const (
	squareSide = 0.6
	squareSpan = 0.48
	cornerGrip = 2000 // N/m
)

// hangSquare hangs a square of so many crossings a side by two corners, from one
// wave that runs down the whole of it, on its own lattice from the first step.
func hangSquare(ctx context.Context, s sim.Stiffness, side int, clock *sim.Clock) (nodes int, r sim.Result, err error) {
	const half = squareSide / 2
	corner := r2.Vec{X: half, Y: half}
	outline := []r2.Vec{{X: -half, Y: -half}, {X: half, Y: -half}, corner, {X: -half, Y: half}}
	l, err := lattice.Cut(outline, lattice.Options{Spacing: squareSide / float64(side-1), Origin: corner})
	if err != nil {
		return 0, r, err
	}
	sc := &sim.System{Cloth: sim.NewCloth(l, s), Clock: clock}
	pos := make([]r3.Vec, len(l.Rest))
	deep := arcDepth(squareSide, squareSpan)
	for i, q := range l.Rest {
		x := q.X * squareSpan / squareSide
		pos[i] = r3.Vec{X: x, Y: q.Y, Z: deep * math.Cos(math.Pi*x/squareSpan)}
	}
	for _, x := range [2]float64{-half, half} {
		if p, ok := l.Locate(r2.Vec{X: x, Y: half}); ok {
			sc.Holds = append(sc.Holds, sim.Hold{Point: p, Only: sim.All})
		}
	}
	st := sim.NewState(sc, pos)
	for k, h := range sc.Holds {
		st.Target[k], st.Grip[k] = h.Point.At(pos), cornerGrip
	}
	return len(pos), sim.Relax(ctx, sc, st, sim.Settings{Residual: 1e-2}), nil
}

// arcDepth returns the height of half a sine wave over a span that is as long
// as the cloth, by bisection, m.
func arcDepth(length, span float64) float64 {
	low, high := 0.0, length
	for range 60 {
		if mid := (low + high) / 2; arcLength(mid, span) < length {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// arcLength returns the length of half a sine wave, m, by the midpoint rule.
func arcLength(height, span float64) float64 {
	const n = 200
	sum := 0.0
	for k := range n {
		sum += math.Hypot(1, height*math.Pi/span*math.Cos(math.Pi*(float64(k)+0.5)/n)) * span / n
	}
	return sum
}
