package stage

import (
	"image"
	"image/color"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// Where there is room over the form, folds of the cowl are shown once more, larger;
// where there is none, or no such fold, they are not.
func TestCloserLook(t *testing.T) {
	many, none := testSection(), testSection()
	none.Folds = nil
	counted := 0
	for _, f := range many.Folds {
		if f.Counted {
			counted++
		}
	}
	if counted == 0 {
		t.Fatal("the section has no counted fold")
	}
	look := Look{}.withDefaults()
	for _, c := range []struct {
		name string
		sec  Section
		wide int
		want bool
	}{{"room", many, 1400, true}, {"no room", many, 700, false}, {"no folds", none, 1400, false}} {
		img := drawSection(c.sec, Look{}, c.wide, 520)
		field := image.Rect(56, 78, c.wide-20, 472)
		back := int(fitScale(c.sec, field).at(c.sec.hindmost()).X)
		right := image.Rect(back+2*closerMargin, field.Min.Y, field.Max.X, field.Max.Y)
		if got := coloured(img, right, look.Accent) > 0; got != c.want {
			t.Errorf("%s: a badge over the form: %t, want %t", c.name, got, c.want)
		}
	}
}

// The zone that is shown larger holds every counted crest and no other fold below them.
func TestCowlZone(t *testing.T) {
	sec := Section{
		Cloth:  []r2.Vec{{X: 0.1, Y: 1.3}, {X: 0.14, Y: 1.25}, {X: 0.11, Y: 1.2}, {X: 0.2, Y: 1.0}},
		Facing: []r2.Vec{{X: 0.1, Y: 1.3}, {X: 0.08, Y: 1.27}},
		Folds:  []SectionFold{{At: r2.Vec{X: 0.14, Y: 1.25}, Counted: true}, {At: r2.Vec{X: 0.2, Y: 1.0}}},
	}
	zone, ok := sec.cowlZone()
	near := func(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
	if !ok || !near(zone.Min.X, 0.065) || !near(zone.Min.Y, 1.22) || !near(zone.Max.X, 0.155) || !near(zone.Max.Y, 1.315) {
		t.Errorf("zone %+v, %t, want 65–155 mm forward and 1220–1315 mm high", zone, ok)
	}
	sec.Folds = sec.Folds[1:]
	if _, ok := sec.cowlZone(); ok {
		t.Error("a section without a fold of the cowl has a zone")
	}
}

// coloured counts the pixels of a colour in a part of a picture.
func coloured(img *image.RGBA, part image.Rectangle, c color.RGBA) int {
	n := 0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if img.RGBAAt(x, y) == c {
				n++
			}
		}
	}
	return n
}
