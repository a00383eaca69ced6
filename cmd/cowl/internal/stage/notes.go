package stage

import (
	"image"
	"image/color"

	"gonum.org/v1/gonum/spatial/r2"
)

// Note is a remark on a picture: words, and an arrow from them to a place where it has
// one. Places are in pixels, Y down.
type Note struct {
	Words  string
	At     r2.Vec // the words are centred here
	To     r2.Vec // the tip of the arrow,
	Points bool   // where there is one
}

// NoteInk is the colour of notes, and NoteGround what lies behind their words.
var (
	NoteInk    = color.RGBA{0xA3, 0x1F, 0x34, 0xFF}
	NoteGround = color.RGBA{0xFF, 0xFF, 0xFF, 0xFF}
)

// Sizes of notes, units.
const (
	NoteLetters = 16.0
	NoteLine    = 2.6
	noteTip     = 13.0
	NotePad     = 7.0
)

// Annotate draws notes on a picture; scale is pixels a unit.
func Annotate(img *image.RGBA, notes []Note, scale float64) {
	k := ink{img}
	for _, n := range notes {
		if n.Points {
			if tip := Tip(n.At, n.To, scale); tip != nil {
				k.stroke([]r2.Vec{n.At, Neck(tip)}, NoteLine*scale, NoteInk)
				k.fill(tip, NoteInk)
			}
		}
		if n.Words == "" {
			continue
		}
		l := lettering{bold: true, size: NoteLetters * scale}
		wide, tall := l.width(n.Words)/2+NotePad*scale, (NoteLetters/2+NotePad)*scale
		k.fill([]r2.Vec{ // over the arrow, which so begins at its rim
			{X: n.At.X - wide, Y: n.At.Y - tall}, {X: n.At.X + wide, Y: n.At.Y - tall},
			{X: n.At.X + wide, Y: n.At.Y + tall}, {X: n.At.X - wide, Y: n.At.Y + tall},
		}, NoteGround)
		k.words(n.Words, r2.Vec{X: n.At.X, Y: n.At.Y + 0.36*NoteLetters*scale}, l, 0.5, NoteInk)
	}
}

// Tip returns the head of an arrow, clockwise on the screen; scale is pixels a unit. It is
// nil where the arrow has no length.
func Tip(from, to r2.Vec, scale float64) []r2.Vec {
	way := r2.Sub(to, from)
	if r2.Norm(way) < 1e-9 {
		return nil
	}
	along := r2.Scale(noteTip*scale, r2.Unit(way))
	aside := r2.Scale(0.42, r2.Vec{X: -along.Y, Y: along.X})
	beyond := r2.Add(to, r2.Scale(0.15, along))
	return []r2.Vec{beyond, r2.Add(r2.Sub(beyond, along), aside), r2.Sub(r2.Sub(beyond, along), aside)}
}

// Neck is where the shaft of an arrow ends that has such a head.
func Neck(tip []r2.Vec) r2.Vec { return r2.Scale(0.5, r2.Add(tip[1], tip[2])) }
