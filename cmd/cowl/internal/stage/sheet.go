package stage

import (
	"errors"
	"fmt"
	"image"
	"image/draw"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
)

// Layout of the sheet in pixels: the front and the words in the left column,
// the other two views over the section in the right one.
const (
	sheetWide   = 2000
	sheetTall   = 1500
	sheetSplit  = 1000 // left column | right column
	sheetMiddle = 740  // views / section in the right column
	sheetMargin = 40
)

// Sheet4 returns one picture with the front, three-quarter and side views and
// the section through CF. The caption stands below the front view: its first
// line is the heading, its last the caution. Without a stage (nil), as in a
// binary or on a machine that cannot draw, the error wraps ErrNoDrawing.
func Sheet4(st *Stage, scene Scene, sec Section, caption []string) (image.Image, error) {
	if st == nil {
		return nil, fmt.Errorf("stage: sheet: %w: there is no stage", ErrNoDrawing)
	}
	if len(sec.Cloth) < 2 {
		return nil, errors.New("stage: section of the cloth has fewer than 2 points")
	}
	lines := wrapCaption(caption, sheetSplit-2*sheetMargin)
	front := image.Rect(0, 0, sheetSplit, sheetTall-captionTall(lines))
	half := (sheetWide - sheetSplit) / 2
	panels := []image.Rectangle{
		front,
		image.Rect(sheetSplit, 0, sheetSplit+half, sheetMiddle),
		image.Rect(sheetSplit+half, 0, sheetWide, sheetMiddle),
	}
	pictures, err := st.drawAll(scene, sheetShots(scene, panels))
	if err != nil {
		return nil, err
	}
	below := image.Rect(sheetSplit, sheetMiddle, sheetWide, sheetTall)
	pictures = append(pictures, drawSection(sec, scene.Look, below.Dx(), below.Dy()))
	return compose(scene.Look.withDefaults(), append(panels, below), pictures, lines), nil
}

func sheetShots(scene Scene, panels []image.Rectangle) []shot {
	box := Bounds(scene.Cloth.Pos)
	shots := make([]shot, len(panels))
	for i, p := range panels {
		aspect := float64(p.Dx()) / float64(p.Dy())
		view := [...]View{Front(box, aspect), ThreeQuarter(box, aspect), Side(box, aspect)}[i]
		shots[i] = shot{view, p.Dx(), p.Dy()}
	}
	return shots
}

// compose puts the pictures in their panels, names them and adds the words.
func compose(look Look, panels []image.Rectangle, pictures []*image.RGBA, lines []captionLine) image.Image {
	sheet := image.NewRGBA(image.Rect(0, 0, sheetWide, sheetTall))
	draw.Draw(sheet, sheet.Rect, image.NewUniform(look.Background), image.Point{}, draw.Src)
	k := ink{sheet}
	names := []string{"Front", "Three-quarter", "Side, wearer's left", "Section on the centre front"}
	for i, p := range panels {
		draw.Draw(sheet, p, pictures[i], image.Point{}, draw.Src)
		k.words(names[i], r2.Vec{X: float64(p.Min.X) + sheetMargin/2, Y: float64(p.Min.Y) + 40}, bold, 0, inkDark)
	}
	for _, rule := range [][]r2.Vec{
		{{X: sheetSplit, Y: 0}, {X: sheetSplit, Y: sheetTall}},
		{{X: sheetSplit, Y: sheetMiddle}, {X: sheetWide, Y: sheetMiddle}},
		{{X: float64(panels[2].Min.X), Y: 0}, {X: float64(panels[2].Min.X), Y: sheetMiddle}},
		{{X: 0, Y: float64(panels[0].Max.Y)}, {X: sheetSplit, Y: float64(panels[0].Max.Y)}},
	} {
		k.stroke(rule, 2, inkFaint)
	}
	y := float64(panels[0].Max.Y) + captionPad
	for _, l := range lines {
		y += l.tall
		c := inkDark
		if l.faint {
			c = inkMid
		}
		k.words(l.text, r2.Vec{X: sheetMargin, Y: y - 8}, l.style, 0, c)
	}
	return sheet
}

// captionLine is one line of words as it is set.
type captionLine struct {
	text  string
	style lettering
	tall  float64
	faint bool
}

const captionPad = 14 // pixels above and below the words

// wrapCaption breaks lines that are longer than wide pixels between words.
func wrapCaption(caption []string, wide float64) []captionLine {
	var out []captionLine
	for i, text := range caption {
		l := captionLine{style: lettering{size: 23}, tall: 33}
		switch {
		case i == 0:
			l.style, l.tall = lettering{bold: true, size: 30}, 44
		case i == len(caption)-1:
			l.style, l.tall, l.faint = lettering{size: 20}, 29, true
		}
		for _, word := range strings.Fields(text) {
			if longer := l.text + " " + word; l.text != "" && l.style.width(longer) > wide {
				out = append(out, l)
				l.text = word
			} else {
				l.text = strings.TrimSpace(longer)
			}
		}
		out = append(out, l)
	}
	return out
}

func captionTall(lines []captionLine) int {
	tall := 2.0 * captionPad
	for _, l := range lines {
		tall += l.tall
	}
	return int(tall)
}
