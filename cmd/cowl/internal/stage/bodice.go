package stage

import (
	"image"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// belowHem is how much of the form is shown below the cloth, m.
const belowHem = 0.06

// bodice lists what the views of a sheet hold: the cloth, and the form from a
// little below the lowest cloth to its top.
func (s *Scene) bodice() []r3.Vec {
	all := append([]r3.Vec(nil), s.Cloth.Pos...)
	if s.Form == nil {
		return all
	}
	low := Bounds(s.Cloth.Pos).Min.Y - belowHem
	for _, p := range s.Form.Pos {
		if p.Y >= low {
			all = append(all, p)
		}
	}
	return all
}

// extent returns the middle of places as seen from dir, and how wide and tall
// they are on the picture, m.
func extent(places []r3.Vec, dir r3.Vec) (middle r3.Vec, wide, tall float64) {
	right, up, back := frame(dir)
	seen := make([]r3.Vec, len(places))
	for i, p := range places {
		seen[i] = r3.Vec{X: r3.Dot(p, right), Y: r3.Dot(p, up), Z: r3.Dot(p, back)}
	}
	b := Bounds(seen)
	c := r3.Scale(0.5, r3.Add(b.Min, b.Max))
	middle = r3.Add(r3.Scale(c.X, right), r3.Add(r3.Scale(c.Y, up), r3.Scale(c.Z, back)))
	return middle, b.Max.X - b.Min.X, b.Max.Y - b.Min.Y
}

// sideBySide splits field into one panel for each direction of view and frames
// the bodice in all of them from one distance, so that a centimetre is equally
// long in every panel.
func sideBySide(s Scene, field image.Rectangle, dirs []r3.Vec) ([]image.Rectangle, []shot) {
	places := s.bodice()
	middles, wides, all := make([]r3.Vec, len(dirs)), make([]float64, len(dirs)), 0.0
	for i, d := range dirs {
		middles[i], wides[i], _ = extent(places, d)
		all += wides[i]
	}
	panels := make([]image.Rectangle, len(dirs))
	left, sum, away := field.Min.X, 0.0, 0.0
	for i, d := range dirs {
		sum += wides[i]
		right := field.Min.X + int(math.Round(float64(field.Dx())*sum/all))
		panels[i] = image.Rect(left, field.Min.Y, right, field.Max.Y)
		aspect := float64(panels[i].Dx()) / float64(panels[i].Dy())
		away = max(away, distance(places, middles[i], d, aspect))
		left = right
	}
	shots := make([]shot, len(dirs))
	for i, d := range dirs {
		shots[i] = shot{from(middles[i], d, away), panels[i].Dx(), panels[i].Dy()}
	}
	return panels, shots
}
