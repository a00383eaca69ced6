package stage

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The test scene is made up of formulas: a closed, torso-like form and a sheet
// that hangs over it in swags, with a facing folded in at the neckline. It is
// nothing a simulation found.

// torso returns the half width and half depth (m) of the form at height y.
func torso(y float64) (a, b float64) {
	bump := func(at, wide float64) float64 { return math.Exp(-math.Pow((y-at)/wide, 2)) }
	a = 0.115 + 0.055*bump(1.27, 0.16) + 0.06*bump(0.90, 0.13)
	b = 0.085 + 0.040*bump(1.24, 0.10) + 0.03*bump(0.88, 0.13)
	if y > 1.36 { // shoulders run into the neck
		k := 1 / (1 + math.Exp((y-1.425)/0.012))
		a, b = 0.052+(a-0.052)*k, 0.055+(b-0.055)*math.Sqrt(k)
	}
	return a, b
}

// onTorso returns the place on the form at height y and angle t from straight
// ahead towards the wearer's left.
func onTorso(t, y float64) r3.Vec {
	a, b := torso(y)
	round := func(x float64) float64 { return math.Copysign(math.Pow(math.Abs(x), 0.85), x) }
	return r3.Vec{X: a * round(math.Sin(t)), Y: y, Z: b * round(math.Cos(t))}
}

const (
	formTop = 1.52
	formLow = 0.78
)

// testForm is the torso as a closed surface of rings and two caps.
func testForm() *mesh.Surface {
	const rings, around = 90, 96
	f := &mesh.Surface{}
	for j := range rings + 1 {
		y := formLow + (formTop-formLow)*float64(j)/rings
		for i := range around {
			f.Pos = append(f.Pos, onTorso(2*math.Pi*float64(i)/around, y))
		}
	}
	ring := func(j, i int) int32 { return int32(j*around + i%around) }
	for j := range rings {
		for i := range around {
			f.Tris = append(f.Tris,
				[3]int32{ring(j, i), ring(j, i+1), ring(j+1, i)},
				[3]int32{ring(j, i+1), ring(j+1, i+1), ring(j+1, i)})
		}
	}
	low, top := int32(len(f.Pos)), int32(len(f.Pos)+1)
	f.Pos = append(f.Pos, r3.Vec{Y: formLow - 0.01}, r3.Vec{Y: formTop + 0.015})
	for i := range around {
		f.Tris = append(f.Tris, [3]int32{ring(0, i+1), ring(0, i), low}, [3]int32{ring(rings, i), ring(rings, i+1), top})
	}
	s := mesh.Sheet{Pos: f.Pos, Tris: f.Tris}
	f.Normal = s.Normals()
	return f
}

// testSheet is a front of (2n+1) columns; rows below the edge are the front,
// rows above it the facing. n = 30 gives about 8000 triangles.
func testSheet(n int) mesh.Sheet {
	step := 0.21 / float64(n)
	facingRows := int(0.06 / step)
	rows := int(0.42/step) + facingRows
	s := mesh.Sheet{}
	for j := range rows + 1 {
		for i := -n; i <= n; i++ {
			f := r2.Vec{X: step * float64(i), Y: step * float64(facingRows-j)}
			s.Flat = append(s.Flat, f)
			s.Pos = append(s.Pos, hang(f))
		}
	}
	cols := 2*n + 1
	for j := range rows {
		for i := range cols - 1 {
			a := int32(j*cols + i)
			b, c, d := a+1, a+int32(cols), a+int32(cols)+1
			s.Tris = append(s.Tris, [3]int32{a, c, b}, [3]int32{b, c, d})
			s.Facing = append(s.Facing, j < facingRows, j < facingRows)
		}
	}
	return s
}

// hang lays a flat place on the form: the edge sags in the middle, swags stand
// forward and die out below the bust, the facing lies 4 mm behind.
func hang(f r2.Vec) r3.Vec {
	down, behind := -f.Y, 0.0
	if down < 0 {
		down = -down
		behind = 0.004 * math.Min(1, down/0.006)
	}
	x := f.X / 0.21
	sag := 0.11 * (1 - x*x)
	y := 1.395 - 0.10*math.Abs(x)*x*x - sag*math.Exp(-down/0.35) - 0.80*down
	t := 1.40 * x
	p := onTorso(t, y)
	swag := 0.5 - 0.5*math.Cos(2*math.Pi*(down+0.03*x*x+0.05)/0.095)
	mid := math.Exp(-math.Pow(x/0.50, 2))
	fall := math.Exp(-math.Pow(down/0.17, 2))
	out := 0.005 + mid*(0.022*fall+0.030*fall*swag) - behind
	return r3.Add(p, r3.Scale(out, r3.Unit(r3.Vec{X: math.Sin(t), Y: 0.1, Z: math.Cos(t)})))
}

// testScene marks the two crests of the swags on CF.
func testScene(n int) Scene {
	s := Scene{Cloth: testSheet(n), Form: testForm(), Grain: math.Pi / 4}
	for _, t := range []float64{0, math.Pi / 2, math.Pi, -math.Pi / 2} {
		var line []r3.Vec
		for j := range 75 {
			line = append(line, onTorso(t, formLow+(formTop-formLow)*float64(j)/74))
		}
		s.Seams = append(s.Seams, line)
	}
	for _, y := range []float64{1.05, 1.43} {
		var ring []r3.Vec
		for i := range 97 {
			ring = append(ring, onTorso(2*math.Pi*float64(i)/96, y))
		}
		s.Seams = append(s.Seams, ring)
	}
	for i, f := range testCrests() {
		s.Marks = append(s.Marks, Mark{At: hang(f), Number: i + 1})
	}
	return s
}

func testCrests() []r2.Vec { return []r2.Vec{{Y: 0}, {Y: -0.0925}, {Y: -0.1875}} }

// bodiceBox is what the views of the tests frame.
func bodiceBox(s Scene) r3.Box { return Bounds(s.Cloth.Pos) }
