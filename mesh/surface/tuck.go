package surface

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// How the end of the facing is tucked in: so far inside the edge of the front,
// m, where its mirror image in the flat lies so near that edge, in spacings, by
// so many spacings at most, and the cloth so many spacings around goes along.
const (
	inside  = 0.0008
	mirrors = 0.25
	moved   = 0.9
	around  = 1
)

// hem is an edge of the outline of the front.
type hem struct {
	a, b int32
	in   r2.Vec // unit, from it into the cloth
}

// tuck draws the end of the facing under the edge of the front on which it lies
// folded over: it is caught in the shoulder seam. On the lattice both are pinned
// along the seam, each on its own, and the facing, which lies nearer to the
// form, peeps out by some millimetres.
func (b *base) tuck(g network) {
	list, over := b.overlaid(g)
	ends := make([]int32, len(list))
	for k, h := range over {
		ends[k] = h.a
	}
	shift := map[int32]r3.Vec{}
	for k, s := range b.slopes(ends, b.all()) {
		v, in := list[k], s.along(over[k].in)
		off := r3.Sub(b.pos[v], mix(b.pos[over[k].a], b.pos[over[k].b], over[k].share))
		if r3.Norm(in) == 0 || r3.Norm(off) > b.flat[v].Y-b.foldY {
			continue // it is not folded over
		}
		in = r3.Unit(in)
		if out := inside - r3.Dot(off, in); out > 0 && out < moved*b.spacing {
			shift[v] = r3.Scale(out, in)
		}
	}
	b.goAlong(list, shift)
}

// goAlong moves the vertices listed that have a shift, and the facing around
// them the less the farther away it is.
func (b *base) goAlong(list []int32, shift map[int32]r3.Vec) {
	reach := around * b.spacing
	for v := range int32(len(b.pos)) {
		if b.side[v] <= 0 {
			continue
		}
		least, at := reach, int32(-1)
		for _, w := range list {
			if d := r2.Norm(r2.Sub(b.flat[v], b.flat[w])); d < least {
				least, at = d, w
			}
		}
		if at >= 0 {
			b.pos[v] = r3.Add(b.pos[v], r3.Scale(1-least/reach, shift[at]))
		}
	}
}

// seam is a place on the edge of the front.
type seam struct {
	hem
	share float64 // how far from a to b
}

// overlaid lists the vertices of the outline of the facing whose mirror image
// lies on the edge of the front, and where.
func (b *base) overlaid(g network) (list []int32, over []seam) {
	hems := b.hems(g)
	for v := range int32(len(b.pos)) {
		if b.side[v] <= 0 || len(g.beside[v]) == 0 || b.flat[v].Y-b.foldY < b.spacing/2 {
			continue
		}
		if at, ok := b.nearest(hems, r2.Vec{X: b.flat[v].X, Y: 2*b.foldY - b.flat[v].Y}); ok {
			list, over = append(list, v), append(over, at)
		}
	}
	return list, over
}

// hems lists the edges of the outline of the front.
func (b *base) hems(g network) []hem {
	var out []hem
	for k, t := range b.tris {
		for i := range 3 {
			v, w := t[i], t[(i+1)%3]
			if b.facing[k] || g.folds(v, w) || !g.joined(v, w) {
				continue
			}
			d := r2.Sub(b.flat[w], b.flat[v])
			if r2.Norm2(d) > 0 { // triangles run counter-clockwise
				out = append(out, hem{v, w, r2.Unit(r2.Vec{X: -d.Y, Y: d.X})})
			}
		}
	}
	return out
}

// joined reports whether the edge from v to w is of the network.
func (n network) joined(v, w int32) bool {
	for _, x := range n.beside[v] {
		if x == w {
			return true
		}
	}
	return false
}

// nearest returns the place on the edges nearest to the flat place q; false if
// none lies near.
func (b *base) nearest(hems []hem, q r2.Vec) (at seam, ok bool) {
	least := mirrors * mirrors * b.spacing * b.spacing
	for _, h := range hems {
		d := r2.Sub(b.flat[h.b], b.flat[h.a])
		t := min(max(r2.Dot(r2.Sub(q, b.flat[h.a]), d)/r2.Norm2(d), 0), 1)
		if far := r2.Norm2(r2.Sub(q, r2.Add(b.flat[h.a], r2.Scale(t, d)))); far < least {
			least, at, ok = far, seam{h, t}, true
		}
	}
	return at, ok
}
