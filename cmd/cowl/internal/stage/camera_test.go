package stage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func apart(a, b r3.Vec) float64 { return r3.Norm(r3.Sub(a, b)) }

func TestLookAt(t *testing.T) {
	eye, target := r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{X: 1, Y: 2, Z: -4}
	for _, c := range []struct {
		name    string
		m       mat4
		p, want r3.Vec
	}{
		{"eye", lookAt(eye, target), eye, r3.Vec{}},
		{"target 7 m ahead", lookAt(eye, target), target, r3.Vec{Z: -7}},
		{"wearer's left is right seen from the front", lookAt(eye, target), r3.Vec{X: 1.5, Y: 2, Z: 3}, r3.Vec{X: 0.5}},
		{"forward is left seen from the wearer's left", lookAt(r3.Vec{X: 2}, r3.Vec{}), r3.Vec{Z: 1}, r3.Vec{X: -1, Z: -2}},
		{"forward is down seen from above", lookAt(r3.Vec{Y: 2}, r3.Vec{}), r3.Vec{Z: 1}, r3.Vec{Y: 1, Z: -2}},
	} {
		if got, _ := c.m.apply(c.p); apart(got, c.want) > 1e-12 {
			t.Errorf("%s: %v goes to %v, want %v", c.name, c.p, got, c.want)
		}
	}
}

func TestProjections(t *testing.T) {
	const fov, aspect, near, far = 0.8, 1.5, 0.5, 4.0
	half := math.Tan(fov / 2)
	persp := perspective(fov, aspect, near, far)
	ortho := orthographic(r3.Vec{X: -1, Y: 2, Z: -5}, r3.Vec{X: 3, Y: 4, Z: -1})
	for _, c := range []struct {
		name    string
		m       mat4
		p, want r3.Vec
	}{
		{"near upper right", persp, r3.Vec{X: near * half * aspect, Y: near * half, Z: -near}, r3.Vec{X: 1, Y: 1, Z: -1}},
		{"far lower left", persp, r3.Vec{X: -far * half * aspect, Y: -far * half, Z: -far}, r3.Vec{X: -1, Y: -1, Z: 1}},
		{"on the axis", persp, r3.Vec{Z: -2 * far * near / (far + near)}, r3.Vec{}},
		{"box near corner", ortho, r3.Vec{X: -1, Y: 2, Z: -1}, r3.Vec{X: -1, Y: -1, Z: -1}},
		{"box far corner", ortho, r3.Vec{X: 3, Y: 4, Z: -5}, r3.Vec{X: 1, Y: 1, Z: 1}},
		{"box middle", ortho, r3.Vec{X: 1, Y: 3, Z: -3}, r3.Vec{}},
	} {
		if got, _ := c.m.apply(c.p); apart(got, c.want) > 1e-12 {
			t.Errorf("%s: %v goes to %v, want %v", c.name, c.p, got, c.want)
		}
	}
}

// drawVec draws a place within reach metres of the origin.
func drawVec(t *rapid.T, name string, reach float64) r3.Vec {
	f := rapid.Float64Range(-reach, reach)
	return r3.Vec{X: f.Draw(t, name+" x"), Y: f.Draw(t, name+" y"), Z: f.Draw(t, name+" z")}
}

func TestLookAtKeepsLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		eye, target := drawVec(t, "eye", 3), drawVec(t, "target", 3)
		if apart(eye, target) < 0.1 {
			t.Skip("eye on target")
		}
		p, q := drawVec(t, "p", 3), drawVec(t, "q", 3)
		m := lookAt(eye, target)
		a, _ := m.apply(p)
		b, _ := m.apply(q)
		if got, want := apart(a, b), apart(p, q); math.Abs(got-want) > 1e-9 {
			t.Fatalf("%v and %v are %v apart after lookAt, want %v", p, q, got, want)
		}
	})
}

func TestMulAppliesTheRightFactorFirst(t *testing.T) {
	a, b := perspective(0.7, 1.2, 0.1, 9), lookAt(r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{Y: 0.5})
	p := r3.Vec{X: 0.3, Y: -0.2, Z: 0.1}
	mid, _ := b.apply(p)
	want, wantW := a.apply(mid)
	if got, w := a.mul(b).apply(p); apart(got, want) > 1e-12 || math.Abs(w-wantW) > 1e-12 {
		t.Errorf("a.mul(b).apply(p) = %v, %v, want a.apply(b.apply(p)) = %v, %v", got, w, want, wantW)
	}
}
