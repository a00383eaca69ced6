package fold

import (
	"flag"
	"math"
	"os"
	"sort"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestMain fixes the seed of the property tests, unless one is asked for.
func TestMain(m *testing.M) {
	flag.Parse()
	if f := flag.Lookup("rapid.seed"); f.Value.String() == "0" {
		if err := f.Value.Set("1"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

// strip is a rectangular test piece about CF, edge at flat y = 0.
type strip struct {
	half, length, facing float64 // m
	cell                 float64 // m, side of a square cell
	bias                 bool    // cells split in four: CF runs along the diagonals of a lattice at 45°
	cut                  *grid   // cut from a lattice that lies any way, with two spacings to spare all round
}

// grid is how a lattice lies under a piece. Cells are split in two.
type grid struct {
	grain float64 // rad, from CF to the warp
	shift r2.Vec  // m, of a crossing from the origin
}

// onLattice places the strip in space. s is the flat distance below the edge, < 0 on
// the facing.
func (p strip) onLattice(place func(x, s float64) r3.Vec) *mesh.Sheet {
	if p.cut != nil {
		return p.onGrid(place)
	}
	sh := &mesh.Sheet{}
	add := func(x, y float64) int32 {
		sh.Flat = append(sh.Flat, r2.Vec{X: x, Y: y})
		sh.Pos = append(sh.Pos, place(x, -y))
		return int32(len(sh.Flat) - 1)
	}
	nx, ny := int(math.Round(2*p.half/p.cell)), int(math.Round((p.length+p.facing)/p.cell))
	for j := range ny + 1 {
		for i := range nx + 1 {
			add(float64(i)*p.cell-p.half, p.facing-float64(j)*p.cell)
		}
	}
	for j := range ny {
		for i := range nx {
			a := int32(j*(nx+1) + i)
			b, c, d := a+1, a+int32(nx)+1, a+int32(nx)+2
			if p.bias {
				e := add((float64(i)+0.5)*p.cell-p.half, p.facing-(float64(j)+0.5)*p.cell)
				sh.Tris = append(sh.Tris, [3]int32{c, d, e}, [3]int32{d, b, e}, [3]int32{b, a, e}, [3]int32{a, c, e})
				continue
			}
			sh.Tris = append(sh.Tris, [3]int32{c, d, b}, [3]int32{c, b, a})
		}
	}
	sh.Facing = make([]bool, len(sh.Tris))
	return sh
}

// onGrid is lay for a strip that is cut from a grid.
func (p strip) onGrid(place func(x, s float64) r3.Vec) *mesh.Sheet {
	sh, ids := &mesh.Sheet{}, map[r2.Vec]int32{}
	sin, cos := math.Sincos(p.cut.grain)
	add := func(i, j int) int32 {
		u, v := p.cell*float64(i), p.cell*float64(j)
		q := r2.Add(p.cut.shift, r2.Vec{X: u*cos - v*sin, Y: u*sin + v*cos})
		if math.Abs(q.X) > p.half+2*p.cell || q.Y > p.facing+2*p.cell || q.Y < -p.length-2*p.cell {
			return -1
		}
		if _, ok := ids[q]; !ok {
			ids[q] = int32(len(sh.Flat))
			sh.Flat, sh.Pos = append(sh.Flat, q), append(sh.Pos, place(q.X, -q.Y))
		}
		return ids[q]
	}
	n := int(2 * (p.half + p.length + p.facing) / p.cell)
	for i := -n; i < n; i++ {
		for j := -n; j < n; j++ {
			a, b, c, d := add(i, j), add(i+1, j), add(i, j+1), add(i+1, j+1)
			if min(a, b, c, d) >= 0 {
				sh.Tris = append(sh.Tris, [3]int32{a, b, d}, [3]int32{a, d, c})
			}
		}
	}
	sh.Facing = make([]bool, len(sh.Tris))
	return sh
}

// frame is a wearer that suits a strip: neck points level with the edge.
func (p strip) frame() Frame {
	return Frame{
		FoldY: 0, HalfEdge: p.half, WaistY: -p.length, BustY: -10,
		NeckL: r3.Vec{X: 0.07}, NeckR: r3.Vec{X: -0.07}, FrontNeck: r3.Vec{Y: -0.08, Z: 0.05},
	}
}

// flat hangs a strip straight down.
func flat(x, s float64) r3.Vec { return r3.Vec{X: x, Y: -s} }

// sine is the curve z = −a·cos(2πt/wave), t downwards, followed by its own
// length: cloth laid on it is bent and not stretched.
type sine struct{ a, wave float64 }

// arc returns the length of the curve from 0 to t by Simpson's rule.
func (c sine) arc(t float64) float64 {
	const n = 2000
	k := 2 * math.Pi / c.wave
	f := func(u float64) float64 { return math.Hypot(1, c.a*k*math.Sin(k*u)) }
	sum := f(0) + f(t)
	for i := 1; i < n; i++ {
		sum += f(t*float64(i)/n) * float64(2+2*(i%2))
	}
	return sum * t / n / 3
}

// over returns the placing of cloth on the curve.
func (c sine) over(length float64) func(x, s float64) r3.Vec {
	const n = 4000
	k := 2 * math.Pi / c.wave
	s := make([]float64, n+1)
	dt := length / n // the curve is longer than its base, so this reaches far enough
	for i := range n {
		mid := k * (float64(i) + 0.5) * dt
		s[i+1] = s[i] + dt*math.Hypot(1, c.a*k*math.Sin(mid))
	}
	return func(x, at float64) r3.Vec {
		i := min(max(sort.SearchFloat64s(s, at), 1), n)
		t := dt * (float64(i-1) + (at-s[i-1])/(s[i]-s[i-1]))
		return r3.Vec{X: x, Y: -t, Z: -c.a * math.Cos(k*t)}
	}
}

// meander is the sine-generated curve (Langbein and Leopold, "River meanders:
// theory of minimum variance", USGS Professional Paper 422-H, 1966): its
// heading off straight down is swing·sin(2πs/wave). With swing > π/2 it
// overhangs.
type meander struct{ swing, wave float64 }

// over starts at a valley, where the heading is 0 on its way forward.
func (m meander) over(length float64) func(x, s float64) r3.Vec {
	const n = 20000
	pts := make([]r2.Vec, n+1) // z, y
	ds := length / n
	for i := range n {
		phi := m.swing * math.Sin(2*math.Pi/m.wave*(float64(i)+0.5)*ds)
		pts[i+1] = r2.Add(pts[i], r2.Vec{X: ds * math.Sin(phi), Y: -ds * math.Cos(phi)})
	}
	return func(x, s float64) r3.Vec {
		q := pts[int(math.Round(s/ds))]
		return r3.Vec{X: x, Y: q.Y, Z: q.X}
	}
}

// depth returns the distance from valley to crest: the integral of
// sin(swing·sin u) over half a turn is π·H0(swing), H0 the Struve function
// (Abramowitz and Stegun 12.1.6–12.1.7).
func (m meander) depth() float64 { return m.wave / 2 * struve0(m.swing) }

// struve0 sums Abramowitz and Stegun 12.1.4.
func struve0(x float64) float64 {
	term, sum := x, 0.0
	for k := 0; k < 30; k++ {
		sum += term
		term *= -x * x / float64((2*k+3)*(2*k+3))
	}
	return 2 / math.Pi * sum
}

func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }
