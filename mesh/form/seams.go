package form

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"
)

// line is a polyline on the surface with its arc length.
type line struct {
	pts []r3.Vec  // m
	len []float64 // m, arc length at each point, len[0] = 0
}

// newLine measures a polyline.
func newLine(pts []r3.Vec) line {
	l := line{pts: pts, len: make([]float64, len(pts))}
	for i := 1; i < len(pts); i++ {
		l.len[i] = l.len[i-1] + r3.Norm(r3.Sub(pts[i], pts[i-1]))
	}
	return l
}

// total is the length of the line, m.
func (l line) total() float64 { return l.len[len(l.len)-1] }

// at returns the point at arc length s, held to the ends of the line.
func (l line) at(s float64) r3.Vec {
	i := sort.SearchFloat64s(l.len, s)
	if i == 0 {
		return l.pts[0]
	}
	if i == len(l.len) {
		return l.pts[i-1]
	}
	t := (s - l.len[i-1]) / (l.len[i] - l.len[i-1])
	return r3.Add(l.pts[i-1], r3.Scale(t, r3.Sub(l.pts[i], l.pts[i-1])))
}

// seams are the lines of the wearer's left half, and the middle lines.
type seams struct {
	shoulder line // neck point to tip
	side     line // underarm to hip
	waist    line // CF to side, front half
	waistRim line // side to CB, back half
	neck     line // CB to CF round the left
	cf       line // front neck point to hip
	cb       line // nape to hip
	plate    line // round the armhole plate, closed
}

// lineStep is the spacing of points along the seams, m.
const lineStep = 0.004

// drawSeams lays the seam lines on the surface; length is the shoulder length.
func drawSeams(s *shape, length float64) seams {
	return seams{
		shoulder: s.shoulderLine(length),
		side:     newLine(s.sideLine()),
		waist:    newLine(s.ringLine(0, 1)),
		waistRim: newLine(s.ringLine(0, -1)),
		neck:     newLine(s.neckHalf()),
		cf:       newLine(s.middleLine(s.at.frontLow, 1)),
		cb:       newLine(s.middleLine(s.at.nape, -1)),
		plate:    newLine(s.plateLine()),
	}
}

// shoulderLine follows the ridge from the neck point to the tip, which is where
// the given length is used up.
func (s *shape) shoulderLine(length float64) line {
	const n = 64
	var pts []r3.Vec
	end := s.tip.Y - 0.010
	for i := 0; i <= n; i++ {
		y := s.at.neck + (end-s.at.neck)*float64(i)/n
		pts = append(pts, r3.Vec{X: s.hit(r3.Vec{Y: y}, r3.Vec{X: 1}, 0.5), Y: y})
	}
	l := newLine(pts)
	tip := l.at(length)
	i := sort.SearchFloat64s(l.len, length)
	return newLine(append(pts[:min(i, n)], tip))
}

// sideLine runs down the plane Z = 0 from the underarm to the hip.
func (s *shape) sideLine() []r3.Vec {
	var pts []r3.Vec
	for _, y := range levels(s.at.underarm, s.at.hip) {
		pts = append(pts, r3.Vec{X: s.hit(r3.Vec{Y: y}, r3.Vec{X: 1}, 0.5), Y: y})
	}
	return pts
}

// middleLine runs down the front (way = 1) or back (−1) of the plane X = 0
// from height y to the hip.
func (s *shape) middleLine(y, way float64) []r3.Vec {
	var pts []r3.Vec
	for _, h := range levels(y, s.at.hip) {
		pts = append(pts, r3.Vec{Y: h, Z: way * s.hit(r3.Vec{Y: h}, r3.Vec{Z: way}, 0.5)})
	}
	return pts
}

// levels are heights from top down to bottom at about lineStep.
func levels(top, bottom float64) []float64 {
	n := int(math.Ceil((top - bottom) / lineStep))
	ys := make([]float64, n+1)
	for i := range ys {
		ys[i] = top + (bottom-top)*float64(i)/float64(n)
	}
	return ys
}

// ringLine is the left quarter of the horizontal section at height y: from CF
// to the side (way = 1) or from CB to the side (−1).
func (s *shape) ringLine(y, way float64) []r3.Vec {
	const n = 64
	var pts []r3.Vec
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / n)
		dir := r3.Vec{X: sin, Z: way * cos}
		pts = append(pts, r3.Add(r3.Vec{Y: y}, r3.Scale(s.hit(r3.Vec{Y: y}, dir, 0.6), dir)))
	}
	return pts
}

// neckHalf is the left half of the neck line, CB to CF. Seen from the front
// and from behind it is a quarter ellipse between the middle and the neck
// point, as drafted; over the ridge of the shoulder it crosses the seam there
// squarely, see overRidge.
func (s *shape) neckHalf() []r3.Vec {
	const n = 48
	xn := s.ridge.half(s.at.neck)
	var pts []r3.Vec
	for i := 0; i <= 2*n; i++ {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i-n) / n)
		low, z := s.at.frontLow, s.frontZ
		if i <= n {
			low, z = s.at.nape, s.backZ
		}
		x, y := xn*cos, s.at.neck-(s.at.neck-low)*math.Abs(sin)
		pts = append(pts, r3.Vec{X: x, Y: y, Z: z(x, y)})
	}
	return s.overRidge(pts, n)
}

// onRidge is how far before and behind the shoulder seam the neck line leaves
// its ellipse, m: nearer, the ellipse runs within the ridge.
const onRidge = 0.018

// overRidge leads a neck line, m, over the ridge: from where it lies onRidge
// behind the neck point, which is its middle point, to as far before it.
func (s *shape) overRidge(pts []r3.Vec, middle int) []r3.Vec {
	from, to := middle, middle
	for from > 1 && pts[from].Z > -onRidge {
		from--
	}
	for to < len(pts)-2 && pts[to].Z < onRidge {
		to++
	}
	span := func(first, last int, start, end r3.Vec) {
		a, b := pts[first], pts[last]
		far := r3.Norm(r3.Sub(b, a))
		for i := first + 1; i < last; i++ {
			t := float64(i-first) / float64(last-first)
			u := 1 - t
			// Cubic of Hermite, its speed at both ends the length of the chord.
			p := r3.Add(r3.Scale(u*u*(1+2*t), a), r3.Scale(t*t*(1+2*u), b))
			p = r3.Add(p, r3.Scale(far*u*u*t, start))
			pts[i] = s.settle(r3.Sub(p, r3.Scale(far*u*t*t, end)))
		}
	}
	across := r3.Vec{Z: 1}
	before, behind := r3.Unit(r3.Sub(pts[to+1], pts[to])), r3.Unit(r3.Sub(pts[from], pts[from-1]))
	span(from, middle, behind, across)
	span(middle, to, across, before)
	return pts
}

// plateInset is how far inside the edge of the shoulder plate its seam runs, m:
// on the flat, where the rounding has ended.
const plateInset = 0.010

// plateLine is the seam round the left shoulder plate: where its plane cuts the
// form without plates, drawn in by plateInset.
func (s *shape) plateLine() []r3.Vec {
	const n = 96
	mid := (s.tip.Y + s.at.underarm) / 2
	o := r3.Vec{X: s.plate.x + s.plate.slope*(mid-s.at.underarm), Y: mid}
	up := r3.Unit(r3.Vec{X: s.plate.slope, Y: 1})
	var pts []r3.Vec
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		dir := r3.Add(r3.Scale(cos, up), r3.Vec{Z: sin})
		lo, hi := 0.0, 0.3
		for range 30 {
			m := (lo + hi) / 2
			p := r3.Add(o, r3.Scale(m, dir))
			if s.raw(p.X, p.Y, p.Z, s.contour(p.Y)) < 0 {
				lo = m
			} else {
				hi = m
			}
		}
		pts = append(pts, s.settle(r3.Add(o, r3.Scale(lo-plateInset, dir))))
	}
	return pts
}
