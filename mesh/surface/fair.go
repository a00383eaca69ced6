package surface

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// fair moves the vertices of outline and fold line onto smooth curves. A vertex
// that the outline cuts out of a cell is held by crossings beyond it, which
// carry hardly any cloth and lie a little anyhow; one on the fold line, where it
// runs between crossings, lies on a chord across the roll.
func (b *base) fair() {
	b.was = append([]r3.Vec(nil), b.pos...)
	b.rise()
	trust := b.trust()
	g := b.network()
	for _, line := range g.lines(b) {
		b.straighten(g, line, trust)
	}
	b.give(g)
	b.tuck(g)
	for i := range b.pos {
		if b.fixed(int32(i)) {
			b.pos[i] = b.was[i]
		}
	}
}

// beside is how far from the outline crossings go along with it, in spacings.
// One hard beside it would else come to lie outside.
const beside = 0.6

// give lets the crossings close to the outline go along with its nearest vertex,
// the less the farther away they are.
func (b *base) give(g network) {
	curve := func(v int32) bool { return len(g.beside[v]) > 0 }
	for i, near := range b.rings() {
		v := int32(i)
		if curve(v) {
			continue
		}
		least, at := beside*b.spacing, int32(-1)
		for _, w := range near {
			if d := r2.Norm(r2.Sub(b.flat[w], b.flat[v])); curve(w) && b.side[w] != 0 && d < least {
				least, at = d, w
			}
		}
		if at >= 0 {
			t := 1 - least/(beside*b.spacing)
			b.pos[v] = r3.Add(b.pos[v], r3.Scale(t, r3.Sub(b.pos[at], b.was[at])))
		}
	}
}

// rise lifts the vertices of the fold line to where front and facing meet if
// both go on as they come: the mean of the two, the nearer counting more. Crossings that count as on it slide onto it.
func (b *base) rise() {
	crossing := make([]bool, len(b.pos))
	for i, f := range b.from {
		crossing[i] = f[0] == f[1]
	}
	g := b.gradients(crossing)
	for i, f := range b.from {
		if crossing[i] {
			b.pos[i] = r3.Add(b.pos[i], r3.Scale(b.off[i], g[i].y))
			continue
		}
		var sum r3.Vec
		all := 0.0
		for _, end := range f {
			d := r2.Sub(b.flat[i], b.flat[end])
			w := 1 / r2.Norm2(d)
			sum = r3.Add(sum, r3.Scale(w, r3.Add(b.pos[end], g[end].along(d))))
			all += w
		}
		b.pos[i] = r3.Scale(1/all, sum)
	}
}

// What a vertex of the fold line is worth falls with its distance from the
// nearer crossing of its edge: by half over this part of a spacing.
const (
	halfTrust  = 0.25
	leastTrust = 0.02
)

// trust returns what the place of each vertex of a curve is worth, 0 to 1.
func (b *base) trust() []float64 {
	out := make([]float64, len(b.pos))
	for i, f := range b.from {
		out[i] = 1
		if f[0] != f[1] {
			d := min(r2.Norm(r2.Sub(b.flat[i], b.flat[f[0]])), r2.Norm(r2.Sub(b.flat[i], b.flat[f[1]])))
			out[i] = max(math.Exp2(-math.Pow(d/(halfTrust*b.spacing), 2)), leastTrust)
		}
	}
	return out
}

// straighten moves the vertices between the ends of a line onto the smooth
// curve that fits them. It goes on through the crossings of the fold line.
func (b *base) straighten(g network, line []int32, trust []float64) {
	if len(line) < 3 {
		return
	}
	s := make([]float64, len(line)) // m, along the line in the flat
	for k := 1; k < len(line); k++ {
		s[k] = s[k-1] + r2.Norm(r2.Sub(b.flat[line[k]], b.flat[line[k-1]]))
	}
	c := newCurve(s[len(s)-1], knot*b.spacing)
	passes := g.passes(line)
	for k, v := range line {
		w := trust[v] * (s[min(k+1, len(s)-1)] - s[max(k-1, 0)])
		switch {
		case k == 0 || k == len(line)-1:
			w = firm * b.spacing
		case passes && !(g.folds(line[k-1], v) && g.folds(v, line[k+1])):
			w *= leastTrust // a strip of the front a cell wide beside the clipped facing: it bears the whole drape
		}
		c.add(s[k], b.pos[v], w)
	}
	c.solve()
	b.follow(g, line, s, c)
}

const (
	knot = 1.25 // spacings between the knots of a curve: waves of less than 2.5 spacings are not the cloth's
	firm = 100  // weight of the ends of a line, in spacings
)

// follow takes the vertices of a line to the curve, and what the curve misses
// at its ends and at crossings of the fold line back in between.
func (b *base) follow(g network, line []int32, s []float64, c *curve) {
	for k := 1; k < len(line)-1; k++ {
		if d := r2.Sub(b.flat[line[k+1]], b.flat[line[k-1]]); r2.Norm2(d) > 0 {
			b.run[line[k]] = tangent{r2.Unit(d), c.slope(s[k])}
		}
	}
	kept := func(k int) bool {
		v := line[k]
		return k == 0 || k == len(line)-1 || b.from[v][0] == b.from[v][1] && g.folds(line[k-1], v) && g.folds(v, line[k+1])
	}
	miss := func(k int) r3.Vec { return r3.Sub(b.pos[line[k]], c.at(s[k])) }
	from, was := 0, miss(0)
	for k := 1; k < len(line); k++ {
		if !kept(k) {
			continue
		}
		is := miss(k)
		for m := from + 1; m < k; m++ {
			t := (s[m] - s[from]) / (s[k] - s[from])
			b.pos[line[m]] = r3.Add(c.at(s[m]), mix(was, is, t))
		}
		from, was = k, is
	}
}
