package sim

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// slope is the stiffness of a strip as it hangs: by how much the forces on its free
// nodes fall as these move, a symmetric band matrix with three rows a node (N/m).
type slope struct {
	w     *Stepper
	free  []int32   // nodes, in the order of their rows: along the longer side of the piece
	row   []int32   // of a node in free, or -1; len = nodes
	feels [][]int32 // the free nodes that feel a node move; len = nodes
	apart [][]int32 // groups of free nodes, no two of which are felt by one

	of, shifted blas64.SymmetricBand
	up          []r3.Vec  // N, forces on all nodes
	out         []float64 // m
}

// reaching is how many crossings along the yarns a node is felt. Those four away feel no more
// than what twist and bend of one cell do together, which is left out: steps stay as few.
const reaching = 3

// mostEntries is how many numbers the matrix may have: it is kept twice, in 130 MB.
const mostEntries = 8_000_000

// newSlope lays out the rows; nil if the piece is so wide that they take too much room.
func newSlope(w *Stepper) *slope {
	n := len(w.state.Pos)
	k := &slope{w: w, row: make([]int32, n), feels: make([][]int32, n), up: make([]r3.Vec, n)}
	k.order()
	for i := range k.row {
		k.row[i] = -1
	}
	for r, i := range k.free {
		k.row[i] = int32(r)
	}
	band := k.neighbours()
	rows := 3 * len(k.free)
	if rows*(band+1) > mostEntries {
		return nil
	}
	k.out = make([]float64, rows)
	for _, m := range [2]*blas64.SymmetricBand{&k.of, &k.shifted} {
		*m = blas64.SymmetricBand{N: rows, K: band, Stride: band + 1, Uplo: blas.Upper, Data: make([]float64, rows*(band+1))}
	}
	return k
}

// order lists the free nodes along the longer side of the box round the flat piece.
func (k *slope) order() {
	rest := k.w.system.Cloth.Lattice.Rest
	lo, hi := rest[0], rest[0]
	for i, q := range rest {
		lo, hi = r2.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}, r2.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		if fixed := k.w.system.Fixed; fixed == nil || !fixed[i] {
			k.free = append(k.free, int32(i))
		}
	}
	along := func(i int32) float64 { return rest[i].Y }
	if hi.X-lo.X > hi.Y-lo.Y {
		along = func(i int32) float64 { return rest[i].X }
	}
	slices.SortStableFunc(k.free, func(a, b int32) int { return cmp.Compare(along(a), along(b)) })
}

// neighbours finds who feels whom, and returns how many places beside the diagonal that
// takes. Nodes whose places (u, v) along the yarns have one remainder of u + 7v by 25 are seven
// crossings from each other at least (S. Golomb, L. Welch, SIAM J. Appl. Math. 18 (1970) 302,
// from memory), so none feels two of them.
func (k *slope) neighbours() (band int) {
	at, place := map[[2]int]int32{}, make([][2]int, len(k.row))
	l := k.w.system.Cloth.Lattice
	for _, i := range k.free {
		d := r2.Scale(1/l.Spacing, r2.Sub(l.Rest[i], l.Origin))
		place[i] = [2]int{int(math.Round(r2.Dot(d, l.Warp()))), int(math.Round(r2.Dot(d, l.Weft())))}
		at[place[i]] = i
	}
	const colours = 2*reaching*reaching + 2*reaching + 1
	k.apart = make([][]int32, colours)
	for _, i := range k.free {
		u, v := place[i][0], place[i][1]
		for du := -reaching; du <= reaching; du++ {
			for dv := -reaching; dv <= reaching; dv++ {
				j, ok := at[[2]int{u + du, v + dv}]
				if !ok || max(du, -du)+max(dv, -dv) > reaching {
					continue
				}
				k.feels[i] = append(k.feels[i], j)
				band = max(band, int(3*(k.row[j]-k.row[i]))+2)
			}
		}
		c := ((u+(2*reaching+1)*v)%colours + colours) % colours
		k.apart[c] = append(k.apart[c], i)
	}
	return band
}

// read takes the matrix off central differences of the forces, where the cloth lies. They
// are those of an energy, but for rounding, of which the mean of both triangles is taken. The
// forces of the walk are in the end those on the cloth as it lies.
func (k *slope) read() {
	by := 1e-5 * k.w.system.Cloth.h
	clear(k.of.Data)
	for _, group := range k.apart {
		for axis := range 3 {
			k.shift(group, axis, by)
			k.w.unbalance()
			copy(k.up, k.w.force)
			k.shift(group, axis, -2*by)
			k.w.unbalance()
			k.shift(group, axis, by)
			for _, i := range group {
				k.column(i, axis, by)
			}
		}
	}
	k.w.unbalance()
}

// shift moves nodes along an axis, m.
func (k *slope) shift(nodes []int32, axis int, by float64) {
	d := [3]r3.Vec{{X: by}, {Y: by}, {Z: by}}[axis]
	for _, i := range nodes {
		k.w.state.Pos[i] = r3.Add(k.w.state.Pos[i], d)
	}
}

// column adds half of the column of a node, from the forces with it moved up and down.
func (k *slope) column(i int32, axis int, by float64) {
	c := int(3*k.row[i]) + axis
	for _, j := range k.feels[i] {
		d := r3.Scale(1/(4*by), r3.Sub(k.w.force[j], k.up[j]))
		for m, v := range [3]float64{d.X, d.Y, d.Z} {
			lo, hi := min(c, int(3*k.row[j])+m), max(c, int(3*k.row[j])+m)
			if k.of.Data[lo*k.of.Stride+hi-lo] += v; lo == hi {
				k.of.Data[lo*k.of.Stride] += v
			}
		}
	}
}

// solve returns how far the free nodes move under the forces on them, each of the weight w
// held back by shift·w over the mean weight besides; false if the matrix is not definite then.
// The moves are good until the next call.
func (k *slope) solve(shift float64) ([]float64, bool) {
	copy(k.shifted.Data, k.of.Data)
	c := k.w.system.Cloth
	mean := c.weight / float64(len(c.Load))
	for r := range k.out {
		k.shifted.Data[r*k.shifted.Stride] += shift * c.Load[k.free[r/3]] / mean
	}
	root, ok := lapack64.Pbtrf(k.shifted)
	if !ok {
		return nil, false
	}
	for r, i := range k.free {
		f := k.w.force[i]
		k.out[3*r], k.out[3*r+1], k.out[3*r+2] = f.X, f.Y, f.Z
	}
	lapack64.Pbtrs(root, blas64.General{Rows: len(k.out), Cols: 1, Stride: 1, Data: k.out})
	return k.out, true
}
