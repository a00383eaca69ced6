package fold

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// pixel is the side of a picture element of the front view.
const pixel = 2e-3 // m

// view is an orthographic picture along −Z: what someone straight in front
// sees. Each pixel keeps the nearest cloth.
type view struct {
	lo     r3.Vec // corner of the picture, m
	nx, ny int
	z      []float64 // m, len = nx·ny; −Inf where there is no cloth
	wrong  []bool    // len = nx·ny; the nearest cloth shows its wrong side
}

// wrongSide returns the area in m² of the front view that shows the wrong side
// of the cloth: the area as seen, so cloth that lies at a slant counts less
// than its own area. Only cloth hides cloth; the wearer is not in the view.
func wrongSide(s *mesh.Sheet) float64 {
	v := newView(s.Pos)
	for _, t := range s.Tris {
		v.draw(s.Pos[t[0]], s.Pos[t[1]], s.Pos[t[2]])
	}
	n := 0
	for _, w := range v.wrong {
		if w {
			n++
		}
	}
	return float64(n) * pixel * pixel
}

// newView returns an empty picture of the box around pos. Its corner is that
// of the box, so the picture moves with the cloth.
func newView(pos []r3.Vec) *view {
	lo, hi := bounds(pos)
	v := &view{lo: lo, nx: int((hi.X-lo.X)/pixel) + 1, ny: int((hi.Y-lo.Y)/pixel) + 1}
	v.z, v.wrong = make([]float64, v.nx*v.ny), make([]bool, v.nx*v.ny)
	for i := range v.z {
		v.z[i] = math.Inf(-1)
	}
	return v
}

// draw puts one triangle, counter-clockwise on the right side, into the
// picture. A triangle seen edge-on covers nothing.
func (v *view) draw(a, b, c r3.Vec) {
	// Twice the signed area in the picture: < 0 with the right side away.
	full := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	if full == 0 {
		return
	}
	i0, i1 := covered(min(a.X, b.X, c.X)-v.lo.X, max(a.X, b.X, c.X)-v.lo.X, v.nx)
	j0, j1 := covered(min(a.Y, b.Y, c.Y)-v.lo.Y, max(a.Y, b.Y, c.Y)-v.lo.Y, v.ny)
	for j := j0; j <= j1; j++ {
		y := v.lo.Y + (float64(j)+0.5)*pixel
		for i := i0; i <= i1; i++ {
			x := v.lo.X + (float64(i)+0.5)*pixel
			wb := ((x-a.X)*(c.Y-a.Y) - (y-a.Y)*(c.X-a.X)) / full
			wc := ((b.X-a.X)*(y-a.Y) - (b.Y-a.Y)*(x-a.X)) / full
			if min(wb, wc, 1-wb-wc) < -same { // on a shared side both draw
				continue
			}
			z := a.Z + wb*(b.Z-a.Z) + wc*(c.Z-a.Z)
			if k := j*v.nx + i; z > v.z[k] {
				v.z[k], v.wrong[k] = z, full < 0
			}
		}
	}
}

// covered returns the first and last of n pixels whose centre may lie between
// lo and hi, metres from the corner; first > last if there is none.
func covered(lo, hi float64, n int) (first, last int) {
	first, last = int(math.Floor(lo/pixel-0.5)), int(math.Ceil(hi/pixel-0.5))
	return max(first, 0), min(last, n-1)
}
