//go:build cgo

package stage

import (
	"image"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// hemView looks at the hem of a bolt, four times as large as usual.
func hemView() View {
	return View{Eye: r3.Vec{Y: -0.08, Z: 2}, Target: r3.Vec{Y: -0.08}, FOV: 2 * math.Atan(0.04)}
}

// hemTurns returns how much the hem of a bolt turns at worst from one run of 12
// pixels to the next, rad, and over how many runs, on a picture of 900 × 900 pixels.
func hemTurns(img *image.RGBA) (worst float64, n int) {
	bg := Look{}.withDefaults().Background
	hem := func(x int) float64 { // the lowest cloth, to parts of a pixel by how much of it is covered
		y := 899
		for y > 3 && img.RGBAAt(x, y) == bg {
			y--
		}
		ground, inside := (float64(bg.R)+float64(bg.G)+float64(bg.B))/3, light(img, x, y-3)
		return float64(y) + (ground-light(img, x, y))/(ground-inside)
	}
	const run = 12
	mean := func(x int) (m float64) { // of the hem over a run
		for k := range run {
			m += hem(x+k) / run
		}
		return m
	}
	for x := 90; x+3*run < 810; x += run / 2 {
		a, b, c := mean(x), mean(x+run), mean(x+2*run)
		worst = max(worst, math.Abs(math.Atan((c-b)/run)-math.Atan((b-a)/run)))
		n++
	}
	return worst, n
}

// The straight hem of cloth on a lattice of 8 mm, at every grain, drawn four
// times as large as usual, turns by less than 5° from one run of 12 pixels to
// the next; also where it shows a map.
func TestHemIsStraight(t *testing.T) {
	st := newStage(t)
	for _, grain := range []float64{0, math.Pi / 6, math.Pi / 4} {
		s := Scene{Cloth: bolt(t, grain), FoldY: 1, Grain: grain, Look: bare()}
		s.Look.Rim = s.Look.withDefaults().Cloth
		img, err := st.Draw(s, hemView(), 900, 900)
		if err != nil {
			t.Fatal(err)
		}
		var even Ramp
		for i := range even {
			even[i] = s.Look.Rim
		}
		var mapped *image.RGBA
		onStage(t, s, func(p *Painter, l *Loaded) {
			if err = p.Move(l, s.Cloth.Pos, make([]float64, len(s.Cloth.Pos))); err == nil {
				p.Smooth(l, NewFine(s.smooth()))
				mapped, err = p.Shot(l, hemView(), Manner{Quick: true, Fine: true, Map: &Map{Low: -1, High: 1, Ramp: even}}, 900,
					900)
			}
		})
		if err != nil {
			t.Fatal(err)
		}
		for name, img := range map[string]*image.RGBA{"plain": img, "map": mapped} {
			worst, n := hemTurns(img)
			if deg := worst * 180 / math.Pi; n < 100 || deg >= 5 {
				t.Errorf("grain %.2f, %s: the hem turns by %.1f° at worst over %d runs, want less than 5°", grain, name, deg, n)
			}
		}
	}
}

// The smooth surface carries the values of a map: low on the left and high on
// the right they are so on the picture.
func TestSmoothSurfaceCarriesTheMap(t *testing.T) {
	s := Scene{Cloth: bolt(t, math.Pi/4), FoldY: 1, Look: bare()}
	values := make([]float64, len(s.Cloth.Flat))
	for i, q := range s.Cloth.Flat {
		values[i] = q.X
	}
	var ramp Ramp
	for i := range ramp {
		ramp[i].R, ramp[i].B, ramp[i].A = uint8(31*i), uint8(255-31*i), 0xFF
	}
	onStage(t, s, func(p *Painter, l *Loaded) {
		if err := p.Move(l, s.Cloth.Pos, values); err != nil {
			t.Error(err)
			return
		}
		p.Smooth(l, NewFine(s.smooth()))
		img, err := p.Shot(l, ahead(), Manner{Quick: true, Fine: true, Map: &Map{Low: -0.08, High: 0.08, Ramp: ramp}}, 200,
			200)
		if err != nil {
			t.Error(err)
			return
		}
		left, right := img.RGBAAt(75, 100), img.RGBAAt(125, 100)
		if left.B < left.R+80 || right.R < right.B+80 {
			t.Errorf("the map is %v on the left and %v on the right, want blue and red", left, right)
		}
	})
}
