package stage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// A valley of which every second crossing sees the sky is evenly dark; what is even stays.
func TestSpottedSkyIsCalmed(t *testing.T) {
	s := grid([][2]float64{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {5, 0}, {6, 0}, {7, 0}}, 8)
	sky := make([]float32, 2*len(s.Pos))
	for i, q := range s.Flat {
		sky[2*i], sky[2*i+1] = float32(math.Mod(q.X+q.Y, 2)), 0.25
	}
	spread, n := 0.0, 0
	for i, v := range calmed(sky, s.Tris) {
		q := s.Flat[i/2]
		switch {
		case i%2 == 1 && v != 0.25:
			t.Errorf("vertex %d sees %g of an even sky, want 0.25", i/2, v)
		case i%2 == 0 && q.X > 1 && q.X < 6 && q.Y > 1 && q.Y < 6:
			n++
			spread = max(spread, math.Abs(float64(v)-0.5))
		}
	}
	if n != 16 || spread > 0.2 {
		t.Errorf("%d vertices of a chequered sky are off the mean by %.2f at most, want 16 and 0.2; before it was 0.5", n,
			spread)
	}
}

// The shadow of a straight edge on a card is straight, also before a form of a metre, over
// which the depth map of the key light then reaches.
func TestShadowHasNoTeeth(t *testing.T) {
	st := newStage(t)
	s := Scene{FoldY: 9, Look: bare()}
	s.Cloth = both(card(r2.Vec{X: -0.1, Y: -0.1}, r2.Vec{X: 0.1, Y: 0.1}, 0), card(r2.Vec{X: -0.3, Y: -0.05},
		r2.Vec{X: -0.04, Y: 0.3}, 0.05))
	s.Cloth = both(s.Cloth, card(r2.Vec{X: -0.01, Y: -1}, r2.Vec{X: 0.01, Y: -0.98}, 0))
	for i, p := range s.Cloth.Pos { // its edge stands at a slant to the texels
		if p.Z > 0 {
			s.Cloth.Pos[i].X += 0.13 * p.Y
		}
	}
	const across, pixel = 1200, 0.2 / 1200 // m
	eye := View{Eye: r3.Vec{X: 0.02, Z: 2}, Target: r3.Vec{X: 0.02}, FOV: 2 * math.Atan(0.05)}
	img, err := st.Draw(s, eye, across, across)
	if err != nil {
		t.Fatal(err)
	}
	var at []r2.Vec // where the light is half way from dark to bright, m
	for y := 200; y < 800; y += 3 {
		dark, bright := light(img, 350, y), light(img, 900, y)
		half := (dark + bright) / 2
		for x := 350; x < 900; x++ {
			if v, w := light(img, x, y), light(img, x+1, y); v < half && w >= half {
				at = append(at, r2.Vec{X: float64(y), Y: (float64(x) + (half-v)/(w-v)) * pixel})
				break
			}
		}
	}
	if len(at) != 200 {
		t.Fatalf("%d of 200 rows have an edge of the shadow: this test tries nothing", len(at))
	}
	if off := offLine(at); off > 0.000045 {
		t.Errorf("the edge of the shadow lies %.3f mm off a straight line in the mean, want 0.045 at most", off*1000)
	}
}

// offLine is the root mean square distance of Y of points from the line that fits them best.
func offLine(at []r2.Vec) float64 {
	var n, x, y, xx, xy float64
	for _, p := range at {
		n, x, y, xx, xy = n+1, x+p.X, y+p.Y, xx+p.X*p.X, xy+p.X*p.Y
	}
	slope := (n*xy - x*y) / (n*xx - x*x)
	sum := 0.0
	for _, p := range at {
		d := p.Y - y/n - slope*(p.X-x/n)
		sum += d * d
	}
	return math.Sqrt(sum / n)
}
