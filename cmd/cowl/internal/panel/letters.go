package panel

import (
	"image"
	"image/color"
	"math"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// Styles of words in a panel.
var (
	Plain   = Style{Size: 13}
	Strong  = Style{Size: 13, Bold: true}
	Small   = Style{Size: 11.5}
	Heading = Style{Size: 15, Bold: true}
	Title   = Style{Size: 19, Bold: true}
)

// letter is one glyph in the atlas, in pixels.
type letter struct {
	at      image.Rectangle // in the atlas
	dx, dy  int             // of its corner from the pen
	advance float64
}

// script is a font at a size.
type script struct {
	bold bool
	size int // pixels
}

// Letters holds the glyphs drawn so far. The fonts are those of the Go project.
type Letters struct {
	Atlas   *image.Alpha
	Version int // grows when the atlas has changed

	faces   map[script]font.Face
	known   map[script]map[rune]letter
	x, y, h int // where the next glyph goes, and the height of its row
	full    bool
}

// NewLetters returns an empty atlas with one covered spot for plain areas.
func NewLetters() *Letters {
	t := &Letters{Atlas: image.NewAlpha(image.Rect(0, 0, atlasSide, atlasSide)), faces: map[script]font.Face{}}
	t.reset()
	return t
}

func (t *Letters) reset() {
	clear(t.Atlas.Pix)
	for y := range 4 {
		for x := range 4 {
			t.Atlas.SetAlpha(x, y, color.Alpha{0xFF})
		}
	}
	t.known = map[script]map[rune]letter{}
	t.x, t.y, t.h, t.full = 6, 0, 6, false
	t.Version++
}

// face panics where the fonts cannot be read: they are part of the program.
func (t *Letters) face(s script) font.Face {
	if f, ok := t.faces[s]; ok {
		return f
	}
	ttf := goregular.TTF
	if s.bold {
		ttf = gobold.TTF
	}
	parsed, err := opentype.Parse(ttf)
	if err != nil {
		panic("panel: " + err.Error())
	}
	f, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: float64(s.size), DPI: 72, Hinting: font.HintingFull})
	if err != nil {
		panic("panel: " + err.Error())
	}
	t.faces[s] = f
	return f
}

// letter returns the glyph of r, drawn into the atlas when it is first wanted.
func (t *Letters) letter(s script, r rune) letter {
	if g, ok := t.known[s][r]; ok {
		return g
	}
	if t.known[s] == nil {
		t.known[s] = map[rune]letter{}
	}
	box, mask, from, advance, _ := t.face(s).Glyph(fixed.Point26_6{}, r)
	g := letter{dx: box.Min.X, dy: box.Min.Y, advance: float64(advance) / 64}
	if w, h := box.Dx(), box.Dy(); w > 0 && h > 0 {
		if at, ok := t.room(w, h); ok {
			g.at = at
			for y := range h {
				for x := range w {
					_, _, _, a := mask.At(from.X+x, from.Y+y).RGBA()
					t.Atlas.SetAlpha(at.Min.X+x, at.Min.Y+y, color.Alpha{uint8(a >> 8)})
				}
			}
			t.Version++
		}
	}
	t.known[s][r] = g
	return g
}

// room finds a free place in the atlas; when there is none the atlas is emptied
// before the next picture.
func (t *Letters) room(w, h int) (image.Rectangle, bool) {
	if t.x+w+1 > atlasSide {
		t.x, t.y, t.h = 0, t.y+t.h+1, 0
	}
	if t.y+h+1 > atlasSide || w > atlasSide {
		t.full = true
		return image.Rectangle{}, false
	}
	at := image.Rect(t.x, t.y, t.x+w, t.y+h)
	t.x, t.h = t.x+w+1, max(t.h, h)
	return at, true
}

// Style is how words are set.
type Style struct {
	Size float64 // units
	Bold bool
}

// script returns the font of a style at a scale.
func (s Style) script(scale float64) script {
	return script{s.Bold, max(int(math.Round(s.Size*scale)), 6)}
}

// Width returns how wide a line is, in units.
func (u *UI) Width(text string, s Style) float64 {
	var w float64
	for _, r := range text {
		w += u.Letters.letter(s.script(u.scale), r).advance
	}
	return w / u.scale
}

// Words writes a line with its base line at y; align 0 begins at x, 0.5 centres
// there, 1 ends there.
func (u *UI) Words(text string, x, y, align float64, s Style, c color.RGBA) {
	sc := s.script(u.scale)
	pen := x*u.scale - align*u.Width(text, s)*u.scale
	base := math.Round(y * u.scale)
	for _, r := range text {
		g := u.Letters.letter(sc, r)
		if !g.at.Empty() {
			x0, y0 := math.Round(pen)+float64(g.dx), base+float64(g.dy)
			w, h := float64(g.at.Dx()), float64(g.at.Dy())
			u.List.quad(x0, y0, x0+w, y0+h,
				float64(g.at.Min.X)/atlasSide, float64(g.at.Min.Y)/atlasSide,
				float64(g.at.Max.X)/atlasSide, float64(g.at.Max.Y)/atlasSide, c)
		}
		pen += g.advance
	}
}

// Wrap breaks text between words into lines no wider than wide units; a newline
// in it always breaks.
func (u *UI) Wrap(text string, wide float64, s Style) []string {
	var out []string
	for _, part := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.Fields(part) {
			if longer := line + " " + word; line != "" && u.Width(longer, s) > wide {
				out = append(out, line)
				line = word
			} else {
				line = strings.TrimSpace(longer)
			}
		}
		out = append(out, line)
	}
	return out
}

// squeezed returns a label no wider than wide units, in smaller letters before
// it is shortened.
func (u *UI) squeezed(text string, wide float64) (string, Style) {
	return u.squeezedFrom(text, wide, Plain)
}

// squeezedFrom is squeezed for a label that would be written in s.
func (u *UI) squeezedFrom(text string, wide float64, s Style) (string, Style) {
	if u.Width(text, s) > wide {
		s.Size = Small.Size
	}
	return u.Fit(text, wide, s), s
}

// Fit shortens text with an ellipsis until it is no wider than wide units.
func (u *UI) Fit(text string, wide float64, s Style) string {
	if u.Width(text, s) <= wide {
		return text
	}
	u.Shortened = append(u.Shortened, text)
	runes := []rune(text)
	for len(runes) > 0 && u.Width(string(runes)+"…", s) > wide {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimRight(string(runes), " ,") + "…"
}
