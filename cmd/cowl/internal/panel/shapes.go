package panel

import (
	"image/color"
	"math"
)

// Point is a place in units.
type Point struct{ X, Y float64 }

// Fill covers r, on whole pixels.
func (l *List) Fill(r Rect, c color.RGBA) {
	s := l.scale
	x0, y0 := math.Round(r.X*s), math.Round(r.Y*s)
	x1, y1 := math.Round((r.X+r.W)*s), math.Round((r.Y+r.H)*s)
	if x1 > x0 && y1 > y0 && c.A > 0 {
		l.quad(x0, y0, x1, y1, solid, solid, solid, solid, c)
	}
}

// Rule draws a line one pixel thick along the lower edge of r.
func (l *List) Rule(r Rect, c color.RGBA) {
	l.Fill(Rect{r.X, r.Y + r.H - 1/l.scale, r.W, 1 / l.scale}, c)
}

// Round covers r with rounded corners of the radius rad, smooth at the rim.
func (l *List) Round(r Rect, rad float64, c color.RGBA) {
	l.Convex(l.corners(r, rad), c)
}

// Frame draws the rim of a rounded rectangle, wide units across, inside r.
func (l *List) Frame(r Rect, rad, wide float64, c color.RGBA) {
	r = r.Inset(wide / 2)
	ring := l.corners(r, max(rad-wide/2, 0))
	l.Stroke(append(ring, ring[0]), wide, c)
}

// corners returns the outline of a rounded rectangle, clockwise on the screen.
// It stands until corners is called again.
func (l *List) corners(r Rect, rad float64) []Point {
	rad = min(rad, r.W/2, r.H/2)
	l.ring = l.ring[:0]
	if rad <= 0 {
		l.ring = append(l.ring, Point{r.X, r.Y}, Point{r.X + r.W, r.Y}, Point{r.X + r.W, r.Y + r.H}, Point{r.X, r.Y + r.H})
		return l.ring
	}
	const steps = 5
	for k, c := range [4]Point{{r.X + r.W - rad, r.Y + rad}, {r.X + r.W - rad, r.Y + r.H - rad},
		{r.X + rad, r.Y + r.H - rad}, {r.X + rad, r.Y + rad}} {
		for i := range steps + 1 {
			sin, cos := math.Sincos(math.Pi/2*float64(i)/steps + math.Pi/2*float64(k) - math.Pi/2)
			l.ring = append(l.ring, Point{c.X + rad*cos, c.Y + rad*sin})
		}
	}
	return l.ring
}

// Disc covers a circle.
func (l *List) Disc(at Point, rad float64, c color.RGBA) {
	l.Convex(l.corners(Rect{at.X - rad, at.Y - rad, 2 * rad, 2 * rad}, rad), c)
}

// Convex covers a convex outline that runs clockwise on the screen. Its rim
// fades over one pixel.
func (l *List) Convex(ring []Point, c color.RGBA) {
	n := len(ring)
	if n < 3 || c.A == 0 {
		return
	}
	s, clear := l.scale, Faded(c, 0)
	first := uint32(len(l.Verts) / 8)
	for i, p := range ring {
		a, b := ring[(i+n-1)%n], ring[(i+1)%n]
		nx, ny := normal(a, b)
		l.vertex(p.X*s-nx/2, p.Y*s-ny/2, solid, solid, c)
		l.vertex(p.X*s+nx/2, p.Y*s+ny/2, solid, solid, clear)
	}
	for i := range uint32(n) {
		j := (i + 1) % uint32(n)
		if i > 0 && j > 0 {
			l.triangles(first, first+2*i, first+2*j)
		}
		l.triangles(first+2*i, first+2*i+1, first+2*j+1, first+2*i, first+2*j+1, first+2*j)
	}
}

// normal returns the unit normal on the left of the way from a to b as seen on
// the screen: outward for outlines that run clockwise.
func normal(a, b Point) (x, y float64) {
	dx, dy := b.X-a.X, b.Y-a.Y
	d := math.Hypot(dx, dy)
	if d == 0 {
		return 0, 0
	}
	return dy / d, -dx / d
}

// Stroke draws a polyline wide units across; its sides fade over one pixel. A
// sharp turn ends one stroke and begins another: a strip led round it would
// have no width there.
func (l *List) Stroke(line []Point, wide float64, c color.RGBA) {
	if len(line) < 2 || c.A == 0 {
		return
	}
	for i := 1; i < len(line)-1; i++ {
		if sharp(line[i-1], line[i], line[i+1]) {
			l.Stroke(line[:i+1], wide, c)
			l.Stroke(line[i:], wide, c)
			return
		}
	}
	s, half := l.scale, max(wide*l.scale, 1)/2
	clear := Faded(c, 0)
	first := uint32(len(l.Verts) / 8)
	n := len(line)
	closed := n > 2 && line[0] == line[n-1]
	for i, p := range line {
		nx, ny, k := joint(line, i, closed)
		for _, side := range []float64{-half - 0.5, -half + 0.5, half - 0.5, half + 0.5} {
			ink := c
			if math.Abs(side) > half {
				ink = clear
			}
			l.vertex(p.X*s+side*k*nx, p.Y*s+side*k*ny, solid, solid, ink)
		}
	}
	for i := range uint32(n - 1) {
		a, b := first+4*i, first+4*i+4
		for k := range uint32(3) {
			l.triangles(a+k, a+k+1, b+k+1, a+k, b+k+1, b+k)
		}
	}
}

// sharp reports whether the way from a over b to c turns by more than 120°.
func sharp(a, b, c Point) bool {
	ax, ay := normal(a, b)
	bx, by := normal(b, c)
	return ax*bx+ay*by < -0.5
}

// joint returns the direction in which a line is widened at point i, and by how
// much more than on the straight; sharp turns are not drawn out to a tip.
func joint(line []Point, i int, closed bool) (x, y, k float64) {
	n := len(line)
	a, b := line[max(i-1, 0)], line[min(i+1, n-1)]
	if closed && (i == 0 || i == n-1) {
		a, b = line[n-2], line[1]
	}
	p := line[i]
	ax, ay := normal(a, p)
	bx, by := normal(p, b)
	if a == p {
		ax, ay = bx, by
	}
	if b == p {
		bx, by = ax, ay
	}
	x, y = ax+bx, ay+by
	d := math.Hypot(x, y)
	if d < 1e-9 {
		return ax, ay, 1
	}
	return x / d, y / d, min(2/d, 2)
}

// Triangles covers triangles whose corners are numbers of at. Rims are not
// smoothed, so that neighbours join without a seam.
func (l *List) Triangles(at []Point, tris [][3]int32, c color.RGBA) {
	first := uint32(len(l.Verts) / 8)
	for _, p := range at {
		l.vertex(p.X*l.scale, p.Y*l.scale, solid, solid, c)
	}
	for _, t := range tris {
		l.triangles(first+uint32(t[0]), first+uint32(t[1]), first+uint32(t[2]))
	}
}

// Shaded covers triangles with a colour at each corner.
func (l *List) Shaded(at []Point, tris [][3]int32, inks []color.RGBA) {
	first := uint32(len(l.Verts) / 8)
	for i, p := range at {
		l.vertex(p.X*l.scale, p.Y*l.scale, solid, solid, inks[i])
	}
	for _, t := range tris {
		l.triangles(first+uint32(t[0]), first+uint32(t[1]), first+uint32(t[2]))
	}
}
