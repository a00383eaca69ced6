package stage

import (
	"image"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// shot is one picture to take.
type shot struct {
	view View
	w, h int
}

// onPicture returns the pixel of a place in space, Y down; ok is false behind
// the eye.
func (s shot) onPicture(p r3.Vec, box r3.Box) (at r2.Vec, ok bool) {
	q, w := s.view.camera(box, s.w, s.h).apply(p)
	return r2.Vec{X: (0.5 + 0.5*q.X) * float64(s.w), Y: (0.5 - 0.5*q.Y) * float64(s.h)}, w > 0
}

// drawMarks points at each mark with a numbered disc of the accent colour. The
// discs stand in a column left of the cloth, never over it; a thin line leads
// from each to its place. The size follows the picture, within what can be read.
func drawMarks(img *image.RGBA, scene Scene, s shot) {
	look, box := scene.Look.withDefaults(), Bounds(scene.places())
	k := ink{img}
	r := math.Round(min(max(float64(s.h)/65, 8), 15))
	left := float64(s.w)
	for _, p := range scene.Cloth.Pos {
		if at, ok := s.onPicture(p, box); ok {
			left = min(left, at.X)
		}
	}
	column, free := max(left-2*r, r+2), math.Inf(-1)
	for _, m := range scene.Marks {
		at, ok := s.onPicture(m.At, box)
		if !ok {
			continue
		}
		disc := r2.Vec{X: column, Y: max(at.Y, free)}
		free = disc.Y + 2.4*r
		k.stroke([]r2.Vec{disc, at}, 1.2, look.Accent)
		k.dot(at, 3.5, look.Background)
		k.dot(at, 2.5, look.Accent)
		badge(k, disc, r, strconv.Itoa(m.Number), look)
	}
}

// badge is the sign of a counted fold, the same in pictures and sections.
func badge(k ink, at r2.Vec, r float64, label string, look Look) {
	k.dot(at, r+1.5, look.Background)
	k.dot(at, r, look.Accent)
	l := lettering{bold: true, size: math.Round(1.35 * r)}
	k.words(label, r2.Vec{X: at.X, Y: at.Y + 0.36*l.size}, l, 0.5, look.Background)
}
