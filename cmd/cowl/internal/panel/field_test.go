package panel

import "testing"

// fieldStand is a field of 200 units at (10, 10); a letter G that no field takes is a command.
type fieldStand struct {
	*stand
	text     string
	done     []string
	commands int
	board    string
}

func newFieldStand(text string) *fieldStand {
	f := &fieldStand{text: text}
	f.stand = newStand(func(u *UI) {
		now, d := u.Field("f", Rect{10, 10, 200, 30}, f.text, "hint", "")
		f.text = now
		if d {
			f.done = append(f.done, now)
		}
		for !u.Typing() && u.In.Took(Letter('g'), Mods{}) {
			f.commands++
		}
	})
	f.Copy = func(s string) { f.board = s }
	f.Paste = func() string { return f.board }
	return f
}

// post hands events over as a keyboard does, all for one picture: letters as press
// and rune, \n as Enter, \b as Backspace.
func (f *fieldStand) post(keys string) {
	for _, r := range keys {
		k := map[rune]Key{'\n': KeyEnter, '\b': KeyBackspace, ' ': KeySpace}[r]
		if r >= 'a' && r <= 'z' {
			k = Letter(r)
		}
		if k != KeyNone {
			f.In.Post(Event{Kind: Pressed, Press: Press{Key: k}})
		}
		if r >= ' ' {
			f.In.Post(Event{Kind: Typed, Rune: r})
		}
	}
}

// all makes pictures until every event is answered.
func (f *fieldStand) all() {
	for f.picture(); f.In.Waiting(); f.picture() {
	}
}

func (f *fieldStand) chord(k Key, m Mods) {
	f.In.Post(Event{Kind: Pressed, Press: Press{k, m}, Mods: m})
	f.all()
}

// Letters that arrive in one picture with the Enter that ends them are no commands.
func TestFieldSwallowsItsPresses(t *testing.T) {
	f := newFieldStand("")
	f.click(50, 20)
	f.post("gag\n")
	f.all()
	if len(f.done) != 1 || f.done[0] != "gag" || f.commands != 0 {
		t.Errorf("done %q, %d commands, want gag and no command", f.done, f.commands)
	}
}

// Rubbing out and letters in one picture come in the order in which they were pressed.
func TestFieldKeepsOrder(t *testing.T) {
	f := newFieldStand("")
	f.click(50, 20)
	f.post("ab\bc\bd")
	f.all()
	if f.text != "ad" {
		t.Errorf("text %q, want ad", f.text)
	}
}

// Space presses a field that has the focus and writes nothing.
func TestFieldPressedBySpace(t *testing.T) {
	f := newFieldStand("silk")
	f.Focus("f")
	f.post(" ")
	f.all()
	if f.text != "silk" || !f.Typing() {
		t.Errorf("text %q, typing %v, want silk being typed in", f.text, f.Typing())
	}
}

// A click puts the caret where it is, a drag marks a part, a double click a word;
// Ctrl jumps over words, Shift marks; cut, paste, undo and redo.
func TestFieldEdits(t *testing.T) {
	ctrl, shift := Mods{Ctrl: true}, Mods{Shift: true}
	f := newFieldStand("silk crepe")
	f.picture()
	x := func(text string) float64 { return 10 + 8 + f.Width(text, Plain) }
	f.click(x("silk"), 20)
	f.post("y")
	f.all()
	want := func(text string) {
		t.Helper()
		if f.text != text {
			t.Fatalf("text %q, want %q", f.text, text)
		}
	}
	want("silky crepe")
	f.mouse(Down, x("s"), 20)
	f.picture()
	f.mouse(Moved, x("sil"), 20)
	f.picture()
	f.mouse(Up, x("sil"), 20)
	f.picture()
	f.chord(Letter('x'), ctrl)
	want("sky crepe")
	f.chord(Letter('z'), ctrl)
	want("silky crepe")
	f.chord(Letter('y'), ctrl)
	want("sky crepe")
	f.chord(KeyEnd, Mods{})
	f.chord(Letter('v'), ctrl)
	want("sky crepeil")
	f.chord(KeyLeft, ctrl)
	f.post("a")
	f.all()
	want("sky acrepeil")
	f.chord(KeyHome, shift)
	f.chord(KeyBackspace, Mods{})
	want("crepeil")
	f.chord(KeyDelete, ctrl)
	want("")
	for range 2 {
		f.chord(Letter('z'), ctrl)
	}
	want("sky acrepeil")
	f.now += 1
	f.click(x("sky ac"), 20)
	f.click(x("sky ac"), 20)
	f.post("voile")
	f.all()
	want("sky voile")
	f.chord(KeyLeft, Mods{Ctrl: true, Shift: true})
	f.chord(Letter('c'), ctrl)
	if f.board != "voile" {
		t.Errorf("copied %q, want the marked word", f.board)
	}
}

// Travel of the mouse before a press, in the same picture, drags nothing; after it, it does.
func TestTravelBeforePress(t *testing.T) {
	var dx float64
	s := newStand(func(u *UI) {
		if u.In.Down[LeftButton] {
			dx += u.In.DX
		}
	})
	s.mouse(Moved, 10, 10)
	s.picture()
	s.mouse(Down, 90, 10)
	s.picture()
	if dx != 0 {
		t.Errorf("dragged by %g before the button went down, want 0", dx)
	}
	s.mouse(Moved, 120, 10)
	s.picture()
	if dx != 30 {
		t.Errorf("dragged by %g, want 30", dx)
	}
}
