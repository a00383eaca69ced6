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
	for _, name := range []string{"silk-satin-memory", "silk-chiffon-memory", "denim-memory",
		"wool-winter-suiting-memory"} {
		s := dressed(t, name)
		img, err := st.Draw(s, ThreeQuarter(bodiceBox(s), 1), 240, 240)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join("testdata", name+".png")
		want := golden.Want(t, path, img)
		if mean, far := difference(img, want); mean > 1 || far > 0.01 {
			t.Errorf("picture differs from %s by %.2f on average and clearly in %.2f %% of channels, want 1 and 1 %%", path,
				mean, 100*far)
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
				t.Errorf("%s has the mean colour %.0f, %s %.0f: want them 12 apart in a channel", names[i], means[i], names[j],
					means[j])
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
		t.Errorf("the highlight is %v pixels wide with the warp along the roll and %v with it round the roll, want it "+
			"wider along", along, across)
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
