package panel

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// stand is a panel under test: draw lays it out once a picture.
type stand struct {
	*UI
	draw func(u *UI)
	now  float64
}

func newStand(draw func(u *UI)) *stand { return &stand{UI: New(), draw: draw} }

// picture makes one picture of 400 × 300 units at two pixels a unit.
func (s *stand) picture() {
	s.now += 1.0 / 60
	s.Begin(800, 600, 2, s.now)
	s.draw(s.UI)
	s.End()
}

func (s *stand) mouse(kind Kind, x, y float64) {
	s.In.Post(Event{Kind: Moved, X: 2 * x, Y: 2 * y})
	if kind != Moved {
		s.In.Post(Event{Kind: kind, Button: LeftButton})
	}
}

// click presses and lets go at a place in units, in one batch of events.
func (s *stand) click(x, y float64) {
	s.mouse(Down, x, y)
	s.mouse(Up, x, y)
	s.picture()
	s.picture()
}

func (s *stand) press(keys ...Key) {
	for _, k := range keys {
		s.In.Post(Event{Kind: Pressed, Press: Press{Key: k}})
		s.picture()
	}
}

func (s *stand) write(text string) {
	for _, r := range text {
		s.In.Post(Event{Kind: Typed, Rune: r})
	}
	s.picture()
}

// A press and its release that arrive together are still a click; outside, or
// let go outside, they are none.
func TestButtonClick(t *testing.T) {
	n := 0
	s := newStand(func(u *UI) {
		if u.Button("b", Rect{10, 10, 80, 30}, "Press", "") {
			n++
		}
	})
	s.click(50, 20)
	if n != 1 {
		t.Fatalf("%d clicks, want 1", n)
	}
	s.click(95, 20)
	s.mouse(Down, 50, 20)
	s.picture()
	s.mouse(Up, 200, 200)
	s.picture()
	if n != 1 {
		t.Errorf("%d clicks after a miss and a press let go outside, want 1", n)
	}
}

// Tab goes through the controls in the order drawn and round the end, Shift+Tab
// back; Enter and space press.
func TestTabAndEnter(t *testing.T) {
	var hits []string
	s := newStand(func(u *UI) {
		for i, id := range []string{"a", "b", "c"} {
			if u.Button(id, Rect{10, float64(10 + 40*i), 80, 30}, id, "help of "+id) {
				hits = append(hits, id)
			}
		}
	})
	s.picture()
	s.press(KeyTab, KeyEnter, KeyTab, KeyTab, KeySpace, KeyTab, KeyEnter)
	s.In.Post(Event{Kind: Pressed, Press: Press{KeyTab, Mods{Shift: true}}})
	s.picture()
	s.press(KeyEnter)
	if want := []string{"a", "c", "a", "c"}; !slices.Equal(hits, want) {
		t.Errorf("pressed %v, want %v", hits, want)
	}
	s.picture()
	if s.Help != "help of c" {
		t.Errorf("help is %q, want that of the control with the focus", s.Help)
	}
}

// What lies under a sheet does not answer.
func TestSheetTakesAll(t *testing.T) {
	under, over := 0, 0
	s := newStand(func(u *UI) {
		if u.Button("under", Rect{10, 10, 80, 30}, "x", "") {
			under++
		}
		if u.Dialog() == "s" {
			u.OnDialog("s")
			if u.Button("over", Rect{10, 10, 80, 30}, "x", "") {
				over++
			}
			u.OnDialog("")
		}
	})
	s.OpenDialog("s")
	s.click(50, 20)
	s.OpenDialog("")
	s.click(50, 20)
	if under != 1 || over != 1 {
		t.Errorf("under %d, over %d clicks, want 1 and 1", under, over)
	}
}

// centimetres is a slider from 0 to 40 in steps of a half.
func centimetres() Slider {
	return Slider{
		ID: "s", Label: "Length", Min: 0, Max: 40, Step: 0.5,
		Format: func(v float64) string { return fmt.Sprintf("%.1f cm", v) },
		Parse: func(text string) (float64, error) {
			v, err := strconv.ParseFloat(strings.TrimSuffix(strings.TrimSpace(text), "cm"), 64)
			if err != nil || v < 0 || v > 40 {
				return 0, fmt.Errorf("length %q, want 0 to 40 cm", text)
			}
			return v, nil
		},
	}
}

// sliderStand is a slider in a rectangle of 200 units; it records what it says.
func sliderStand(v *float64, changes *[]Change) *stand {
	return newStand(func(u *UI) {
		x, ch := u.Slide(centimetres(), Rect{100, 100, 200, SliderHeight}, *v)
		*v = x
		if ch != Same {
			*changes = append(*changes, ch)
		}
	})
}

// Dragging the knob to the middle gives the middle of the range, on a step.
func TestSliderDrag(t *testing.T) {
	v, changes := 8.0, []Change(nil)
	s := sliderStand(&v, &changes)
	y := 100 + 24 + 2 + 9.0
	s.mouse(Down, 140, y)
	s.picture()
	s.mouse(Moved, 200, y)
	s.picture()
	if v != 20 || !slices.Contains(changes, Moving) {
		t.Errorf("value %g, changes %v, want 20 while moving", v, changes)
	}
	s.mouse(Moved, 900, y)
	s.picture()
	s.mouse(Up, 900, y)
	s.picture()
	if v != 40 || changes[len(changes)-1] != Set {
		t.Errorf("value %g, changes %v, want 40 at the end of the range, set", v, changes)
	}
}

func TestSliderKeys(t *testing.T) {
	v, changes := 8.0, []Change(nil)
	s := sliderStand(&v, &changes)
	s.picture()
	s.press(KeyTab, KeyTab, KeyRight, KeyRight, KeyLeft)
	if v != 8.5 {
		t.Errorf("value %g after two steps up and one down, want 8.5", v)
	}
	s.press(KeyPageUp)
	if v != 13.5 {
		t.Errorf("value %g after a page, want 13.5", v)
	}
	s.press(KeyHome)
	if v != 0 {
		t.Errorf("value %g at home, want 0", v)
	}
}

// A typed value is taken with Enter; one out of range is refused with its
// reason, and Escape keeps the old one.
func TestSliderTyped(t *testing.T) {
	v, changes := 8.0, []Change(nil)
	s := sliderStand(&v, &changes)
	s.click(280, 110)
	if !s.Typing() {
		t.Fatal("a click into the value does not begin to type")
	}
	s.write("12.3")
	s.press(KeyEnter)
	if v != 12.3 || s.Typing() {
		t.Errorf("value %g, typing %v, want 12.3 taken", v, s.Typing())
	}
	s.click(280, 110)
	s.write("99")
	s.In.Post(Event{Kind: Pressed, Press: Press{Key: KeyEnter}})
	s.picture()
	if v != 12.3 || !strings.Contains(s.Complaint, "want 0 to 40 cm") || !s.Typing() {
		t.Errorf("value %g, complaint %q, typing %v, want 99 refused and still there to mend", v, s.Complaint, s.Typing())
	}
	s.press(KeyEscape)
	if v != 12.3 || s.Typing() {
		t.Errorf("value %g, typing %v after Escape, want 12.3 and no typing", v, s.Typing())
	}
}

// Letters, caret and rubbing out in a field.
func TestField(t *testing.T) {
	text, done := "silk", ""
	s := newStand(func(u *UI) {
		now, d := u.Field("f", Rect{10, 10, 200, 30}, text, "hint", "")
		text = now
		if d {
			done = now
		}
	})
	s.click(50, 20)
	s.In.Post(Event{Kind: Pressed, Press: Press{Letter('a'), Mods{Ctrl: true}}})
	s.write("crepe")
	s.picture()
	if text != "crepe" {
		t.Errorf("text %q, want what was typed in place of what was marked", text)
	}
	s.press(KeyHome, KeyDelete, KeyEnd, KeyBackspace, KeyLeft)
	s.write("xy")
	s.press(KeyEnter)
	if done != "rexyp" {
		t.Errorf("text %q, want rexyp", done)
	}
}

// A list answers to click and arrows, and scrolls to what is chosen by key.
func TestPick(t *testing.T) {
	var items []Item
	for i := range 20 {
		items = append(items, Item{Name: fmt.Sprint(i)})
	}
	on := 0
	s := newStand(func(u *UI) { on = u.Pick("p", Rect{10, 10, 200, 130}, items, on, "") })
	s.picture()
	s.click(60, 10+1+1.5*itemHeight)
	if on != 1 {
		t.Fatalf("row %d after a click on the second, want 1", on)
	}
	s.press(KeyDown, KeyDown, KeyDown, KeyDown)
	if on != 5 || s.offset["p"] == 0 {
		t.Errorf("row %d, scrolled by %g, want 5 and in sight", on, s.offset["p"])
	}
	s.press(KeyEnd)
	if most := 20*itemHeight - 128.0; on != 19 || s.offset["p"] != most {
		t.Errorf("row %d, scrolled by %g, want 19 and %g", on, s.offset["p"], most)
	}
}

// The wheel scrolls no further than the content.
func TestScroll(t *testing.T) {
	s := newStand(func(u *UI) {
		u.Scroll("s", Rect{10, 10, 100, 100}, func(c *Column) { c.Gap(250) })
	})
	s.mouse(Moved, 50, 50)
	for range 10 {
		s.In.Post(Event{Kind: Wheeled, Y: -1})
		s.picture()
	}
	if got := s.offset["s"]; got != 150 {
		t.Errorf("scrolled by %g, want 150", got)
	}
}

// Every triangle lies on the picture's vertices, and parts cover all indices in
// order.
func TestListIsWhole(t *testing.T) {
	s := newStand(func(u *UI) {
		u.Words("Edge drop ½ µm²", 20, 40, 0, Title, u.Theme.Ink)
		u.Check("c", Rect{10, 60, 100, 30}, "on", "", true)
		u.Bar(Rect{10, 100, 100, 6}, 0.4)
		u.Push(Rect{0, 0, 50, 50})
		u.Stroke([]Point{{0, 0}, {30, 40}, {60, 0}, {0, 0}}, 2, u.Theme.Accent)
		u.Pop()
	})
	s.picture()
	n := uint32(len(s.Verts) / 8)
	for _, i := range s.Index {
		if i >= n {
			t.Fatalf("index %d, want below %d", i, n)
		}
	}
	at := 0
	for _, p := range s.Parts {
		if p.First != at || p.Count%3 != 0 {
			t.Fatalf("part begins at %d with %d, want %d and whole triangles", p.First, p.Count, at)
		}
		at += p.Count
	}
	if at != len(s.Index) || at == 0 {
		t.Errorf("parts cover %d indices, want all %d", at, len(s.Index))
	}
}

// Wrapped lines hold all words and are no wider than asked; a shortened line
// ends in an ellipsis.
func TestWrapAndFit(t *testing.T) {
	u := New()
	u.Begin(800, 600, 1, 0)
	const text = "A prediction is not a toile: cut a test in real cloth before cutting the good one."
	lines := u.Wrap(text, 150, Plain)
	if len(lines) < 3 || strings.Join(lines, " ") != text {
		t.Errorf("lines %q, want all words on three lines or more", lines)
	}
	for _, l := range lines {
		if w := u.Width(l, Plain); w > 150 {
			t.Errorf("%q is %g wide, want at most 150", l, w)
		}
	}
	short := u.Fit(text, 100, Plain)
	if !strings.HasSuffix(short, "…") || u.Width(short, Plain) > 100 {
		t.Errorf("Fit = %q, want at most 100 wide with an ellipsis", short)
	}
}

// A full atlas is begun anew; letters are there again in the next picture.
func TestAtlasFull(t *testing.T) {
	u := New()
	for size := 40.0; size < 90; size++ {
		u.Begin(800, 600, 1, 0)
		u.Words("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz", 0, 100, 0, Style{Size: size}, u.Theme.Ink)
		u.End()
	}
	u.Begin(800, 600, 1, 0)
	u.Words("A", 0, 100, 0, Style{Size: 88}, u.Theme.Ink)
	if len(u.Index) != 6 {
		t.Errorf("%d indices for one letter, want 6", len(u.Index))
	}
}

// A button that cannot be pressed answers to nothing and still tells what it is for.
func TestDullButton(t *testing.T) {
	n := 0
	s := newStand(func(u *UI) {
		if u.ButtonIf(false, "b", Rect{10, 10, 80, 30}, "Undo", "Nothing to undo.") {
			n++
		}
	})
	s.click(50, 20)
	s.press(KeyTab, KeyEnter)
	if n != 0 || s.Help != "Nothing to undo." {
		t.Errorf("%d clicks on a dull button, help %q", n, s.Help)
	}
}
