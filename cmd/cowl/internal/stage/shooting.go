//go:build cgo

package stage

import (
	"fmt"
	"image"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// Sides of the tiles that a picture is drawn in, pixels. One of tileSide takes some tens of
// milliseconds without a GPU, and a window that draws one between two of its own
// pictures still answers. Where nobody waits for an answer tiles are as large as memory
// allows: every one goes through all triangles anew.
const (
	tileSide = 400
	atOnce   = 1000
)

// Shooting is a picture off screen that is drawn tile by tile. All its methods belong on
// the thread of the painter's context, and the scene must not move until it is done.
type Shooting struct {
	p     *Painter
	l     *Loaded
	v     View
	m     Manner
	out   *image.RGBA
	tiles []image.Rectangle // still to be drawn
	all   int
	times int // as wide and tall as it is kept
	smp   int32
}

// Shoot begins a picture of a loaded scene, w × h pixels. Where the driver has fewer
// samples a pixel than a picture is to have, it is drawn twice as wide and tall and
// brought together: without a GPU that takes no longer, and smooths highlights as well
// as rims. It fails where the picture is too large for the driver.
func (p *Painter) Shoot(l *Loaded, v View, m Manner, w, h int) (*Shooting, error) {
	return p.shoot(l, v, m, w, h, tileSide)
}

// shoot is Shoot in tiles of another side, pixels.
func (p *Painter) shoot(l *Loaded, v View, m Manner, w, h, side int) (*Shooting, error) {
	most := viewportLimit()
	if w < 1 || h < 1 || w > most || h > most {
		return nil, fmt.Errorf("stage: picture of %d × %d pixels, want 1–%d each", w, h, most)
	}
	s := &Shooting{p: p, l: l, v: v, m: m, out: image.NewRGBA(image.Rect(0, 0, w, h)), times: 1, smp: still}
	if can, _ := limits(); can < still && 2*max(w, h) <= most {
		s.times, s.smp = 2, 0
	}
	for y := 0; y < h; y += side {
		for x := 0; x < w; x += side {
			s.tiles = append(s.tiles, image.Rect(x, y, x+side, y+side).Intersect(s.out.Rect))
		}
	}
	s.all = len(s.tiles)
	return s, nil
}

// Next draws one tile, leaves the bound framebuffer bound, and reports whether it was the
// last.
func (s *Shooting) Next() (done bool, err error) {
	if len(s.tiles) == 0 {
		return true, nil
	}
	back := drawFrame()
	defer gl.BindFramebuffer(gl.FRAMEBUFFER, back)
	k, tile, whole := s.times, s.tiles[0], s.out.Rect
	t, err := newTarget(k*tile.Dx(), k*tile.Dy(), s.smp)
	if err != nil {
		return false, err
	}
	defer t.release()
	// The whole picture is aimed at, and all but the tile lies outside the target.
	part := image.Rect(-k*tile.Min.X, -k*tile.Min.Y, k*(whole.Max.X-tile.Min.X), k*(whole.Max.Y-tile.Min.Y))
	s.p.PaintIn(s.l, s.v, s.m, part, k*tile.Dy())
	img, err := t.raw()
	if err != nil {
		return false, err
	}
	lay(s.out, tile, img, k)
	s.tiles = s.tiles[1:]
	return len(s.tiles) == 0, nil
}

// Share is how much of the picture is drawn, 0 to 1.
func (s *Shooting) Share() float64 { return 1 - float64(len(s.tiles))/float64(s.all) }

// Picture is what is drawn so far.
func (s *Shooting) Picture() *image.RGBA { return s.out }

// Shot draws a picture at once, see Shoot.
func (p *Painter) Shot(l *Loaded, v View, m Manner, w, h int) (*image.RGBA, error) {
	s, err := p.shoot(l, v, m, w, h, atOnce)
	for done := false; !done && err == nil; {
		done, err = s.Next()
	}
	if err != nil {
		return nil, err
	}
	return s.out, nil
}

// viewportLimit returns how many pixels a picture may be wide and tall.
func viewportLimit() int {
	var dims [2]int32
	gl.GetIntegerv(gl.MAX_VIEWPORT_DIMS, &dims[0])
	return int(min(dims[0], dims[1]))
}

// lay puts a picture, k times as large as the part of dst and with its lowest row first,
// into that part: k × k pixels, 1 or 4, are brought together in one.
func lay(dst *image.RGBA, part image.Rectangle, img *image.RGBA, k int) {
	w, h := part.Dx(), part.Dy()
	for y := range h {
		row := dst.Pix[dst.PixOffset(part.Min.X, part.Min.Y+y):][:4*w]
		low := img.Pix[k*(h-1-y)*img.Stride:]
		if k == 1 {
			copy(row, low)
			continue
		}
		a, b := low[:8*w], low[img.Stride:][:8*w]
		for x := 0; x < 4*w; x += 4 {
			for c := range 4 {
				i := 2*x + c
				row[x+c] = uint8((int(a[i]) + int(a[i+4]) + int(b[i]) + int(b[i+4]) + 2) / 4)
			}
		}
	}
}
