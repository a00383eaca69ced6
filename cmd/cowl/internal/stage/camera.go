package stage

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// mat4 is a 4 × 4 matrix stored column by column, as OpenGL reads it.
type mat4 [16]float64

// mul returns a·b: b acts first.
func (a mat4) mul(b mat4) mat4 {
	var c mat4
	for col := range 4 {
		for row := range 4 {
			for k := range 4 {
				c[4*col+row] += a[4*k+row] * b[4*col+k]
			}
		}
	}
	return c
}

// apply returns the first three clip coordinates of p divided by the fourth,
// and the fourth.
func (a mat4) apply(p r3.Vec) (r3.Vec, float64) {
	x := [4]float64{p.X, p.Y, p.Z, 1}
	var y [4]float64
	for row := range 4 {
		for k := range 4 {
			y[row] += a[4*k+row] * x[k]
		}
	}
	return r3.Vec{X: y[0] / y[3], Y: y[1] / y[3], Z: y[2] / y[3]}, y[3]
}

// float32s is the matrix as a shader takes it.
func (a mat4) float32s() [16]float32 {
	var out [16]float32
	for i, v := range a {
		out[i] = float32(v)
	}
	return out
}

// frame returns the axes of an eye that looks against back: right, up and back
// are right-handed and unit. Looking straight up or down, Z takes the place of
// Y as the upward hint.
func frame(back r3.Vec) (right, up, unitBack r3.Vec) {
	unitBack = r3.Unit(back)
	hint := r3.Vec{Y: 1}
	if math.Abs(unitBack.Y) > 0.999 {
		hint = r3.Vec{Z: 1}
	}
	right = r3.Unit(r3.Cross(hint, unitBack))
	return right, r3.Cross(unitBack, right), unitBack
}

// lookAt takes the world to the frame of an eye at eye that sees target ahead
// on its -Z axis.
func lookAt(eye, target r3.Vec) mat4 {
	r, u, b := frame(r3.Sub(eye, target))
	return mat4{
		r.X, u.X, b.X, 0,
		r.Y, u.Y, b.Y, 0,
		r.Z, u.Z, b.Z, 0,
		-r3.Dot(r, eye), -r3.Dot(u, eye), -r3.Dot(b, eye), 1,
	}
}

// perspective maps the frustum of vertical angle fov (rad) between the depths
// near and far (m) to the cube from -1 to 1.
func perspective(fov, aspect, near, far float64) mat4 {
	f := 1 / math.Tan(fov/2)
	return mat4{
		f / aspect, 0, 0, 0,
		0, f, 0, 0,
		0, 0, (far + near) / (near - far), -1,
		0, 0, 2 * far * near / (near - far), 0,
	}
}

// orthographic maps the box lo to hi of eye space (m; Z is negative ahead) to
// the cube from -1 to 1.
func orthographic(lo, hi r3.Vec) mat4 {
	w, h, d := hi.X-lo.X, hi.Y-lo.Y, hi.Z-lo.Z
	return mat4{
		2 / w, 0, 0, 0,
		0, 2 / h, 0, 0,
		0, 0, -2 / d, 0,
		-(hi.X + lo.X) / w, -(hi.Y + lo.Y) / h, (hi.Z + lo.Z) / d, 1,
	}
}
