package panel

// editing is the text being typed. At most one field is typed in at a time.
type editing struct {
	line
	id           string
	from         int    // where the mouse went down
	leave        bool   // to be ended after this picture
	broken       bool   // what was typed was refused
	past, future []line // undone and done again while it is being typed
	kind         Key    // of the last change: letters in a row are undone together
}

// begin starts typing in a field, with everything marked.
func (e *editing) begin(id, text string) { *e = editing{id: id, line: whole(text)} }

// change makes l the text; changes of one kind in a row are undone together.
func (e *editing) change(l line, kind Key) {
	if kind == KeyNone || kind != e.kind {
		e.past = append(e.past, e.line)
	}
	e.line, e.kind, e.future, e.broken = l, kind, nil, false
}

// swap goes from the present text to the last of one list and keeps it in the other.
func (e *editing) swap(from, to *[]line) {
	if n := len(*from); n > 0 {
		*to = append(*to, e.line)
		e.line, *from = (*from)[n-1], (*from)[:n-1]
	}
	e.kind, e.broken = KeyNone, false
}

// keys lets the keyboard edit the text. All that could be typed is swallowed: it is
// no command, though the field may be left in this very picture.
func (u *UI) keys() {
	in := &u.In
	if len(in.Text) > 0 {
		u.edit.change(u.edit.put(in.Text...), KeyA)
	}
	in.Text = in.Text[:0]
	left := in.Keys[:0]
	for _, p := range in.Keys {
		if !p.writes() && !u.edited(p) {
			left = append(left, p)
		}
	}
	in.Keys = left
}

// edited lets one press edit the text and reports whether it does.
func (u *UI) edited(p Press) bool {
	e, word := &u.edit, p.Mods.Ctrl
	moved := func(to int) { e.line, e.kind = e.move(to, p.Mods.Shift), KeyNone }
	switch p.Key {
	case KeyBackspace:
		e.change(e.rub(e.step(-1, word)), p.Key)
	case KeyDelete:
		e.change(e.rub(e.step(1, word)), p.Key)
	case KeyLeft, KeyRight:
		from, to := e.marked()
		switch by := map[Key]int{KeyLeft: -1, KeyRight: 1}[p.Key]; {
		case from == to || p.Mods.Shift || word:
			moved(e.step(by, word))
		case by < 0:
			moved(from)
		default:
			moved(to)
		}
	case KeyHome:
		moved(0)
	case KeyEnd:
		moved(len(e.text))
	default:
		return word && u.clip(p)
	}
	return true
}

// clip does what letters do with Ctrl.
func (u *UI) clip(p Press) bool {
	e := &u.edit
	switch p.Key {
	case Letter('a'):
		e.line = whole(string(e.text))
	case Letter('v'):
		u.paste()
	case Letter('c'):
		u.copy()
	case Letter('x'):
		if from, to := e.marked(); from < to {
			u.copy()
			e.change(e.put(), KeyNone)
		}
	case Letter('z'):
		if p.Mods.Shift {
			e.swap(&e.future, &e.past)
		} else {
			e.swap(&e.past, &e.future)
		}
	case Letter('y'):
		e.swap(&e.future, &e.past)
	default:
		return false
	}
	return true
}

func (u *UI) paste() {
	if u.Paste == nil {
		return
	}
	var rs []rune
	for _, r := range u.Paste() {
		if r >= ' ' {
			rs = append(rs, r)
		}
	}
	u.edit.change(u.edit.put(rs...), KeyNone)
}

func (u *UI) copy() {
	if from, to := u.edit.marked(); u.Copy != nil && from < to {
		u.Copy(string(u.edit.text[from:to]))
	}
}

// typed draws a field and lets it be typed in. It returns the text and true
// when that is to be taken: Enter, Tab or a click elsewhere.
func (u *UI) typed(id string, r Rect, text, hint string, align float64, t touch) (string, bool) {
	e := &u.edit
	first := e.id != id
	if first && (t.struck || t.focus && len(u.In.Text) > 0 || t.clicked) {
		e.begin(id, text)
		if in := &u.In; t.clicked && len(in.Text) > 0 && in.Text[0] == ' ' {
			in.Text = in.Text[1:] // that pressed the field
		}
	}
	if e.id == id && u.In.Took(KeyEscape, Mods{}) {
		*e = editing{}
	}
	if e.id != id {
		u.box(r, t, false)
		u.inBox(r, text, hint, align)
		return "", false
	}
	u.point(r, align, t, first)
	u.keys()
	u.entered = u.In.Took(KeyEnter, Mods{})
	done := e.leave || u.entered
	for _, p := range u.In.Keys {
		done = done || p.Key == KeyTab
	}
	u.box(r, t, true)
	u.drawEdit(r, align)
	return string(e.text), done
}

func (u *UI) box(r Rect, t touch, typing bool) {
	u.Round(r, radius, u.Theme.Raised)
	rim, wide := u.Theme.Rule, 1.0
	switch {
	case typing && u.edit.broken:
		rim, wide = u.Theme.Ink, 2
	case typing || t.focus:
		rim, wide = u.Theme.Accent, 1.5
	case t.over:
		rim = u.Theme.Soft
	}
	u.Frame(r, radius, wide, rim)
}

func (u *UI) inBox(r Rect, text, hint string, align float64) {
	ink := u.Theme.Ink
	if text == "" {
		text, ink = hint, u.Theme.Soft
	}
	in := r.Shrunk(8, 0)
	u.Words(u.Fit(text, in.W, Plain), in.X+align*in.W, middle(r, Plain), align, Plain, ink)
}

// drawEdit draws the text being typed with what is marked, or the caret, which blinks.
func (u *UI) drawEdit(r Rect, align float64) {
	e, in := &u.edit, r.Shrunk(8, 4)
	u.Push(r.Inset(2))
	defer u.Pop()
	x := u.textAt(r, align)
	upTo := func(k int) float64 { return x + u.Width(string(e.text[:k]), Plain) }
	from, to := e.marked()
	if from < to {
		u.Fill(Rect{upTo(from) - 1, in.Y, upTo(to) - upTo(from) + 2, in.H}, Faded(u.Theme.Accent, 0.22))
	}
	u.Words(string(e.text), x, middle(r, Plain), 0, Plain, u.Theme.Ink)
	if from == to && int(u.now*2)%2 == 0 {
		u.Fill(Rect{upTo(e.caret), in.Y, 1, in.H}, u.Theme.Ink)
	}
}

// Field is a line of text. It returns the text as it is being typed, and true
// when the typing is done.
func (u *UI) Field(id string, r Rect, text, hint, help string) (now string, done bool) {
	t := u.touch(id, r, help)
	now, done = u.typed(id, r, text, hint, 0, t)
	switch {
	case done:
		u.edit = editing{}
		return now, true
	case u.edit.id == id:
		return now, false
	}
	return text, false
}

// Entered reports whether the field that was left in this picture was left by Enter.
func (u *UI) Entered() bool { return u.entered }

// point lets the mouse set the caret, mark a part, and with a double click a word.
// first is the press that begins the typing: all of a value stays marked then.
func (u *UI) point(r Rect, align float64, t touch, first bool) {
	e := &u.edit
	at := u.caretAt(r, align)
	switch {
	case t.struck && u.In.Double:
		e.line = e.word(at)
	case t.struck && first:
		e.from = at
		if align == 0 {
			e.line = e.move(at, false)
		}
	case t.struck:
		e.line, e.from = e.move(at, u.In.Mods.Shift), at
	case t.held && u.In.DX != 0:
		e.mark, e.caret = e.from, at
	}
	if t.struck || t.held {
		e.kind = KeyNone
	}
}
