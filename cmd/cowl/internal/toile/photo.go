package toile

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	_ "image/png" // so that a photograph may be one

	"cowl/materials/infile"

	"golang.org/x/image/draw"
)

// What a photograph may be at most, and how wide it stands on the sheet, pixels.
const (
	mostPixels = 64 << 20
	photoWide  = 640
	photoTall  = 768
)

// readPhoto returns the file of a photograph, of which it can be said from its head that
// it is one.
func readPhoto(path string) ([]byte, error) {
	data, err := infile.Read(path, "a photograph as JPEG or PNG", infile.Picture)
	if err != nil {
		return nil, err
	}
	c, kind, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case err != nil || kind != "jpeg" && kind != "png":
		return nil, fmt.Errorf("%s is no JPEG and no PNG, want a photograph as one of them", path)
	case c.Width < 1 || c.Height < 1 || c.Width > mostPixels/c.Height:
		return nil, fmt.Errorf("%s has %d × %d pixels, want at most %d million", path, c.Width, c.Height, mostPixels/1000000)
	}
	return data, nil
}

// shown is a photograph as it stands on the sheet: upright, small, and without what a
// camera notes of place and time.
func shown(path string) ([]byte, error) {
	data, err := readPhoto(path)
	if err != nil {
		return nil, err
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", path, err)
	}
	turn := orientation(data)
	room := image.Pt(photoWide, photoTall)
	if turn >= 5 {
		room = image.Pt(photoTall, photoWide)
	}
	size := within(img.Bounds().Size(), room)
	if size.X < 1 || size.Y < 1 {
		return nil, errors.New(path + " is a line, want a photograph")
	}
	small := image.NewRGBA(image.Rectangle{Max: size})
	draw.ApproxBiLinear.Scale(small, small.Bounds(), img, img.Bounds(), draw.Src, nil)
	var out bytes.Buffer
	err = jpeg.Encode(&out, upright(small, turn), &jpeg.Options{Quality: 85})
	return out.Bytes(), err
}

// within is a size of the same shape that fits into room.
func within(size, room image.Point) image.Point {
	if size.X*room.Y > size.Y*room.X {
		return image.Pt(room.X, size.Y*room.X/size.X)
	}
	return image.Pt(size.X*room.Y/size.Y, room.Y)
}

// upright turns and mirrors a picture as its orientation says (1 to 8, as cameras note
// it in the Exif data of a JPEG, tag 0x0112).
func upright(img *image.RGBA, turn int) image.Image {
	if turn < 2 || turn > 8 {
		return img
	}
	w, h := img.Rect.Dx(), img.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	if turn >= 5 {
		out = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := range h {
		for x := range w {
			to := [...]image.Point{{x, y}, {w - 1 - x, y}, {w - 1 - x, h - 1 - y}, {x, h - 1 - y},
				{y, x}, {h - 1 - y, x}, {h - 1 - y, w - 1 - x}, {y, w - 1 - x}}[turn-1]
			out.SetRGBA(to.X, to.Y, img.RGBAAt(x, y))
		}
	}
	return out
}
