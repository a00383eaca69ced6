package panel

import (
	"image"
	"image/color"
	"math"
)

// List is what a panel draws: triangles in pixels, in the order drawn.
type List struct {
	Verts []float32 // 8 a vertex: x, y, place in the atlas (0..1), red, green, blue, alpha (0..1)
	Index []uint32
	Parts []Part

	scale float64
	clips []Rect
	ring  []Point // of the corners made last
}

// Part is a run of indices that is drawn inside Clip only.
type Part struct {
	Clip         image.Rectangle // pixels
	First, Count int             // of Index
}

// begin empties the list for a picture of w × h units.
func (l *List) begin(w, h, scale float64) {
	l.Verts, l.Index, l.Parts = l.Verts[:0], l.Index[:0], l.Parts[:0]
	l.scale, l.clips = scale, append(l.clips[:0], Rect{0, 0, w, h})
	l.part()
}

// Clip returns the area that is drawn to.
func (l *List) Clip() Rect { return l.clips[len(l.clips)-1] }

// Push limits drawing to r, within the present limit, until Pop.
func (l *List) Push(r Rect) {
	l.clips = append(l.clips, l.Clip().Meet(r))
	l.part()
}

// Pop undoes a Push.
func (l *List) Pop() {
	l.clips = l.clips[:len(l.clips)-1]
	l.part()
}

// part begins a new run.
func (l *List) part() {
	c, s := l.Clip(), l.scale
	px := image.Rect(int(math.Floor(c.X*s)), int(math.Floor(c.Y*s)), int(math.Ceil((c.X+c.W)*s)),
		int(math.Ceil((c.Y+c.H)*s)))
	if n := len(l.Parts); n > 0 && l.Parts[n-1].Count == 0 {
		l.Parts[n-1].Clip = px
		return
	}
	l.Parts = append(l.Parts, Part{Clip: px, First: len(l.Index)})
}

// solid is the place in the atlas that is wholly covered.
const solid = 2.0 / atlasSide

// vertex adds a vertex in pixels and returns its number.
func (l *List) vertex(x, y, u, v float64, c color.RGBA) uint32 {
	l.Verts = append(l.Verts, float32(x), float32(y), float32(u), float32(v),
		float32(c.R)/255, float32(c.G)/255, float32(c.B)/255, float32(c.A)/255)
	return uint32(len(l.Verts)/8 - 1)
}

// triangles adds indices.
func (l *List) triangles(index ...uint32) {
	l.Index = append(l.Index, index...)
	l.Parts[len(l.Parts)-1].Count += len(index)
}

// quad adds an upright rectangle in pixels with a place in the atlas.
func (l *List) quad(x0, y0, x1, y1, u0, v0, u1, v1 float64, c color.RGBA) {
	a := l.vertex(x0, y0, u0, v0, c)
	l.vertex(x1, y0, u1, v0, c)
	l.vertex(x1, y1, u1, v1, c)
	l.vertex(x0, y1, u0, v1, c)
	l.triangles(a, a+1, a+2, a, a+2, a+3)
}

// atlasSide is the side of the atlas of letters, pixels: some 4000 letters of
// a common size.
const atlasSide = 1024
