package stage

import (
	"image"
	"image/color"
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
	"gonum.org/v1/gonum/spatial/r2"
)

// ink draws smooth lines, areas and words on a picture; places are in pixels,
// Y down, and count from the corner of the whole picture where img is a part
// of one. Nothing is drawn outside img.
type ink struct {
	img *image.RGBA
}

// rasterizer covers img; its own corner is (0, 0), so that shapes are moved.
func (k ink) rasterizer() shape {
	size := k.img.Rect.Size()
	corner := r2.Vec{X: float64(k.img.Rect.Min.X), Y: float64(k.img.Rect.Min.Y)}
	return shape{vector.NewRasterizer(size.X, size.Y), corner}
}

// shape is an area being put together from polygons.
type shape struct {
	*vector.Rasterizer
	corner r2.Vec
}

func (z shape) add(poly []r2.Vec) {
	for i, p := range poly {
		p = r2.Sub(p, z.corner)
		if i == 0 {
			z.MoveTo(float32(p.X), float32(p.Y))
		} else {
			z.LineTo(float32(p.X), float32(p.Y))
		}
	}
	z.ClosePath()
}

// fill covers the inside of a polygon.
func (k ink) fill(poly []r2.Vec, c color.Color) {
	z := k.rasterizer()
	z.add(poly)
	z.Draw(k.img, k.img.Rect, image.NewUniform(c), image.Point{})
}

// stroke draws a polyline wide pixels across, with round joints and ends. All
// parts wind the same way, so where they overlap they count once.
func (k ink) stroke(line []r2.Vec, wide float64, c color.Color) {
	z := k.rasterizer()
	for i, p := range line {
		z.add(disc(p, wide/2))
		if i == 0 || p == line[i-1] {
			continue
		}
		q := line[i-1]
		along := r2.Scale(wide/2, r2.Unit(r2.Sub(p, q)))
		n := r2.Vec{X: -along.Y, Y: along.X}
		z.add([]r2.Vec{r2.Sub(q, n), r2.Sub(p, n), r2.Add(p, n), r2.Add(q, n)})
	}
	z.Draw(k.img, k.img.Rect, image.NewUniform(c), image.Point{})
}

// dot draws a disc of the radius r pixels.
func (k ink) dot(at r2.Vec, r float64, c color.Color) { k.fill(disc(at, r), c) }

func disc(at r2.Vec, r float64) []r2.Vec {
	n := max(12, int(4*r))
	poly := make([]r2.Vec, n)
	for i := range poly {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		poly[i] = r2.Vec{X: at.X + r*cos, Y: at.Y + r*sin}
	}
	return poly
}

// lettering is a font at a size in pixels.
type lettering struct {
	bold bool
	size float64
}

var faces = struct {
	sync.Mutex
	made map[lettering]font.Face
}{made: map[lettering]font.Face{}}

// face panics where the fonts of the Go project cannot be read: they are part
// of the binary. The caller holds faces.
func (l lettering) face() font.Face {
	if f, ok := faces.made[l]; ok {
		return f
	}
	ttf := goregular.TTF
	if l.bold {
		ttf = gobold.TTF
	}
	parsed, err := opentype.Parse(ttf)
	if err != nil {
		panic("stage: " + err.Error())
	}
	f, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: l.size, DPI: 72, Hinting: font.HintingVertical})
	if err != nil {
		panic("stage: " + err.Error())
	}
	faces.made[l] = f
	return f
}

// words writes s with its base line at at.Y; align 0 starts at at.X, 0.5
// centres there, 1 ends there.
func (k ink) words(s string, at r2.Vec, l lettering, align float64, c color.Color) {
	faces.Lock()
	defer faces.Unlock()
	f := l.face()
	d := font.Drawer{Dst: k.img, Src: image.NewUniform(c), Face: f}
	wide := float64(d.MeasureString(s)) / 64
	d.Dot = fixed.Point26_6{X: fixed.Int26_6(math.Round(64 * (at.X - align*wide))), Y: fixed.I(int(math.Round(at.Y)))}
	d.DrawString(s)
}

// width returns the length of s in pixels.
func (l lettering) width(s string) float64 {
	faces.Lock()
	defer faces.Unlock()
	return float64(font.MeasureString(l.face(), s)) / 64
}
