package window

import (
	"math"

	"cowl/cmd/cowl/internal/stage"

	"gonum.org/v1/gonum/spatial/r3"
)

// Orbit is an eye that goes round a target. All panes share one.
type Orbit struct {
	Target          r3.Vec  // m
	Away            float64 // m, from the target to the eye
	Azimuth, Height float64 // rad, from straight ahead to the wearer's left, and up
}

// The limits of an orbit: near enough for a fold, far enough for four forms,
// and never over the top, where left and right would change places.
const (
	nearest, furthest = 0.25, 9.0
	steepest          = 89 * math.Pi / 180
	perPixel          = 0.008 // rad a unit of mouse
	perStep           = 1.12  // of the distance, a step of the wheel
)

// View returns the eye as the stage wants it.
func (o Orbit) View() stage.View { return stage.Looking(o.Target, o.Away, o.Azimuth, o.Height) }

// Turn goes round by a move of the mouse, in units: what is dragged follows.
func (o *Orbit) Turn(dx, dy float64) {
	o.Azimuth = math.Remainder(o.Azimuth-dx*perPixel, 2*math.Pi)
	o.Height = math.Min(math.Max(o.Height+dy*perPixel, -steepest), steepest)
}

// Pan moves the target by a move of the mouse over a picture tall units high,
// so that what is under the mouse stays under it.
func (o *Orbit) Pan(dx, dy, tall float64) {
	v := o.View()
	right, up, _ := v.Axes()
	k := 2 * o.Away * math.Tan(v.FOV/2) / tall
	o.Target = r3.Add(o.Target, r3.Add(r3.Scale(-dx*k, right), r3.Scale(dy*k, up)))
	o.Target = within(o.Target, 1.5)
}

// within keeps a target from getting lost: no coordinate beyond far metres.
func within(p r3.Vec, far float64) r3.Vec {
	clamp := func(x float64) float64 { return math.Min(math.Max(x, -far), far) }
	return r3.Vec{X: clamp(p.X), Y: clamp(p.Y), Z: clamp(p.Z)}
}

// Zoom comes nearer by steps of the wheel.
func (o *Orbit) Zoom(steps float64) {
	o.Away = math.Min(math.Max(o.Away*math.Pow(perStep, -steps), nearest), furthest)
}

// Named views.
var views = []struct {
	name, help      string
	azimuth, height float64
}{
	{"Front", "From straight ahead, a little from above. Key 1.", 0, 8 * math.Pi / 180},
	{"3/4", "Three-quarter: 40° round to the wearer's left. Key 2.", 40 * math.Pi / 180, 14 * math.Pi / 180},
	{"Side", "From the wearer's left. Key 3.", math.Pi / 2, 0},
	{"Top", "From above, to look into the neckline. Key 4.", 0, 80 * math.Pi / 180},
}

// Framed returns the eye that sees all places (m) from a named view.
func Framed(places []r3.Vec, aspect float64, view int) Orbit {
	v := views[view]
	middle, away := stage.Framing(places, aspect, v.azimuth, v.height)
	return Orbit{middle, math.Min(math.Max(away, nearest), furthest), v.azimuth, v.height}
}

// Towards returns the eye at share t of the way to another, going the short
// way round.
func (o Orbit) Towards(to Orbit, t float64) Orbit {
	mix := func(a, b float64) float64 { return a + t*(b-a) }
	return Orbit{
		Target:  r3.Add(o.Target, r3.Scale(t, r3.Sub(to.Target, o.Target))),
		Away:    mix(o.Away, to.Away),
		Azimuth: math.Remainder(o.Azimuth+t*math.Remainder(to.Azimuth-o.Azimuth, 2*math.Pi), 2*math.Pi),
		Height:  mix(o.Height, to.Height),
	}
}

// firstView is the named view at the start: three-quarter.
const firstView = 1
