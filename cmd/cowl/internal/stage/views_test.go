package stage

import (
	"errors"
	"image"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// testSection cuts the test scene at CF, as formulas have it.
func testSection() Section {
	var sec Section
	cut := func(f r2.Vec) r2.Vec { p := hang(f); return r2.Vec{X: p.Z, Y: p.Y} }
	for i := range 400 {
		sec.Cloth = append(sec.Cloth, cut(r2.Vec{Y: -0.001 * float64(i)}))
	}
	for i := range 61 {
		sec.Facing = append(sec.Facing, cut(r2.Vec{Y: 0.001 * float64(i)}))
	}
	for i := range 150 {
		p := onTorso(0, formTop-0.005*float64(i))
		sec.Form = append(sec.Form, r2.Vec{X: p.Z, Y: p.Y})
	}
	for i, f := range testCrests() {
		sec.Folds = append(sec.Folds, SectionFold{
			At: cut(f), DepthMM: []float64{34, 21, 6}[i], CFmm: -1000 * f.Y, Counted: i < 2,
		})
	}
	return sec
}

var testCaption = []string{
	"Made-up sheet, extension 6 cm, true bias",
	"2 folds above the bust, 34 and 21 mm deep",
	"edge drop 10.2 cm; cloth of 90 g/m², bending 3 µN·m, shear 15 N/m",
	"Drawn from formulas to test the drawing, not computed by any drape and not a record of a real garment. " +
		"Words that are too long for one line go on in the next.",
}

func TestSheet4(t *testing.T) {
	st := newStage(t)
	s := testScene(12)
	img, err := Views(st, s, testSection, testCaption)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := img.Bounds(), image.Rect(0, 0, 2000, 1500); got != want {
		t.Fatalf("sheet is %v, want %v", got, want)
	}
	bg := s.Look.withDefaults().Background
	for _, panel := range []image.Rectangle{
		image.Rect(0, 60, 700, 910), image.Rect(800, 60, 1300, 910), image.Rect(1450, 60, 2000, 910),
		image.Rect(1060, 1000, 1980, 1450), image.Rect(0, 930, 990, 1260),
	} {
		marked := 0
		for y := panel.Min.Y; y < panel.Max.Y; y += 3 {
			for x := panel.Min.X; x < panel.Max.X; x += 3 {
				if img.At(x, y) != bg {
					marked++
				}
			}
		}
		if share := 9 * float64(marked) / float64(panel.Dx()*panel.Dy()); share < 0.02 || share > 0.98 {
			t.Errorf("panel %v is %.3f filled, want neither empty nor full", panel, share)
		}
	}
}

func TestSheet4Refuses(t *testing.T) {
	if _, err := Views(nil, Scene{}, testSection, nil); !errors.Is(err, ErrNoDrawing) {
		t.Errorf("Sheet4 without a stage gave %v, want ErrNoDrawing", err)
	}
	if _, err := Views(newStage(t), testScene(4), func() Section { return Section{} }, nil); err == nil ||
		!strings.Contains(err.Error(), "section") {
		t.Errorf("Sheet4 without a section gave %v, want an error that names it", err)
	}
}

func TestFitScaleHoldsTheCut(t *testing.T) {
	field := image.Rect(56, 64, 960, 700)
	sec := testSection()
	s := fitScale(sec, field)
	n := 0
	for _, line := range [][]r2.Vec{sec.Cloth, sec.Facing} {
		for _, p := range s.line(line) {
			n++
			if p.X < s.left || p.X > float64(field.Max.X) || p.Y < float64(field.Min.Y) || p.Y > float64(field.Max.Y) {
				t.Fatalf("point at %v, want right of %v and within %v", p, s.left, field)
			}
		}
	}
	if n != 461 {
		t.Errorf("looked at %d points, want 461", n)
	}
	a, b, c := s.at(r2.Vec{}), s.at(r2.Vec{X: 0.1}), s.at(r2.Vec{Y: 0.1})
	if math.Abs((a.X-b.X)-(a.Y-c.Y)) > 1e-9 || a.X <= b.X {
		t.Errorf("10 cm are %v px forward and %v px up, want the same, forward to the left", a.X-b.X, a.Y-c.Y)
	}
}

// The form is filled behind its front and not before it, whether the outline
// is its front alone or goes all round.
func TestFormCutIsFilled(t *testing.T) {
	open := testSection()
	closed := testSection()
	for i := len(closed.Form) - 1; i >= 0; i-- {
		closed.Form = append(closed.Form, r2.Vec{X: -closed.Form[i].X, Y: closed.Form[i].Y})
	}
	closed.Form = append(closed.Form, closed.Form[0])
	for name, sec := range map[string]Section{"front": open, "all round": closed} {
		img := drawSection(sec, Look{}, 1000, 760)
		s := fitScale(sec, image.Rect(56, 78, 980, 712))
		behind, before := s.at(r2.Vec{X: 0.03, Y: 1.163}), s.at(r2.Vec{X: 0.19, Y: 1.163})
		if got := img.RGBAAt(int(behind.X), int(behind.Y)); got != inkForm {
			t.Errorf("%s: inside the form the picture is %v, want %v", name, got, inkForm)
		}
		if got, want := img.RGBAAt(int(before.X), int(before.Y)), (Look{}).withDefaults().Background; got != want {
			t.Errorf("%s: before the cloth the picture is %v, want %v", name, got, want)
		}
	}
}

func TestLabelFoldsDoNotOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		heights := rapid.SliceOfN(rapid.Float64Range(1.0, 1.4), 1, 9).Draw(t, "heights")
		folds := make([]SectionFold, len(heights))
		for i, y := range heights {
			folds[i] = SectionFold{At: r2.Vec{X: 0.1, Y: y}, Counted: rapid.Bool().Draw(t, "counted")}
		}
		labels := labelFolds(folds, scale{perM: 1000}, 30)
		if len(labels) != len(folds) {
			t.Fatalf("%d labels for %d folds", len(labels), len(folds))
		}
		counted := 0
		for i, l := range labels {
			if i > 0 && l.y-labels[i-1].y < 30-1e-9 {
				t.Fatalf("labels %d and %d are %v px apart, want 30", i-1, i, l.y-labels[i-1].y)
			}
			if (l.number > 0) != l.fold.Counted {
				t.Fatalf("fold counted %v has number %d", l.fold.Counted, l.number)
			}
			counted = max(counted, l.number)
		}
		for _, f := range folds {
			if f.Counted {
				counted--
			}
		}
		if counted != 0 {
			t.Fatalf("highest number is off by %d from the folds counted", counted)
		}
	})
}

func TestWrapCaption(t *testing.T) {
	lines := wrapCaption(testCaption, 900)
	var words []string
	for _, l := range lines {
		if w := l.style.width(l.text); w > 900 {
			t.Errorf("line %q is %v px, want at most 900", l.text, w)
		}
		words = append(words, strings.Fields(l.text)...)
	}
	if got, want := strings.Join(words, " "), strings.Join(testCaption, " "); got != want || len(lines) < 5 {
		t.Errorf("%d lines, want at least 5 with the words\n%s, got\n%s", len(lines), want, got)
	}
	for wide := 300.0; wide < 900; wide += 10 {
		for _, l := range wrapCaption(testCaption, wide) {
			if first, _, _ := strings.Cut(l.text, " "); first == "cm" || first == "cm;" || first == "mm" {
				t.Errorf("%g px wide: line %q begins with the unit of a number", wide, l.text)
			}
		}
	}
	if !lines[0].style.bold || !lines[len(lines)-1].faint {
		t.Error("want a bold heading first and a faint caution last")
	}
}
