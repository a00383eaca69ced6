package window

import (
	"image/color"
	"math"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// trace is a place of the flat piece through which one warp, one weft and one line of
// the true bias are followed onto the drape.
type trace struct {
	on bool
	at r2.Vec // m
}

// traceLines are the lines that are followed, with their angle to the warp. They differ
// in lightness as well.
var traceLines = [3]struct {
	name  string
	angle float64
	ink   color.RGBA
}{
	{"warp", 0, yarnColours.Warp}, {"weft", 90 * degree, yarnColours.Weft},
	{"bias", 45 * degree, color.RGBA{0xA8, 0x2A, 0x6E, 0xFF}},
}

// footing is a place of a sheet: a triangle and the weights of its second and third corner.
type footing struct {
	tri  int
	u, v float64
}

func (f footing) flat(s *mesh.Sheet) r2.Vec {
	t := s.Tris[f.tri]
	a := s.Flat[t[0]]
	return r2.Add(a, r2.Add(r2.Scale(f.u, r2.Sub(s.Flat[t[1]], a)), r2.Scale(f.v, r2.Sub(s.Flat[t[2]], a))))
}

func (f footing) at(s *mesh.Sheet) r3.Vec {
	t := s.Tris[f.tri]
	a := s.Pos[t[0]]
	return r3.Add(a, r3.Add(r3.Scale(f.u, r3.Sub(s.Pos[t[1]], a)), r3.Scale(f.v, r3.Sub(s.Pos[t[2]], a))))
}

// foot finds a place of the flat piece on the sheet, first in the triangle of a place
// next to it; false off the cloth.
func foot(s *mesh.Sheet, q r2.Vec, guess int) (footing, bool) {
	if guess < len(s.Tris) {
		if f, ok := footIn(s, q, guess); ok {
			return f, true
		}
	}
	for k := range s.Tris {
		if f, ok := footIn(s, q, k); ok {
			return f, true
		}
	}
	return footing{}, false
}

func footIn(s *mesh.Sheet, q r2.Vec, k int) (footing, bool) {
	t := s.Tris[k]
	a := s.Flat[t[0]]
	e, f, d := r2.Sub(s.Flat[t[1]], a), r2.Sub(s.Flat[t[2]], a), r2.Sub(q, a)
	det := r2.Cross(e, f)
	u, v := r2.Cross(d, f)/det, r2.Cross(e, d)/det
	return footing{k, u, v}, det != 0 && u >= -1e-9 && v >= -1e-9 && u+v <= 1+1e-9
}

// How a line is followed, m: this far to either side, in such steps.
const (
	traceFar  = 1.2
	traceStep = 0.004
)

// follow returns the line through a place of the flat piece in a direction (unit), in
// runs: it breaks where there is no cloth.
func follow(s *mesh.Sheet, at, dir r2.Vec) (runs [][]footing) {
	var run []footing
	lo, hi := flatBounds(s)
	for k := -int(traceFar / traceStep); k <= int(traceFar/traceStep); k++ {
		q := r2.Add(at, r2.Scale(traceStep*float64(k), dir))
		inside := q.X >= lo.X && q.X <= hi.X && q.Y >= lo.Y && q.Y <= hi.Y
		guess := len(s.Tris)
		if len(run) > 0 {
			guess = run[len(run)-1].tri
		}
		f, ok := footing{}, false
		if inside {
			f, ok = foot(s, q, guess)
		}
		if ok {
			run = append(run, f)
		} else if run != nil {
			runs, run = append(runs, run), nil
		}
	}
	if run != nil {
		runs = append(runs, run)
	}
	return runs
}

// flatBounds returns the corners of what a sheet covers in the flat.
func flatBounds(s *mesh.Sheet) (lo, hi r2.Vec) {
	lo, hi = r2.Vec{X: math.Inf(1), Y: math.Inf(1)}, r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range s.Flat {
		lo = r2.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
		hi = r2.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
	}
	return lo, hi
}

// tracked is where the lines of a trace lie on the sheet of a pane. It holds as long as
// the sheet has the same triangles.
type tracked struct {
	at    r2.Vec
	grain float64
	shape *[3]int32
	lines [len(traceLines)][][]footing
}

// update finds the lines anew where something they depend on has changed.
func (t *tracked) update(s *mesh.Sheet, at r2.Vec, grain float64) {
	if len(s.Tris) == 0 || t.shape == &s.Tris[0] && t.at == at && t.grain == grain {
		return
	}
	*t = tracked{at: at, grain: grain, shape: &s.Tris[0]}
	for i, l := range traceLines {
		sin, cos := math.Sincos(grain + l.angle)
		t.lines[i] = follow(s, at, r2.Vec{X: sin, Y: cos})
	}
}

// ribbons are the lines as the stage draws them on the drape.
func (t *tracked) ribbons(s *mesh.Sheet) (out []stage.Line) {
	for i, runs := range t.lines {
		for _, run := range runs {
			line := stage.Line{Ink: traceLines[i].ink}
			for _, f := range run {
				line.At = append(line.At, f.at(s))
			}
			out = append(out, line)
		}
	}
	return out
}
