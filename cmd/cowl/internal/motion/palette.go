package motion

import (
	"image"
	"image/color"
	"slices"
)

// palette maps pictures to few colours.
type palette struct {
	colours color.Palette
	nearest map[uint16]uint8 // by bin of 5 bits a channel
}

// bin keeps 5 bits of each channel.
func bin(r, g, b uint8) uint16 { return uint16(r>>3)<<10 | uint16(g>>3)<<5 | uint16(b>>3) }

// spot is a bin of colours and how often it occurs.
type spot struct {
	at    [3]int // mean colour, 0..255
	count int
}

// paletteOf finds at most n colours for pictures by cutting the box of all
// colours in halves of equal weight (P. Heckbert, "Color image quantization for
// frame buffer display", SIGGRAPH 1982).
func paletteOf(pictures []*image.RGBA, n int) palette {
	boxes := [][]spot{spots(pictures)}
	for len(boxes) < n {
		i := widest(boxes)
		if i < 0 {
			break
		}
		a, b := halve(boxes[i])
		boxes[i] = a
		boxes = append(boxes, b)
	}
	p := palette{nearest: map[uint16]uint8{}}
	for i, box := range boxes {
		p.colours = append(p.colours, mean(box))
		for _, s := range box {
			p.nearest[bin(uint8(s.at[0]), uint8(s.at[1]), uint8(s.at[2]))] = uint8(i)
		}
	}
	return p
}

// spots counts the colours of all pictures.
func spots(pictures []*image.RGBA) []spot {
	var sum [1 << 15][4]int
	for _, img := range pictures {
		for i := 0; i+3 < len(img.Pix); i += 4 {
			s := &sum[bin(img.Pix[i], img.Pix[i+1], img.Pix[i+2])]
			s[0], s[1], s[2], s[3] = s[0]+int(img.Pix[i]), s[1]+int(img.Pix[i+1]), s[2]+int(img.Pix[i+2]), s[3]+1
		}
	}
	var out []spot
	for _, s := range sum {
		if s[3] > 0 {
			out = append(out, spot{[3]int{s[0] / s[3], s[1] / s[3], s[2] / s[3]}, s[3]})
		}
	}
	return out
}

// spread returns the channel in which a box is widest, and how wide.
func spread(box []spot) (channel, wide int) {
	for c := range 3 {
		lo, hi := 255, 0
		for _, s := range box {
			lo, hi = min(lo, s.at[c]), max(hi, s.at[c])
		}
		if hi-lo > wide {
			channel, wide = c, hi-lo
		}
	}
	return channel, wide
}

// widest returns the box that is to be halved next, −1 if none can be.
func widest(boxes [][]spot) int {
	best, at := 0, -1
	for i, b := range boxes {
		if _, w := spread(b); len(b) > 1 && w > best {
			best, at = w, i
		}
	}
	return at
}

// halve cuts a box across its widest channel in two of about equal weight.
func halve(box []spot) (a, b []spot) {
	c, _ := spread(box)
	slices.SortStableFunc(box, func(x, y spot) int { return x.at[c] - y.at[c] })
	all, sum := 0, 0
	for _, s := range box {
		all += s.count
	}
	for i, s := range box[:len(box)-1] {
		if sum += s.count; 2*sum >= all {
			return box[: i+1 : i+1], box[i+1:]
		}
	}
	return box[: len(box)-1 : len(box)-1], box[len(box)-1:]
}

// mean returns the mean colour of a box.
func mean(box []spot) color.RGBA {
	var sum [3]int
	n := 0
	for _, s := range box {
		for c := range 3 {
			sum[c] += s.at[c] * s.count
		}
		n += s.count
	}
	return color.RGBA{uint8(sum[0] / n), uint8(sum[1] / n), uint8(sum[2] / n), 0xFF}
}

// dither is the order in which the 4 × 4 pixels of a tile go over to the next
// colour (B. E. Bayer, "An optimum method for two-level rendition of
// continuous-tone pictures", ICC 1973). Unlike spread errors it stands still
// from picture to picture.
var dither = [4][4]int{{0, 8, 2, 10}, {12, 4, 14, 6}, {3, 11, 1, 9}, {15, 7, 13, 5}}

// shade is by how much of 255 dithering moves a channel, from end to end: by as
// much as the bins are wide.
const shade = 8

// paint turns a picture, of whose colours the palette was made, into few
// colours. Plain ground stays plain: what has one of them already is not moved.
func (p palette) paint(img *image.RGBA) *image.Paletted {
	out := image.NewPaletted(img.Rect, p.colours)
	for i := range out.Pix {
		c := [3]uint8(img.Pix[4*i : 4*i+3])
		k := p.index(c)
		if own := p.colours[k].(color.RGBA); c != [3]uint8{own.R, own.G, own.B} {
			x, y := i%out.Stride, i/out.Stride
			move := (2*dither[y%4][x%4] - 15) * shade / 32
			for n, v := range c {
				c[n] = uint8(min(max(int(v)+move, 0), 255))
			}
			k = p.index(c)
		}
		out.Pix[i] = k
	}
	return out
}

// index returns the colour for c: that of its bin, or for one that no picture
// had the nearest.
func (p palette) index(c [3]uint8) uint8 {
	at := bin(c[0], c[1], c[2])
	k, ok := p.nearest[at]
	if !ok {
		k = uint8(p.colours.Index(color.RGBA{c[0], c[1], c[2], 0xFF}))
		p.nearest[at] = k
	}
	return k
}
