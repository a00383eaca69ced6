package stage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// View is where the eye stands. Up on the picture is up in space.
type View struct {
	Eye, Target r3.Vec  // m
	FOV         float64 // rad, angle between the upper and the lower edge of the picture
}

// longLens is the angle used by the framing helpers: from some 2 m away, as a
// garment is photographed, so that near folds are not swollen.
const longLens = 16 * math.Pi / 180

const (
	frontHeight   = 8 * math.Pi / 180
	quarterTurn   = 40 * math.Pi / 180
	quarterHeight = 14 * math.Pi / 180
)

// margin is the share of the picture left free on each side.
const margin = 0.06

// Front frames box (m) seen from straight ahead, a little from above;
// aspect is width ÷ height of the picture.
func Front(box r3.Box, aspect float64) View { return Around(box, aspect, 0, frontHeight) }

// ThreeQuarter frames box seen from ahead, 40° round to the wearer's left.
func ThreeQuarter(box r3.Box, aspect float64) View {
	return Around(box, aspect, quarterTurn, quarterHeight)
}

// Side frames box seen level from the wearer's left.
func Side(box r3.Box, aspect float64) View { return Around(box, aspect, math.Pi/2, 0) }

// Around frames box (m) with a margin of 6 % a side, seen from azimuth (rad
// from straight ahead to the wearer's left) and height angle (rad).
func Around(box r3.Box, aspect, azimuth, height float64) View {
	centre := r3.Scale(0.5, r3.Add(box.Min, box.Max))
	back := towards(azimuth, height)
	return from(centre, back, distance(box.Vertices(), centre, back, aspect))
}

// towards returns the unit direction from the target to the eye.
func towards(azimuth, height float64) r3.Vec {
	return r3.Vec{
		X: math.Sin(azimuth) * math.Cos(height),
		Y: math.Sin(height),
		Z: math.Cos(azimuth) * math.Cos(height),
	}
}

// from looks at target from away metres in the direction back.
func from(target, back r3.Vec, away float64) View {
	return View{Eye: r3.Add(target, r3.Scale(away, back)), Target: target, FOV: longLens}
}

// distance returns how far from target the eye must stand to see all places
// within the margin.
func distance(places []r3.Vec, target, dir r3.Vec, aspect float64) float64 {
	right, up, back := frame(dir)
	tan := math.Tan(longLens/2) * (1 - 2*margin)
	away := 0.0
	for _, p := range places {
		d := r3.Sub(p, target)
		wide := math.Abs(r3.Dot(d, right)) / aspect
		tall := math.Abs(r3.Dot(d, up))
		away = max(away, r3.Dot(d, back)+max(wide, tall)/tan)
	}
	return away
}

// camera returns the world-to-clip matrix for a picture w × h that holds the
// whole of box between its near and far planes.
func (v View) camera(box r3.Box, w, h int) mat4 {
	_, _, back := frame(r3.Sub(v.Eye, v.Target))
	near, far := math.Inf(1), 0.0
	for _, c := range box.Vertices() {
		depth := r3.Dot(r3.Sub(v.Eye, c), back)
		near, far = min(near, depth), max(far, depth)
	}
	near = max(near-0.01, 0.02)
	far = max(far, near) + 0.01
	return perspective(v.FOV, float64(w)/float64(h), near, far).mul(lookAt(v.Eye, v.Target))
}

// Ray returns the direction, unit, in which the eye sees the pixel (x, y), Y
// down, of a picture of w × h pixels.
func (v View) Ray(x, y, w, h float64) r3.Vec {
	right, up, back := frame(r3.Sub(v.Eye, v.Target))
	tan := math.Tan(v.FOV / 2)
	sx, sy := (2*x-w)/h*tan, (1-2*y/h)*tan
	return r3.Unit(r3.Add(r3.Scale(sx, right), r3.Sub(r3.Scale(sy, up), back)))
}

// Pixel returns where the eye sees p on a picture of w × h pixels, Y down, and
// how far ahead of the eye it lies, m; behind the eye that is not above 0.
func (v View) Pixel(p r3.Vec, w, h float64) (x, y, ahead float64) {
	right, up, back := frame(r3.Sub(v.Eye, v.Target))
	d := r3.Sub(p, v.Eye)
	ahead = -r3.Dot(d, back)
	k := h / (2 * math.Tan(v.FOV/2) * ahead)
	return w/2 + k*r3.Dot(d, right), h/2 - k*r3.Dot(d, up), ahead
}

// Looking returns the view of target (m) from away metres, seen from azimuth
// (rad from straight ahead to the wearer's left) and height angle (rad).
func Looking(target r3.Vec, away, azimuth, height float64) View {
	return from(target, towards(azimuth, height), away)
}

// Axes returns the directions right, up and towards the eye, unit, of the
// picture.
func (v View) Axes() (right, up, back r3.Vec) { return frame(r3.Sub(v.Eye, v.Target)) }

// Framing returns the middle of places (m) as they are seen from the azimuth and
// height angle (rad), and how far from it the eye must stand to see them all
// within the margin.
func Framing(places []r3.Vec, aspect, azimuth, height float64) (middle r3.Vec, away float64) {
	dir := towards(azimuth, height)
	middle, _, _ = extent(places, dir)
	return middle, distance(places, middle, dir, aspect)
}
