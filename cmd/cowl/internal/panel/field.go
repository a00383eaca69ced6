package panel

import "slices"

// editing is the text being typed. At most one field is typed in at a time.
type editing struct {
	id     string
	text   []rune
	caret  int
	all    bool // everything is marked: typing replaces it
	leave  bool // to be ended after this picture
	broken bool // what was typed was refused
}

// begin starts typing in a field.
func (e *editing) begin(id, text string) {
	*e = editing{id: id, text: []rune(text), caret: len([]rune(text)), all: true}
}

// insert puts runes at the caret, in place of everything if that is marked.
func (e *editing) insert(rs ...rune) {
	if e.all {
		e.text, e.caret, e.all = nil, 0, false
	}
	e.text = slices.Insert(e.text, e.caret, rs...)
	e.caret += len(rs)
	e.broken = false
}

// rub takes out the rune before the caret (−1) or after it (0).
func (e *editing) rub(at int) {
	if e.all {
		e.insert()
		return
	}
	if i := e.caret + at; i >= 0 && i < len(e.text) {
		e.text = slices.Delete(e.text, i, i+1)
		e.caret = i
	}
}

// keys lets the keyboard edit the text.
func (u *UI) keys() {
	e, in := &u.edit, &u.In
	for _, r := range in.Text {
		e.insert(r)
	}
	in.Text = in.Text[:0]
	in.Took(KeySpace, Mods{})
	move := func(to int) { e.caret, e.all = min(max(to, 0), len(e.text)), false }
	for _, k := range []struct {
		key  Key
		mods Mods
		do   func()
	}{
		{KeyBackspace, Mods{}, func() { e.rub(-1) }},
		{KeyDelete, Mods{}, func() { e.rub(0) }},
		{KeyLeft, Mods{}, func() { move(e.caret - 1) }},
		{KeyRight, Mods{}, func() { move(e.caret + 1) }},
		{KeyHome, Mods{}, func() { move(0) }},
		{KeyEnd, Mods{}, func() { move(len(e.text)) }},
		{Letter('a'), Mods{Ctrl: true}, func() { e.all = true }},
		{Letter('v'), Mods{Ctrl: true}, u.paste},
		{Letter('c'), Mods{Ctrl: true}, u.copy},
	} {
		for in.Took(k.key, k.mods) {
			k.do()
		}
	}
}

func (u *UI) paste() {
	if u.Paste == nil {
		return
	}
	for _, r := range u.Paste() {
		if r >= ' ' {
			u.edit.insert(r)
		}
	}
}

func (u *UI) copy() {
	if u.Copy != nil {
		u.Copy(string(u.edit.text))
	}
}

// typed draws a field and lets it be typed in. It returns the text and true
// when that is to be taken: Enter, Tab or a click elsewhere.
func (u *UI) typed(id string, r Rect, text, hint string, align float64, t touch) (string, bool) {
	e := &u.edit
	if e.id != id && (t.struck || t.focus && len(u.In.Text) > 0 || t.clicked) {
		e.begin(id, text)
	}
	if e.id != id {
		u.box(r, t, false)
		u.inBox(r, text, hint, align)
		return "", false
	}
	if u.In.Took(KeyEscape, Mods{}) {
		*e = editing{}
		u.box(r, t, false)
		u.inBox(r, text, hint, align)
		return "", false
	}
	u.keys()
	done := e.leave || u.In.Took(KeyEnter, Mods{})
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

// drawEdit draws the text being typed with its caret, which blinks.
func (u *UI) drawEdit(r Rect, align float64) {
	e := &u.edit
	in := r.Shrunk(8, 4)
	u.Push(r.Inset(2))
	defer u.Pop()
	text := string(e.text)
	x := in.X + align*(in.W-u.Width(text, Plain))
	before := u.Width(string(e.text[:e.caret]), Plain)
	if over := x + before - (in.X + in.W); over > 0 {
		x -= over
	}
	if e.all {
		u.Fill(Rect{x - 1, in.Y, u.Width(text, Plain) + 2, in.H}, Faded(u.Theme.Accent, 0.22))
	}
	u.Words(text, x, middle(r, Plain), 0, Plain, u.Theme.Ink)
	if !e.all && int(u.now*2)%2 == 0 {
		u.Fill(Rect{x + before, in.Y, 1, in.H}, u.Theme.Ink)
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
