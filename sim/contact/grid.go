package contact

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// grid sorts things into cubes of space. It is filled with add, then read with
// visit or pairs; what it finds comes in a fixed order.
type grid struct {
	size    float64 // m, side of a cube
	entries []entry
	sorted  bool
}

// entry is one thing in one cube.
type entry struct {
	cube uint64
	id   int32
}

func (g *grid) clear() { g.entries, g.sorted = g.entries[:0], false }

// cell returns the cube number along one axis; 21 bits hold ±10 km at 1 cm.
func (g *grid) cell(x float64) int64 { return int64(math.Floor(x/g.size)) + 1<<20 }

// cube packs three cube numbers into one key.
func cube(i, j, k int64) uint64 { return uint64(i)<<42 | uint64(j)<<21 | uint64(k) }

// add enters thing id into every cube within reach of the box of its points.
func (g *grid) add(id int32, reach float64, pts ...r3.Vec) {
	lo, hi := pts[0], pts[0]
	for _, p := range pts[1:] {
		lo = r3.Vec{X: math.Min(lo.X, p.X), Y: math.Min(lo.Y, p.Y), Z: math.Min(lo.Z, p.Z)}
		hi = r3.Vec{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y), Z: math.Max(hi.Z, p.Z)}
	}
	i0, j0, k0 := g.cell(lo.X-reach), g.cell(lo.Y-reach), g.cell(lo.Z-reach)
	i1, j1, k1 := g.cell(hi.X+reach), g.cell(hi.Y+reach), g.cell(hi.Z+reach)
	for i := i0; i <= i1; i++ {
		for j := j0; j <= j1; j++ {
			for k := k0; k <= k1; k++ {
				g.entries = append(g.entries, entry{cube(i, j, k), id})
			}
		}
	}
}

// sort orders the entries by cube, then by thing.
func (g *grid) sort() {
	if g.sorted {
		return
	}
	slices.SortFunc(g.entries, func(a, b entry) int {
		switch {
		case a.cube < b.cube:
			return -1
		case a.cube > b.cube:
			return 1
		}
		return int(a.id - b.id)
	})
	g.sorted = true
}

// visit calls f with every thing in the cube of p.
func (g *grid) visit(p r3.Vec, f func(id int32)) {
	g.sort()
	key := cube(g.cell(p.X), g.cell(p.Y), g.cell(p.Z))
	k, _ := slices.BinarySearchFunc(g.entries, key, func(e entry, key uint64) int {
		switch {
		case e.cube < key:
			return -1
		case e.cube > key:
			return 1
		}
		return 0
	})
	for ; k < len(g.entries) && g.entries[k].cube == key; k++ {
		f(g.entries[k].id)
	}
}

// pairs calls f once with every two things that share a cube, lower one first.
func (g *grid) pairs(f func(a, b int32)) {
	g.sort()
	var both []uint64
	for lo := 0; lo < len(g.entries); {
		hi := lo
		for hi < len(g.entries) && g.entries[hi].cube == g.entries[lo].cube {
			hi++
		}
		for a := lo; a < hi; a++ {
			for b := a + 1; b < hi; b++ {
				both = append(both, uint64(g.entries[a].id)<<32|uint64(g.entries[b].id))
			}
		}
		lo = hi
	}
	slices.Sort(both)
	for _, p := range slices.Compact(both) {
		f(int32(p>>32), int32(p&0xffffffff))
	}
}
