package window

import (
	"bytes"
	"image"
	"image/gif"
)

// The turntable: so many pictures round, each so long, no wider than that.
const (
	turnPictures = 36
	turnDelay    = 8   // hundredths of a second
	turnWide     = 640 // pixels
)

// encodeTurn makes an endless GIF, all pictures in one palette.
func encodeTurn(shots []*image.RGBA) ([]byte, error) {
	p := paletteOf(shots, 256)
	g := &gif.GIF{LoopCount: 0}
	for _, img := range shots {
		g.Image = append(g.Image, p.paint(img))
		g.Delay = append(g.Delay, turnDelay)
	}
	var b bytes.Buffer
	err := gif.EncodeAll(&b, g)
	return b.Bytes(), err
}
