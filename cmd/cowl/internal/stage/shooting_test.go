//go:build cgo

package stage

import (
	"image"
	"testing"
)

// A picture drawn in tiles is the picture drawn at once: no seam, no shift, whatever the
// manner. The tiles are counted.
func TestTilesMakeTheWhole(t *testing.T) {
	s := testScene(12)
	eye := Front(bodiceBox(s), 1.4)
	const w, h = 2*tileSide + 90, tileSide + 50
	onStage(t, s, func(p *Painter, l *Loaded) {
		for _, m := range []Manner{{}, {Quick: true}, {Quick: true, Opacity: 0.5}} {
			shot, err := p.Shoot(l, eye, m, w, h)
			if err != nil {
				t.Error(err)
				return
			}
			n := 0
			for done := false; !done; n++ {
				before := shot.Share()
				if done, err = shot.Next(); err != nil {
					t.Error(err)
					return
				}
				if shot.Share() <= before {
					t.Errorf("tile %d: share %g after %g, want more", n, shot.Share(), before)
				}
			}
			if n != 6 || shot.Share() != 1 {
				t.Errorf("%d tiles, share %g, want 6 and all", n, shot.Share())
			}
			whole, err := newTarget(shot.times*w, shot.times*h, shot.smp)
			if err != nil {
				t.Error(err)
				return
			}
			p.PaintIn(l, eye, m, image.Rect(0, 0, shot.times*w, shot.times*h), shot.times*h)
			want, err := whole.read()
			whole.release()
			if err != nil {
				t.Error(err)
				return
			}
			if shot.times > 1 {
				want = halved(want)
			}
			if mean, far := difference(shot.Picture(), want); mean > 0.1 || far > 0.0005 {
				t.Errorf("%+v: tiles differ by %.3f on average, clearly in %.3f %% of channels", m, mean, 100*far)
			}
		}
	})
}

// halved brings 2 × 2 pixels together in one.
func halved(img *image.RGBA) *image.RGBA {
	w, h := img.Rect.Dx()/2, img.Rect.Dy()/2
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		a, b := img.Pix[2*y*img.Stride:], img.Pix[(2*y+1)*img.Stride:]
		row := out.Pix[y*out.Stride:]
		for x := range w {
			for c := range 4 {
				i := 8*x + c
				row[4*x+c] = uint8((int(a[i]) + int(a[i+4]) + int(b[i]) + int(b[i+4]) + 2) / 4)
			}
		}
	}
	return out
}
