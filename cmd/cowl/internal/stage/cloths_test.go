package stage

import (
	"image"
	"math"
	"path/filepath"
	"testing"

	"cowl/cmd/cowl/internal/golden"
	"cowl/materials"
	"cowl/mesh"
	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// dressed is the test scene in the look of a fabric of the library.
func dressed(t *testing.T, fabric string) Scene {
	t.Helper()
	f, err := materials.Find(fabric)
	if err != nil {
		t.Fatal(err)
	}
	s := testScene(24)
	s.Marks = nil
	s.Look.Own = f.Look
	return s
}

// Four cloths that a draper names without a label. They were looked at when
// they were made.
func TestClothsGolden(t *testing.T) {
	st := newStage(t)
	for _, name := range []string{"silk-satin-memory", "silk-chiffon-memory", "denim-memory", "wool-winter-suiting-memory"} {
		s := dressed(t, name)
		img, err := st.Draw(s, ThreeQuarter(bodiceBox(s), 1), 240, 240)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join("testdata", name+".png")
		want := golden.Want(t, path, img)
		if mean, far := difference(img, want); mean > 1 || far > 0.01 {
			t.Errorf("picture differs from %s by %.2f on average and clearly in %.2f %% of channels, want 1 and 1 %%", path, mean, 100*far)
		}
	}
}

// meanColour is the mean of each channel over the middle of a picture.
func meanColour(img *image.RGBA) (c [3]float64) {
	n := 0.0
	for y := 80; y < 160; y++ {
		for x := 80; x < 160; x++ {
			p := img.RGBAAt(x, y)
			for k, v := range [3]uint8{p.R, p.G, p.B} {
				c[k] += float64(v)
			}
			n++
		}
	}
	for k := range c {
		c[k] /= n
	}
	return c
}

// No two of charmeuse, chiffon and denim have a mean colour within 12 of 255 of
// each other.
func TestClothsDiffer(t *testing.T) {
	st := newStage(t)
	names := []string{"silk-satin-memory", "silk-chiffon-memory", "denim-memory"}
	var means [][3]float64
	for _, name := range names {
		s := dressed(t, name)
		img, err := st.Draw(s, Front(bodiceBox(s), 1), 240, 240)
		if err != nil {
			t.Fatal(err)
		}
		means = append(means, meanColour(img))
	}
	for i := range means {
		for j := range i {
			d := 0.0
			for k := range 3 {
				d = max(d, math.Abs(means[i][k]-means[j][k]))
			}
			if d < 12 {
				t.Errorf("%s has the mean colour %.0f, %s %.0f: want them 12 apart in a channel", names[i], means[i], names[j], means[j])
			}
		}
	}
}

// Satin shines across its float: a bolt of it with the warp upright on an
// upright roll has its highlight spread wide, one with the warp level has it
// drawn together, since the roll turns across the light either way.
func TestSatinShinesAcrossItsFloat(t *testing.T) {
	st := newStage(t)
	wide := func(grain float64) float64 {
		f, err := materials.Find("silk-satin-memory")
		if err != nil {
			t.Fatal(err)
		}
		l := bolt(t, grain)
		s := Scene{Cloth: l, FoldY: 1, Grain: grain}
		s.Look.Own = f.Look
		img, err := st.Draw(s, View{Eye: r3.Vec{Z: 2}, FOV: 2 * math.Atan(0.06)}, 200, 200)
		if err != nil {
			t.Fatal(err)
		}
		most := 0.0
		for x := range 200 {
			most = max(most, light(img, x, 100))
		}
		n := 0.0
		for x := range 200 {
			if v := light(img, x, 100); v > 0.9*most && v < 235 {
				n++
			}
		}
		return n
	}
	along, across := wide(0), wide(math.Pi/2)
	if along < 1.3*across {
		t.Errorf("the highlight is %v pixels wide with the warp along the roll and %v with it round the roll, want it wider along", along, across)
	}
}

// bolt is a sheet of 16 × 16 cm on an upright roll of 8 cm, on a lattice of 8 mm.
func bolt(t *testing.T, grain float64) mesh.Sheet {
	t.Helper()
	l, err := lattice.Cut([]r2.Vec{{X: -0.08, Y: -0.08}, {X: 0.08, Y: -0.08}, {X: 0.08, Y: 0.08}, {X: -0.08, Y: 0.08}},
		lattice.Options{Spacing: 0.008, Grain: grain})
	if err != nil {
		t.Fatal(err)
	}
	pos := make([]r3.Vec, len(l.Rest))
	for i, q := range l.Rest {
		sin, cos := math.Sincos(q.X / 0.08)
		pos[i] = r3.Vec{X: 0.08 * sin, Y: q.Y, Z: 0.08 * (cos - 1)}
		if math.Max(math.Abs(q.X), math.Abs(q.Y)) > 0.08 {
			pos[i].Y += 0.0005 * math.Sin(1000*q.X) // what hardly any cloth holds lies anyhow
		}
	}
	return l.Skin().Sheet(pos, 1)
}

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
				p.Smooth(l, s.smooth())
				mapped, err = p.Shot(l, hemView(), Manner{Quick: true, Fine: true, Map: &Map{Low: -1, High: 1, Ramp: even}}, 900, 900)
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
		p.Smooth(l, s.smooth())
		img, err := p.Shot(l, ahead(), Manner{Quick: true, Fine: true, Map: &Map{Low: -0.08, High: 0.08, Ramp: ramp}}, 200, 200)
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
