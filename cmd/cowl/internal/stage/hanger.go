package stage

import (
	"image/color"
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// Wood is the colour of a hanger.
var Wood = color.RGBA{0xB9, 0x93, 0x68, 0xFF}

// Sizes of a hanger, m. It is drawn formInset thinner, as a form is.
const (
	armThick  = 0.0075 // radius
	wireThick = 0.0042 // radius
	armUnder  = 0.0085 // middle of the arm below the shoulder seam
	hookRise  = 0.030  // straight part of the hook
	hookRound = 0.018  // radius of its bow
)

// Hanger returns a hanger for cloth that hangs from its shoulders alone: an arm
// under each seam, given from the neck outwards (m, at least 2 points), and a
// hook between them.
func Hanger(left, right []r3.Vec) mesh.Surface {
	middle := r3.Scale(0.5, r3.Add(left[0], right[0]))
	middle.Y += 0.2 * math.Abs(left[0].X-right[0].X) // the arms go on rising to the hook
	down := r3.Vec{Y: -armUnder}
	var arms []r3.Vec
	for i := len(right) - 1; i >= 0; i-- {
		arms = append(arms, r3.Add(right[i], down))
	}
	arms = append(arms, r3.Add(middle, down))
	for _, p := range left {
		arms = append(arms, r3.Add(p, down))
	}
	var s mesh.Surface
	tube(&s, bowed(arms), armThick)
	var hook []r3.Vec
	for i := range 8 { // as close as in the bow, or the curve would loop
		hook = append(hook, r3.Add(middle, r3.Vec{Y: -armUnder + (hookRise+armUnder)*float64(i)/8}))
	}
	top := r3.Add(middle, r3.Vec{Y: hookRise})
	for i := range 13 {
		sin, cos := math.Sincos(1.2 * math.Pi * float64(i) / 12)
		hook = append(hook, r3.Add(top, r3.Vec{X: hookRound * (1 - cos), Y: hookRound * sin}))
	}
	tube(&s, bowed(hook), wireThick)
	return s
}

// bowed is a smooth curve through places: eight points to a stretch (E. Catmull,
// R. Rom, "A class of local interpolating splines", 1974). Its slopes go by the
// length of the way, so that a short stretch beside a long one does not loop.
func bowed(at []r3.Vec) []r3.Vec {
	const parts = 8
	var out []r3.Vec
	for i := 0; i+1 < len(at); i++ {
		b, c := at[i], at[i+1]
		long := r3.Norm(r3.Sub(c, b))
		start, end := r3.Scale(long, slopeAt(at, i)), r3.Scale(long, slopeAt(at, i+1))
		for k := range parts {
			t := float64(k) / parts
			u := 1 - t
			p := r3.Add(r3.Scale(u*u*(1+2*t), b), r3.Scale(t*t*(1+2*u), c))
			p = r3.Add(p, r3.Scale(u*u*t, start))
			out = append(out, r3.Sub(p, r3.Scale(u*t*t, end)))
		}
	}
	return append(out, at[len(at)-1])
}

// slopeAt is how the line through places goes on at one of them, for each metre.
func slopeAt(at []r3.Vec, i int) r3.Vec {
	before, after := at[max(i-1, 0)], at[min(i+1, len(at)-1)]
	way := r3.Norm(r3.Sub(at[i], before)) + r3.Norm(r3.Sub(after, at[i]))
	if way == 0 {
		return r3.Vec{}
	}
	return r3.Scale(1/way, r3.Sub(after, before))
}

// tube adds a tube with rounded ends round a line that runs nowhere along Z.
func tube(s *mesh.Surface, line []r3.Vec, radius float64) {
	const round = 16
	first := int32(len(s.Pos))
	ring := func(p, along r3.Vec, r, lean float64) {
		side := r3.Unit(r3.Cross(r3.Vec{Z: 1}, along))
		back := r3.Cross(along, side)
		for k := range round {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / round)
			out := r3.Add(r3.Scale(cos, side), r3.Scale(sin, back))
			s.Pos = append(s.Pos, r3.Add(p, r3.Scale(r*radius, out)))
			s.Normal = append(s.Normal, r3.Unit(r3.Add(r3.Scale(max(r, 0.01), out), r3.Scale(lean, along))))
		}
	}
	rings := 0
	cap := func(p, along r3.Vec, way float64) {
		for _, a := range []float64{0, 0.25, 0.5} {
			if way < 0 {
				a = 0.5 - a
			}
			sin, cos := math.Sincos(math.Pi * a)
			ring(r3.Add(p, r3.Scale(way*sin*radius, along)), along, max(cos, 0.001), way*sin)
			rings++
		}
	}
	last := len(line) - 1
	cap(line[0], r3.Unit(r3.Sub(line[1], line[0])), -1)
	for i := 1; i < last; i++ {
		ring(line[i], r3.Unit(r3.Sub(line[i+1], line[i-1])), 1, 0)
		rings++
	}
	cap(line[last], r3.Unit(r3.Sub(line[last], line[last-1])), 1)
	for j := range rings - 1 {
		for k := range round {
			a, b := first+int32(j*round+k), first+int32(j*round+(k+1)%round)
			s.Tris = append(s.Tris, [3]int32{a, b, a + round}, [3]int32{b, b + round, a + round})
		}
	}
}
