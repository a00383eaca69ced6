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

// shape is an area put together from polygons.
type shape [][]r2.Vec

// box is what part of a picture the shape may cover, in whole pixels.
func (z shape) box() image.Rectangle {
	lo, hi := r2.Vec{X: math.Inf(1), Y: math.Inf(1)}, r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, poly := range z {
		for _, p := range poly {
			lo, hi = r2.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}, r2.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	const far = 1 << 20 // pixels; no picture is larger
	whole := func(v float64) int { return int(min(max(v, -far), far)) }
	return image.Rect(whole(math.Floor(lo.X)), whole(math.Floor(lo.Y)), whole(math.Ceil(hi.X)), whole(math.Ceil(hi.Y)))
}

// paint covers the shape. Only the box round it is looked at: going over a whole
// picture for every line takes longer than drawing the cloth.
func (k ink) paint(z shape, c color.Color) {
	box := z.box().Intersect(k.img.Rect)
	if box.Empty() {
		return
	}
	corner := r2.Vec{X: float64(box.Min.X), Y: float64(box.Min.Y)}
	r := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, poly := range z {
		for i, p := range poly {
			p = r2.Sub(p, corner)
			if i == 0 {
				r.MoveTo(float32(p.X), float32(p.Y))
			} else {
				r.LineTo(float32(p.X), float32(p.Y))
			}
		}
		r.ClosePath()
	}
	r.Draw(k.img, box, image.NewUniform(c), image.Point{})
}

// fill covers the inside of a polygon.
func (k ink) fill(poly []r2.Vec, c color.Color) {
	k.paint(shape{poly}, c)
}

// stroke draws a polyline wide pixels across, with round joints and ends. All
// parts wind the same way, so where they overlap they count once.
func (k ink) stroke(line []r2.Vec, wide float64, c color.Color) {
	var z shape
	for i, p := range line {
		z = append(z, disc(p, wide/2))
		if i == 0 || p == line[i-1] {
			continue
		}
		q := line[i-1]
		along := r2.Scale(wide/2, r2.Unit(r2.Sub(p, q)))
		n := r2.Vec{X: -along.Y, Y: along.X}
		z = append(z, []r2.Vec{r2.Sub(q, n), r2.Sub(p, n), r2.Add(p, n), r2.Add(q, n)})
	}
	k.paint(z, c)
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
