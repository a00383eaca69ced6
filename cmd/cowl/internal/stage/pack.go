package stage

import (
	"math"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// clothParts are the attributes of a vertex of cloth, in float32.
var clothParts = []int32{3, 3, 2, 1, 3}

// clothVertices appends place, right-side normal, flat place, the value of a map
// and the way of the warp, 12 float32 a vertex, to dst[:0]; values is nil or has
// one a vertex.
func clothVertices(dst []float32, s *mesh.Sheet, normal []r3.Vec, grain float64, values []float64) []float32 {
	along := warps(s, grain)
	out := dst[:0]
	for i, p := range s.Pos {
		v := 0.0
		if i < len(values) {
			v = values[i]
		}
		out = appendVec(out, p, normal[i])
		out = append(out, float32(s.Flat[i].X), float32(s.Flat[i].Y), float32(v))
		out = appendVec(out, along[i])
	}
	return out
}

// warps returns the unit way of the warp at every vertex: the mean of those of
// the triangles about it, on which space is linear in the flat.
func warps(s *mesh.Sheet, grain float64) []r3.Vec {
	out := make([]r3.Vec, len(s.Pos))
	sin, cos := math.Sincos(grain)
	for _, t := range s.Tris {
		p, q := r2.Sub(s.Flat[t[1]], s.Flat[t[0]]), r2.Sub(s.Flat[t[2]], s.Flat[t[0]])
		warp := r2.Vec{X: sin, Y: cos}
		way := r3.Sub(r3.Scale(r2.Cross(warp, q), r3.Sub(s.Pos[t[1]], s.Pos[t[0]])),
			r3.Scale(r2.Cross(warp, p), r3.Sub(s.Pos[t[2]], s.Pos[t[0]])))
		for _, v := range t {
			out[v] = r3.Add(out[v], way)
		}
	}
	for i, w := range out {
		if l := r3.Norm(w); l > 0 {
			out[i] = r3.Scale(1/l, w)
		}
	}
	return out
}

// formVertices interleaves place and normal: 6 float32 a vertex.
func formVertices(f *mesh.Surface) []float32 {
	out := make([]float32, 0, 6*len(f.Pos))
	for i, p := range f.Pos {
		out = appendVec(out, p, f.Normal[i])
	}
	return out
}

func appendVec(out []float32, vs ...r3.Vec) []float32 {
	for _, v := range vs {
		out = append(out, float32(v.X), float32(v.Y), float32(v.Z))
	}
	return out
}

func indices(tris [][3]int32) []uint32 {
	out := make([]uint32, 0, 3*len(tris))
	for _, t := range tris {
		out = append(out, uint32(t[0]), uint32(t[1]), uint32(t[2]))
	}
	return out
}

// Cloth at rest lies within a millimetre or two of the form, and its flat
// triangles cut corners there. So the form is drawn formInset inside its true
// surface, and its seams seamInset.
const (
	formInset = 0.0025 // m
	seamInset = 0.0018 // m
)

// seamPoint is a place on a seam and which way the form faces there; without
// a form the normal is zero.
type seamPoint struct {
	at, normal r3.Vec
}

// sinkSeams returns the seams moved seamInset inward, along the normal of the
// form near by.
func sinkSeams(seams [][]r3.Vec, f *mesh.Surface) [][]seamPoint {
	out := make([][]seamPoint, len(seams))
	for i, line := range seams {
		for _, p := range line {
			s := seamPoint{at: p}
			if f != nil && len(f.Pos) > 0 {
				s.normal = normalNear(f, p)
				s.at = r3.Sub(p, r3.Scale(seamInset, s.normal))
			}
			out[i] = append(out[i], s)
		}
	}
	return out
}

// normalNear is the mean normal of the vertices about p, weighted by a bell
// over 8 mm or the way to the nearest vertex, whichever is more. The normal of
// the nearest alone would jump along a seam that runs on a ridge.
func normalNear(f *mesh.Surface, p r3.Vec) r3.Vec {
	near := math.Inf(1)
	for _, q := range f.Pos {
		near = min(near, r3.Norm2(r3.Sub(q, p)))
	}
	bell := max(near, 0.008*0.008)
	var sum r3.Vec
	for i, q := range f.Pos {
		if d := r3.Norm2(r3.Sub(q, p)); d < 9*bell {
			sum = r3.Add(sum, r3.Scale(math.Exp(-d/(2*bell)), f.Normal[i]))
		}
	}
	return r3.Unit(sum)
}

// ribbons are polylines turned into flat strips that face the eye: core OpenGL
// has no wide lines.
type ribbons struct {
	verts []float32 // places, 3 a vertex
	index []uint32  // of triangles
}

// begin empties the ribbons; their memory is used again.
func (r *ribbons) begin() *ribbons {
	r.verts, r.index = r.verts[:0], r.index[:0]
	return r
}

// add adds a line, wide m across. Towards the edge of the form it thins out, as
// a real seam does, and never stands out beyond it.
func (r *ribbons) add(eye r3.Vec, wide float64, line ...seamPoint) {
	for i, p := range line {
		along := r3.Sub(line[min(i+1, len(line)-1)].at, line[max(i-1, 0)].at)
		across := r3.Cross(along, r3.Sub(eye, p.at))
		if l := r3.Norm(across); l > 0 {
			across = r3.Scale(wide/2*turned(p, eye)/l, across)
		}
		k := uint32(len(r.verts) / 3)
		r.verts = appendVec(r.verts, r3.Add(p.at, across), r3.Sub(p.at, across))
		if i > 0 {
			r.index = append(r.index, k-2, k-1, k, k, k-1, k+1)
		}
	}
}

// addRound adds a line whose ends and sharp turns are round.
func (r *ribbons) addRound(eye r3.Vec, wide float64, line ...seamPoint) {
	r.add(eye, wide, line...)
	for i, p := range line {
		if i > 0 && i < len(line)-1 && straight(line[i-1].at, p.at, line[i+1].at) {
			continue
		}
		r.disc(eye, wide/2, p.at)
	}
}

// straight reports whether the way over b turns by less than some 25°.
func straight(a, b, c r3.Vec) bool {
	in, out := r3.Sub(b, a), r3.Sub(c, b)
	return r3.Dot(in, out) >= 0.9*r3.Norm(in)*r3.Norm(out)
}

// disc adds a disc of the radius r0 (m) that faces the eye.
func (r *ribbons) disc(eye r3.Vec, r0 float64, at r3.Vec) {
	right, up, _ := frame(r3.Sub(eye, at))
	const corners = 10
	first := uint32(len(r.verts) / 3)
	for k := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / corners)
		r.verts = appendVec(r.verts, r3.Add(at, r3.Add(r3.Scale(r0*cos, right), r3.Scale(r0*sin, up))))
		if k > 1 {
			r.index = append(r.index, first, first+uint32(k)-1, first+uint32(k))
		}
	}
}

// turned is 1 where a seam faces the eye and falls to 0 where it is seen at
// less than some 6° to the surface.
func turned(p seamPoint, eye r3.Vec) float64 {
	if p.normal == (r3.Vec{}) {
		return 1
	}
	c := r3.Dot(p.normal, r3.Unit(r3.Sub(eye, p.at)))
	return min(1, max(0, (c-0.10)/0.30))
}
