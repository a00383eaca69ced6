package stage

import (
	"image"
	"image/draw"
)

// drawSection returns the cut on a picture of w × h pixels: cm along both axes
// at one scale, forward to the left as in the view from the wearer's left.
func drawSection(sec Section, look Look, w, h int) *image.RGBA {
	look = look.withDefaults()
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Rect, image.NewUniform(look.Background), image.Point{}, draw.Src)
	field := image.Rect(56, 78, w-20, h-48)
	s := fitScale(sec, field)
	k := ink{img}
	inner := ink{img.SubImage(field).(*image.RGBA)}
	drawFormCut(inner, s, sec.Form, field)
	drawGrid(k, s, field, sec.Worn)
	inner.stroke(s.line(Curved(sec.Facing)), 2.5, inkMid)
	inner.stroke(s.line(Curved(sec.Cloth)), 4, inkDark)
	drawFolds(k, s, sec, look)
	drawCloser(img, s, sec, field, look)
	drawKey(k, sec, field)
	return img
}
