// Package still writes pictures as PNG files, on all cores. Start at PNG.
package still

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"hash/adler32"
	"hash/crc32"
	"image"
	"sync"

	"cowl/sim/fault"
)

// stripRows is how many rows are packed by themselves: enough that little is lost where
// packing begins anew, and few enough that many cores have some. It does not go by the
// number of cores, so equal pictures give equal bytes.
const stripRows = 64

// PNG returns a picture as a file (ISO/IEC 15948), 8 bits a channel; it is taken as
// opaque. The standard encoder packs all rows in one go; here strips of rows are packed
// side by side, each a chunk of its own, and together they are one stream as before.
func PNG(img *image.RGBA) []byte {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	strips := make([]strip, (h+stripRows-1)/stripRows)
	var wg sync.WaitGroup
	var broken fault.Carrier
	for i := range strips {
		wg.Go(func() {
			defer broken.Catch()
			strips[i] = packed(img, i*stripRows, min((i+1)*stripRows, h))
		})
	}
	wg.Wait()
	broken.Raise()
	head := make([]byte, 13)
	binary.BigEndian.PutUint32(head, uint32(w))
	binary.BigEndian.PutUint32(head[4:], uint32(h))
	head[8], head[9] = 8, 2 // bits a channel, red green blue
	var out bytes.Buffer
	out.WriteString("\x89PNG\r\n\x1a\n")
	chunk(&out, "IHDR", head)
	chunk(&out, "IDAT", []byte{0x78, 0x01}) // zlib, packed fast (RFC 1950)
	sum := adler32.New()
	for _, s := range strips {
		chunk(&out, "IDAT", s.packed)
		sum.Write(s.rows)
	}
	chunk(&out, "IDAT", sum.Sum(nil))
	chunk(&out, "IEND", nil)
	return out.Bytes()
}

// chunk writes a part of a file.
func chunk(out *bytes.Buffer, name string, data []byte) {
	var word [4]byte
	binary.BigEndian.PutUint32(word[:], uint32(len(data)))
	out.Write(word[:])
	sum := crc32.Update(crc32.ChecksumIEEE([]byte(name)), crc32.IEEETable, data)
	out.WriteString(name)
	out.Write(data)
	binary.BigEndian.PutUint32(word[:], sum)
	out.Write(word[:])
}

// strip is some rows of a picture.
type strip struct {
	rows   []byte // filtered, each after the number of its filter
	packed []byte // the same, deflated
}

// packed filters and deflates the rows from y0 to y1.
func packed(img *image.RGBA, y0, y1 int) strip {
	wide := 3 * img.Rect.Dx()
	s := strip{rows: make([]byte, 0, (y1-y0)*(wide+1))}
	above, row := make([]byte, wide), make([]byte, wide)
	if y0 > 0 {
		opaque(above, img, y0-1)
	}
	var f filters
	for y := y0; y < y1; y++ {
		opaque(row, img, y)
		s.rows = f.append(s.rows, row, above)
		above, row = row, above
	}
	var out bytes.Buffer
	z, err := flate.NewWriter(&out, flate.BestSpeed)
	if err != nil {
		panic("still: " + err.Error()) // no such level
	}
	z.Write(s.rows) // into memory, which takes everything
	if y1 < img.Rect.Dy() {
		z.Flush() // up to a whole byte
	} else {
		z.Close()
	}
	s.packed = out.Bytes()
	return s
}

// opaque copies the three colours of row y, counted from the top.
func opaque(dst []byte, img *image.RGBA, y int) {
	pix := img.Pix[y*img.Stride:]
	for x := 0; 3*x < len(dst); x++ {
		copy(dst[3*x:3*x+3], pix[4*x:4*x+3])
	}
}
