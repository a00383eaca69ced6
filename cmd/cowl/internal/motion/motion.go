// Package motion makes moving pictures of still ones. Start at GIF.
package motion

import (
	"bytes"
	"image"
	"image/gif"
)

// GIF makes an endless GIF of pictures of one size, each shown for delay
// hundredths of a second, all in one palette, in which shades are dithered:
// 256 colours would else lie in bands on cloth.
func GIF(pictures []*image.RGBA, delay int) ([]byte, error) {
	p := paletteOf(pictures, 256)
	painted := map[*image.RGBA]*image.Paletted{}
	g := &gif.GIF{LoopCount: 0}
	for _, img := range pictures {
		if painted[img] == nil {
			painted[img] = p.paint(img)
		}
		g.Image = append(g.Image, painted[img])
		g.Delay = append(g.Delay, delay)
	}
	var b bytes.Buffer
	err := gif.EncodeAll(&b, g)
	return b.Bytes(), err
}
