package stage

import (
	"bytes"
	"errors"
	"image"
	"math"
	"os"
	"strings"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// newStage skips a test where nothing can be drawn, unless COWL_REQUIRE_GL=1.
func newStage(t testing.TB) *Stage {
	t.Helper()
	st, err := New()
	if err != nil {
		if errors.Is(err, ErrNoDrawing) && os.Getenv("COWL_REQUIRE_GL") != "1" {
			t.Skipf("no OpenGL here, set COWL_REQUIRE_GL=1 to make this a failure: %v", err)
		}
		t.Fatal(err)
	}
	t.Cleanup(st.Close)
	return st
}

// card is a flat upright sheet between lo and hi, right side forward. In the
// flat piece it lies 0.5 m from the origin, through which grain lines go.
func card(lo, hi r2.Vec, z float64) mesh.Sheet {
	s := mesh.Sheet{Tris: [][3]int32{{0, 1, 2}, {0, 2, 3}}, Facing: []bool{false, false}}
	for _, p := range []r2.Vec{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}} {
		s.Flat = append(s.Flat, r2.Add(p, r2.Vec{X: 0.5, Y: 0.5}))
		s.Pos = append(s.Pos, r3.Vec{X: p.X, Y: p.Y, Z: z})
	}
	return s
}

// ahead looks at the origin from 2 m ahead; the picture is 0.4 m high there.
func ahead() View { return View{Eye: r3.Vec{Z: 2}, FOV: 2 * math.Atan(0.1)} }

// bare turns the grain lines off: none of them crosses a card.
func bare() Look { return Look{GrainStep: 1e6} }

func draw1(t *testing.T, st *Stage, s Scene, v View) *image.RGBA {
	t.Helper()
	img, err := st.Draw(s, v, 200, 200)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// light is the mean of the channels of a pixel, 0 to 255.
func light(img *image.RGBA, x, y int) float64 {
	c := img.RGBAAt(x, y)
	return (float64(c.R) + float64(c.G) + float64(c.B)) / 3
}

// A card above and to the wearer's left of the target is drawn in the upper
// right quarter and nowhere else: the picture is neither flipped nor mirrored.
func TestDrawWayUp(t *testing.T) {
	st := newStage(t)
	img := draw1(t, st, Scene{Cloth: card(r2.Vec{X: 0.05, Y: 0.05}, r2.Vec{X: 0.15, Y: 0.15}, 0), Look: bare()}, ahead())
	bg := Look{}.withDefaults().Background
	for _, c := range []struct {
		x, y  int
		cloth bool
	}{{150, 50, true}, {50, 50, false}, {50, 150, false}, {150, 150, false}, {120, 80, false}, {128, 72, true}} {
		if got := img.RGBAAt(c.x, c.y) != bg; got != c.cloth {
			t.Errorf("pixel (%d, %d) is %v, cloth %v, want %v", c.x, c.y, img.RGBAAt(c.x, c.y), got, c.cloth)
		}
	}
}

// The wrong side must be told from the right side, from the form and from the
// background by more than a shade.
func TestDrawSidesDiffer(t *testing.T) {
	st := newStage(t)
	right := card(r2.Vec{X: -0.1, Y: -0.1}, r2.Vec{X: 0.1, Y: 0.1}, 0)
	wrong := card(r2.Vec{X: -0.1, Y: -0.1}, r2.Vec{X: 0.1, Y: 0.1}, 0)
	for i := range wrong.Pos {
		wrong.Pos[i].X *= -1 // turned round
	}
	a := light(draw1(t, st, Scene{Cloth: right, Look: bare()}, ahead()), 100, 100)
	b := light(draw1(t, st, Scene{Cloth: wrong, Look: bare()}, ahead()), 100, 100)
	bg := light(draw1(t, st, Scene{Cloth: right, Look: bare()}, ahead()), 5, 5)
	if a-b < 25 || bg-a < 10 || b < 60 {
		t.Errorf("right side %v, wrong side %v, background %v, want each at least 10 and the sides 25 apart, none black", a,
			b, bg)
	}
}

// With the warp along CF the lines that cross a row of pixels are warp lines:
// as many as there are steps across the card, and darker than those of the
// weft. With the grain turned by 90° it is the other way round.
func TestDrawGrain(t *testing.T) {
	st := newStage(t)
	cloth := card(r2.Vec{X: -0.155, Y: -0.155}, r2.Vec{X: 0.155, Y: 0.155}, 0)
	for _, c := range []struct {
		name  string
		grain float64
		row   bool // the darker lines are crossed along a row
	}{{"warp along CF", 0, true}, {"warp across CF", math.Pi / 2, false}} {
		img, err := st.Draw(Scene{Cloth: cloth, Grain: c.grain, Look: Look{GrainStep: 0.02}}, ahead(), 800, 800)
		if err != nil {
			t.Fatal(err)
		}
		// 0.5 mm a pixel; off the middle of a mesh by half a step.
		rowN, rowDip := dips(func(i int) float64 { return light(img, i, 420) })
		colN, colDip := dips(func(i int) float64 { return light(img, 420, i) })
		if rowN != 15 || colN != 15 {
			t.Errorf("%s: %d lines along a row and %d along a column, want 15 over 310 mm", c.name, rowN, colN)
		}
		if (rowDip > 1.5*colDip) != c.row || (colDip > 1.5*rowDip) == c.row {
			t.Errorf("%s: lines are %v darker along the row, %v along the column", c.name, rowDip, colDip)
		}
	}
}

// dips counts the dark lines crossed between pixels 90 and 710 and returns the
// mean darkening of the darkest pixel of each.
func dips(at func(int) float64) (n int, depth float64) {
	for i := 95; i < 705; i++ {
		around := max(at(i-5), at(i+5))
		if d := around - at(i); d > 4 && at(i) < at(i-1) && at(i) <= at(i+1) {
			n++
			depth += d
		}
	}
	return n, depth / float64(max(n, 1))
}

// Two layers 2 mm apart, bare: the one in front shows no spot of shadow, from
// wherever it is seen.
func TestDrawNoAcne(t *testing.T) {
	st := newStage(t)
	cloth := card(r2.Vec{X: -0.2, Y: -0.2}, r2.Vec{X: 0.2, Y: 0.2}, 0)
	back := card(r2.Vec{X: -0.2, Y: -0.2}, r2.Vec{X: 0.2, Y: 0.2}, -0.002)
	cloth.Pos, cloth.Flat = append(cloth.Pos, back.Pos...), append(cloth.Flat, back.Flat...)
	cloth.Tris = append(cloth.Tris, [3]int32{4, 6, 5}, [3]int32{4, 7, 6})
	cloth.Facing = append(cloth.Facing, true, true)
	n := 0
	for _, azimuth := range []float64{0, 0.5, 1, 1.3, -0.5, -1} {
		v := View{Eye: r3.Vec{X: 2 * math.Sin(azimuth), Z: 2 * math.Cos(azimuth)}, FOV: 2 * math.Atan(0.03)}
		img := draw1(t, st, Scene{Cloth: cloth, Look: bare()}, v)
		lo, hi := 255.0, 0.0
		for y := 20; y < 180; y++ {
			for x := 80; x < 120; x++ {
				lo, hi, n = min(lo, light(img, x, y)), max(hi, light(img, x, y)), n+1
			}
		}
		if hi-lo > 4 || lo > 240 {
			t.Errorf("from %v rad a flat sheet is drawn from %v to %v light, want one tone", azimuth, lo, hi)
		}
	}
	if n != 6*160*40 {
		t.Errorf("looked at %d pixels", n)
	}
}

// A mark 5 cm to the left of the wearer and 5 cm up lies 25 pixels right of
// the middle and 25 above it: a thin line leads there, and its disc stands left
// of the cloth, whose left edge is at pixel 50. One behind the eye is not drawn.
func TestDrawMarks(t *testing.T) {
	st := newStage(t)
	s := Scene{Cloth: card(r2.Vec{X: -0.1, Y: -0.1}, r2.Vec{X: 0.1, Y: 0.1}, 0), Look: bare()}
	s.Marks = []Mark{{At: r3.Vec{X: 0.05, Y: 0.05}, Number: 1}, {At: r3.Vec{Z: 5}, Number: 2}}
	img := draw1(t, st, s, ahead())
	accent := Look{}.withDefaults().Accent
	beside := 0
	for y := range 200 {
		for x := range 200 {
			if img.RGBAAt(x, y) != accent {
				continue
			}
			switch {
			case x < 44 && math.Hypot(float64(x)+0.5-34, float64(y)+0.5-75) < 9:
				beside++
			case math.Abs(float64(y)+0.5-75) < 3 && x < 129:
			default:
				t.Fatalf("accent at (%d, %d), want it in the disc about (34, 75) or on the line from there to (125, 75)", x, y)
			}
		}
	}
	if beside < 80 {
		t.Errorf("%d pixels of accent in the disc, want 80 or more", beside)
	}
	for x := 55; x < 120; x++ {
		if line, cloth := min(light(img, x, 74), light(img, x, 75)), light(img, x, 85); line > cloth-20 {
			t.Fatalf("no line at x = %d: %v on cloth of %v", x, line, cloth)
		}
	}
}

func TestDrawTwiceIsTheSame(t *testing.T) {
	st := newStage(t)
	s := testScene(12)
	v := ThreeQuarter(bodiceBox(s), 1)
	a, b := draw1(t, st, s, v), draw1(t, st, s, v)
	if !bytes.Equal(a.Pix, b.Pix) {
		t.Error("two pictures of one scene differ")
	}
}

func TestDrawRefuses(t *testing.T) {
	st := newStage(t)
	good := Scene{Cloth: card(r2.Vec{}, r2.Vec{X: 0.1, Y: 0.1}, 0)}
	bad := Scene{Cloth: card(r2.Vec{}, r2.Vec{X: 0.1, Y: 0.1}, math.NaN())}
	for _, c := range []struct {
		name  string
		scene Scene
		w, h  int
		want  string
	}{
		{"NaN", bad, 10, 10, "want finite"},
		{"no cloth", Scene{}, 10, 10, "0 triangles"},
		{"no width", good, 0, 10, "0 × 10 pixels"},
		{"too large", good, 10, 1 << 20, "1048576 pixels"},
	} {
		if _, err := st.Draw(c.scene, ahead(), c.w, c.h); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: Draw gave %v, want an error with %q", c.name, err, c.want)
		}
	}
	if _, err := st.Draw(good, ahead(), 10, 10); err != nil {
		t.Errorf("after refusals Draw gave %v", err)
	}
}

var benchPicture *image.RGBA

func BenchmarkDraw(b *testing.B) {
	st := newStage(b)
	s := testScene(30)
	v := Front(bodiceBox(s), 1.6)
	for b.Loop() {
		img, err := st.Draw(s, v, 1280, 800)
		if err != nil {
			b.Fatal(err)
		}
		benchPicture = img
	}
	b.ReportMetric(float64(len(s.Cloth.Tris)), "cloth-triangles")
}
