package contact

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// bins sorts points of space into the cubes of a box, so that all points
// within one cube's side of a place are found in the 27 cubes around it. What
// it finds comes in a fixed order.
type bins struct {
	size  float64 // m, side of a cube
	lo    r3.Vec  // m, corner of the box
	n     [3]int  // cubes along each axis
	first []int32 // len = cubes + 1; first entry of each cube in ids
	ids   []int32
	at    []r3.Vec // m, points as given
}

// mostCubes bounds the memory of the box; cloth that has flown apart gets larger cubes.
const mostCubes = 1 << 21

// fill sorts the points into cubes of at least the given side (m).
func (b *bins) fill(at []r3.Vec, size float64) {
	b.at, b.size = at, size
	hi := b.box()
	for {
		d := r3.Scale(1/b.size, r3.Sub(hi, b.lo))
		b.n = [3]int{int(d.X) + 1, int(d.Y) + 1, int(d.Z) + 1}
		if (d.X+1)*(d.Y+1)*(d.Z+1) < mostCubes {
			break
		}
		b.size *= 2
	}
	cubes := b.n[0] * b.n[1] * b.n[2]
	if cap(b.first) < cubes+1 {
		b.first = make([]int32, cubes+1)
	}
	b.first = b.first[:cubes+1]
	clear(b.first)
	if cap(b.ids) < len(at) {
		b.ids = make([]int32, len(at))
	}
	b.ids = b.ids[:len(at)]
	b.sort()
}

// box sets the low corner and returns the high corner of all points.
func (b *bins) box() (hi r3.Vec) {
	b.lo, hi = b.at[0], b.at[0]
	for _, p := range b.at {
		b.lo = r3.Vec{X: math.Min(b.lo.X, p.X), Y: math.Min(b.lo.Y, p.Y), Z: math.Min(b.lo.Z, p.Z)}
		hi = r3.Vec{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y), Z: math.Max(hi.Z, p.Z)}
	}
	return hi
}

// sort is a counting sort by cube; points of a cube stay in their order.
func (b *bins) sort() {
	for _, p := range b.at {
		b.first[b.cube(p)+1]++
	}
	for c := 1; c < len(b.first); c++ {
		b.first[c] += b.first[c-1]
	}
	for i := len(b.at) - 1; i >= 0; i-- {
		c := b.cube(b.at[i])
		b.first[c+1]--
		b.ids[b.first[c+1]] = int32(i)
	}
	// Filling from behind has moved every start one cube up; first[c+1] is now
	// the start of cube c.
	copy(b.first, b.first[1:])
	b.first[len(b.first)-1] = int32(len(b.at))
}

// cube returns the number of the cube of a point inside the box.
func (b *bins) cube(p r3.Vec) int {
	i, j, k := int((p.X-b.lo.X)/b.size), int((p.Y-b.lo.Y)/b.size), int((p.Z-b.lo.Z)/b.size)
	return (k*b.n[1]+j)*b.n[0] + i
}

// near calls f with every point closer than one side to p.
func (b *bins) near(p r3.Vec, f func(id int32)) {
	b.visit(p, func(ids []int32) {
		for _, id := range ids {
			if q := b.at[id]; (p.X-q.X)*(p.X-q.X)+(p.Y-q.Y)*(p.Y-q.Y)+(p.Z-q.Z)*(p.Z-q.Z) < b.size*b.size {
				f(id)
			}
		}
	})
}

// visit calls f with the points of all cubes that reach within one side of p.
func (b *bins) visit(p r3.Vec, f func(ids []int32)) {
	d := r3.Scale(1/b.size, r3.Sub(p, b.lo))
	i0, i1 := span(d.X, b.n[0])
	j0, j1 := span(d.Y, b.n[1])
	k0, k1 := span(d.Z, b.n[2])
	for k := k0; k <= k1; k++ {
		for j := j0; j <= j1; j++ {
			row := (k*b.n[1] + j) * b.n[0]
			f(b.ids[b.first[row+i0]:b.first[row+i1+1]])
		}
	}
}

// span returns the cubes around place x of an axis of n cubes, clipped to them.
func span(x float64, n int) (lo, hi int) {
	c := int(math.Floor(x))
	return min(max(c-1, 0), n-1), min(max(c+1, 0), n-1)
}
