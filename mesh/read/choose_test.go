package read_test

import (
	"math"
	"strings"
	"testing"

	"cowl/mesh/polyline"
	"cowl/mesh/read"
)

// drawn is a picture as a drawing program leaves it: a layer for each piece,
// ids made up by the program, labels by the user, curves, relative commands, a
// moved layer, a test square and words.
const drawn = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:d="http://drawing.example/ns" width="120cm" height="60cm" viewBox="0 0 1200 600">
<text x="9" y="9">size 10</text>
<g id="layer1" d:label="Front" transform="translate(300 80)">
 <path id="path9" d="M0 425h81l119 25 57-188c-30-7-46-20-46-48 0-40 8-80 64-114l-59-58 45-44-45-56H-216l-45 56 45 44-59 58c56 34 64 74 64 114 0 28-16 41-46 48l57 188 119-25z"/>
 <path id="path10" d:label="centre front" d="M0 425V-58"/>
 <path id="path11" d:label="fold" d="M-216 42H216"/>
 <line id="grain-line" x1="-164" y1="267" x2="-65" y2="168"/>
</g>
<g id="layer2" d:label="Sleeve">
 <polygon id="a" points="700,100 900,100 880,400 720,400"/>
 <line id="a-grain-line" x1="800" y1="150" x2="800" y2="350"/>
</g>
<g id="layer3" d:label="Rest">
 <path d:label="Tie" d="M950 50h100v500h-100z"/>
 <polygon points="1080,50 1180,50 1180,150 1080,150" id="square"/>
</g>
</svg>`

// Of a picture with several pieces each has its name, its area and its lines;
// the front is found, and any is chosen by name.
func TestSeveralDrawn(t *testing.T) {
	pieces, err := read.Pieces("hand.svg", strings.NewReader(drawn), "")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, p := range pieces {
		names = append(names, p.Name)
	}
	if got, want := strings.Join(names, ", "), "Front, Sleeve, Tie, square"; got != want {
		t.Fatalf("pieces %s, want %s", got, want)
	}
	for i, want := range []float64{0, (200 + 160) / 2 * 300, 100 * 500, 100 * 100} { // mm², a trapezium and two rectangles
		if got := polyline.Area(pieces[i].Outline) * 1e6; i > 0 && math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %.3f mm², want %.0f mm²", names[i], got, want)
		}
	}
	if n := len(pieces[0].Lines); n != 2 || len(pieces[1].Lines) != 0 {
		t.Errorf("%d lines on the front, %d on the sleeve, want 2 and none", n, len(pieces[1].Lines))
	}
	for _, which := range []string{"", "Front", "front"} {
		c, _, err := read.Front("hand.svg", strings.NewReader(drawn), "", which)
		if err != nil {
			t.Errorf("Front(%q) = %v", which, err)
			continue
		}
		for _, q := range []struct {
			what      string
			got, want float64 // mm and degrees
		}{
			{"facing", c.Facing * 1000, 42 + 58},
			{"half edge", c.Lines.Shoulder[0].X * 1000, 216},
			{"grain", c.Grain * 180 / math.Pi, 45},
			{"side seam", math.Hypot(c.Lines.Side[1].X-c.Lines.Side[0].X, c.Lines.Side[1].Y-c.Lines.Side[0].Y) * 1000,
				math.Hypot(57, 188)},
		} {
			if math.Abs(q.got-q.want) > 0.5 {
				t.Errorf("Front(%q): %s %.2f, want %.2f", which, q.what, q.got, q.want)
			}
		}
	}
}

// A piece that is not named is asked for, with the names there are.
func TestChooseRefused(t *testing.T) {
	nested := `<svg width="40cm" height="40cm" viewBox="0 0 400 400"><path d="M0 0H300V300H0z"/><path d="M10 10H290V290H10z"/></svg>`
	nobody := strings.ReplaceAll(drawn, `d:label="Front"`, `d:label="Bodice"`)
	for _, q := range []struct{ what, data, which, want string }{
		{"none chosen", nobody, "", `4 pieces, want one of them chosen by --piece-name, or name: in a style file; there are "Bodice", "Sleeve", "Tie", "square"`},
		{"another name", drawn, "back", `piece name "back": no piece is called so; there are "Front", "Sleeve"`},
		{"a sleeve", drawn, "sleeve", "no centre front"},
		{"cut line and seam line unnamed", nested, "", "one on another"},
	} {
		if _, _, err := read.Front("hand.svg", strings.NewReader(q.data), "", q.which); err == nil ||
			!strings.Contains(err.Error(), q.want) {
			t.Errorf("Front(%s) = %v, want %q", q.what, err, q.want)
		}
	}
	if _, _, err := read.Block("hand.svg", strings.NewReader(drawn), "", ""); err == nil ||
		!strings.Contains(err.Error(), "chosen by --block-name") {
		t.Errorf("Block(several) = %v, want one that asks for --block-name", err)
	}
	if _, _, err := read.Block("b.csv", strings.NewReader("name,x_cm,y_cm\n"), "", "front"); err == nil ||
		!strings.Contains(err.Error(), "leave the name out") {
		t.Errorf("Block(table, name) = %v, want the name refused", err)
	}
}
