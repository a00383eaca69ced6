package stage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// Every corner of the box lies within the margin, and at least one on it: the
// frame is as tight as the margin allows.
func TestAroundIsTight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(0.05, 1.5)
		lo := drawVec(t, "corner", 1)
		box := r3.Box{Min: lo, Max: r3.Add(lo, r3.Vec{X: size.Draw(t, "w"), Y: size.Draw(t, "h"), Z: size.Draw(t, "d")})}
		azimuth := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "azimuth")
		h := rapid.IntRange(200, 2000).Draw(t, "tall")
		v := Around(box, 1000/float64(h), azimuth, rapid.Float64Range(-1.2, 1.2).Draw(t, "height"))
		reach := 0.0
		for _, c := range box.Vertices() {
			q, w := v.camera(box, 1000, h).apply(c)
			if w <= 0 || math.Abs(q.Z) > 1 {
				t.Fatalf("corner %v at depth %v (w %v), want between the planes", c, q.Z, w)
			}
			reach = max(reach, math.Abs(q.X), math.Abs(q.Y))
		}
		if math.Abs(reach-0.88) > 1e-9 {
			t.Fatalf("box %v reaches %v of the way to the edge, want 0.88", box, reach)
		}
	})
}

func TestNamedViews(t *testing.T) {
	box := r3.Box{Min: r3.Vec{X: -0.2, Y: 1, Z: -0.1}, Max: r3.Vec{X: 0.2, Y: 1.4, Z: 0.1}}
	for _, c := range []struct {
		name            string
		v               View
		left, ahead, up bool // the eye stands clearly to the wearer's left, ahead, above
	}{
		{"Front", Front(box, 1), false, true, true},
		{"ThreeQuarter", ThreeQuarter(box, 1), true, true, true},
		{"Side", Side(box, 1), true, false, false},
	} {
		d := r3.Sub(c.v.Eye, c.v.Target)
		if (d.X > 0.1) != c.left || (d.Z > 0.1) != c.ahead || (d.Y > 0.1) != c.up {
			t.Errorf("%s: eye at %v from the target, want left %v, ahead %v, above %v", c.name, d, c.left, c.ahead, c.up)
		}
	}
}
