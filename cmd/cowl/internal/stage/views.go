package stage

import (
	"errors"
	"fmt"
	"image"
	"image/draw"
	"math"
	"slices"
	"strings"
	"unicode"

	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Layout of the sheet in pixels: the three views in a row, below them the words
// on the left and the section on the right.
const (
	viewsWide   = 2000
	viewsTall   = 1500
	viewsMiddle = 920  // views / words and section
	viewsSplit  = 1000 // words | section
	viewsMargin = 40
)

// Views returns one picture with the front, three-quarter and side views at
// one scale and the section through CF. The first line of the caption is its
// heading, its last the caution. The section is cut while the views are drawn. Without a
// stage (nil), as in a binary or on a machine that cannot draw, the error wraps ErrNoDrawing.
func Views(st *Stage, scene Scene, cut func() Section, caption []string) (*image.RGBA, error) {
	if st == nil {
		return nil, fmt.Errorf("stage: sheet: %w: there is no stage", ErrNoDrawing)
	}
	lines := wrapCaption(caption, viewsSplit-2*viewsMargin)
	panels, shots := sideBySide(scene, image.Rect(0, 0, viewsWide, viewsMiddle), []r3.Vec{
		towards(0, frontHeight), towards(quarterTurn, quarterHeight), towards(math.Pi/2, 0),
	})
	below := image.Rect(viewsSplit, viewsMiddle, viewsWide, viewsTall)
	section := beside(func() drawnSection {
		sec := cut()
		if len(sec.Cloth) < 2 {
			return drawnSection{Section: sec}
		}
		return drawnSection{sec, drawSection(sec, scene.Look, below.Dx(), below.Dy())}
	})
	pictures, err := st.drawAll(scene, shots)
	sec := section()
	switch {
	case err != nil:
		return nil, err
	case sec.picture == nil:
		return nil, errors.New("stage: section of the cloth has fewer than 2 points")
	}
	return compose(scene.Look.withDefaults(), append(panels, below), append(pictures, sec.picture), names(sec.Worn),
		lines), nil
}

// drawnSection is a section and its picture, nil where there is none to draw.
type drawnSection struct {
	Section
	picture *image.RGBA
}

// names lists what the pictures show.
func names(worn draft.Side) []string {
	first := "Front"
	if worn == draft.AtBack {
		first = "Back"
	}
	return []string{first, "Three-quarter", worn.Say("Side, wearer's left"), worn.Say("Section on the centre front")}
}

// compose puts the pictures in their panels, names them and adds the words.
func compose(look Look, panels []image.Rectangle, pictures []*image.RGBA, names []string,
	lines []captionLine) *image.RGBA {
	sheet := image.NewRGBA(image.Rect(0, 0, viewsWide, viewsTall))
	draw.Draw(sheet, sheet.Rect, image.NewUniform(look.Background), image.Point{}, draw.Src)
	k := ink{sheet}
	for i, p := range panels {
		draw.Draw(sheet, p, pictures[i], image.Point{}, draw.Src)
		k.words(names[i], r2.Vec{X: float64(p.Min.X) + viewsMargin/2, Y: float64(p.Min.Y) + 40}, bold, 0, inkDark)
	}
	for _, rule := range [][]r2.Vec{
		{{X: 0, Y: viewsMiddle}, {X: viewsWide, Y: viewsMiddle}},
		{{X: viewsSplit, Y: viewsMiddle}, {X: viewsSplit, Y: viewsTall}},
		{{X: float64(panels[1].Min.X), Y: 0}, {X: float64(panels[1].Min.X), Y: viewsMiddle}},
		{{X: float64(panels[2].Min.X), Y: 0}, {X: float64(panels[2].Min.X), Y: viewsMiddle}},
	} {
		k.stroke(rule, 2, inkFaint)
	}
	y := float64(viewsMiddle + captionPad)
	for _, l := range lines {
		y += l.tall
		c := inkDark
		if l.faint {
			c = inkMid
		}
		k.words(l.text, r2.Vec{X: viewsMargin, Y: y - 8}, l.style, 0, c)
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

const captionPad = 14 // pixels above the words

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
		for _, word := range kept(strings.Fields(text)) {
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

// kept joins every number with the unit behind it, so that no line ends between them.
func kept(words []string) []string {
	var out []string
	for i, w := range words {
		if i > 0 && unicode.IsDigit(rune(words[i-1][len(words[i-1])-1])) &&
			slices.Contains([]string{"cm", "mm", "g", "%", "inch"}, strings.TrimRight(w, ",;.:")) {
			out[len(out)-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}
