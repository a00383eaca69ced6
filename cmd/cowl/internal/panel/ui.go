package panel

// UI is a panel. Between Begin and End, controls are called in the order in
// which they are drawn and reached with Tab; each answers at once.
type UI struct {
	List
	Theme   Theme
	Letters *Letters
	In      Input

	Help      string   // one line about what the mouse or the focus is on
	Complaint string   // why what was typed last was refused; set once
	Shortened []string // texts that had no room, in this picture
	Paste     func() string
	Copy      func(string)

	scale   float64
	wide    float64 // units
	tall    float64
	held    string // control that the mouse went down on
	focus   string // control that keys go to
	order   []string
	layer   string // what is being drawn: "" or the open sheet
	dialog  string // the sheet that is open over all else, "": none
	reveal  bool   // the focus moved by key: bring it into sight
	byKey   bool   // the focus came by key: it is marked
	focusAt Rect   // of the control that has the focus, in this picture
	edit    editing
	on      [2]string          // control that Help is about, in the last picture and in this one
	entered bool               // typing was ended by Enter in this picture
	places  map[string]Rect    // where controls were drawn last, as far as in sight
	offset  map[string]float64 // of scrolled areas, units
	now     float64            // s
}

// New returns a panel in the greys of cowl.
func New() *UI {
	return &UI{Theme: Greys(), Letters: NewLetters(), offset: map[string]float64{}, places: map[string]Rect{}}
}

// Begin starts a picture of w × h pixels, at scale pixels a unit; now is the
// time in s from any start.
func (u *UI) Begin(w, h int, scale, now float64) {
	if u.Letters.full {
		u.Letters.reset()
	}
	u.scale, u.now = scale, now
	u.wide, u.tall = float64(w)/scale, float64(h)/scale
	u.In.take(scale, now)
	u.List.begin(u.wide, u.tall, scale)
	clear(u.places)
	u.Shortened = u.Shortened[:0]
	u.on = [2]string{u.on[1], ""}
	u.order, u.Help, u.Complaint, u.layer, u.focusAt, u.entered = u.order[:0], "", "", "", Rect{}, false
	if u.In.Struck[LeftButton] && u.edit.id != "" {
		u.edit.leave = true // a click elsewhere ends typing, see field
	}
}

// Whole is the window in units.
func (u *UI) Whole() Rect { return Rect{0, 0, u.wide, u.tall} }

// End finishes a picture: Tab moves the focus, the mouse lets go.
func (u *UI) End() {
	u.reveal = false
	if u.In.Took(KeyTab, Mods{}) {
		u.step(1)
	}
	if u.In.Took(KeyTab, Mods{Shift: true}) {
		u.step(-1)
	}
	if u.focus != "" && u.In.Took(KeyEscape, Mods{}) {
		u.focus = ""
	}
	if u.In.Freed[LeftButton] || !u.In.Down[LeftButton] {
		u.held = ""
	}
	if u.edit.leave {
		u.edit = editing{}
	}
}

// step moves the focus by n controls, round the end.
func (u *UI) step(n int) {
	if len(u.order) == 0 {
		return
	}
	at := -1
	for i, id := range u.order {
		if id == u.focus {
			at = i
		}
	}
	switch {
	case at < 0 && n < 0:
		at = 0
	case at < 0:
		at = -1
	}
	u.Focus(u.order[(at+n+len(u.order))%len(u.order)])
	u.reveal, u.byKey = true, true
}

// Focus sends keys to a control, "" to none, from the next picture on.
func (u *UI) Focus(id string) {
	u.focus, u.edit = id, editing{}
}

// Focused returns the control that keys go to, "" if none.
func (u *UI) Focused() string { return u.focus }

// On returns the control that was under the mouse, or else had the focus, in the last picture.
func (u *UI) On() string { return u.on[0] }

// Typing reports whether letters go into a field.
func (u *UI) Typing() bool { return u.edit.id != "" }

// OpenDialog puts a sheet over all else, which alone answers; "" closes it.
func (u *UI) OpenDialog(name string) {
	if u.dialog != name {
		u.dialog = name
		u.Focus("")
	}
}

// Dialog returns the sheet that is open.
func (u *UI) Dialog() string { return u.dialog }

// OnDialog says that what is drawn from here on belongs to a sheet; "" is the
// window itself.
func (u *UI) OnDialog(name string) { u.layer = name }

// Sheet dims the window and draws a sheet in its middle, of a size in units or as the
// window allows; it returns the room on it.
func (u *UI) Sheet(wide, tall float64) Rect {
	whole := u.Whole()
	u.Fill(whole, Faded(u.Theme.Ink, 0.45))
	r := Rect{W: min(wide, whole.W-40), H: min(tall, whole.H-40)}
	r.X, r.Y = (whole.W-r.W)/2, (whole.H-r.H)/2
	u.Round(r, 8, u.Theme.Ground)
	return r.Inset(28)
}

// awake reports whether what is being drawn answers to mouse and keys.
func (u *UI) awake() bool { return u.dialog == u.layer }

// Over reports whether the mouse is on r, as far as r is in sight and nothing
// else holds the mouse.
func (u *UI) Over(r Rect) bool {
	return u.awake() && u.In.Present && r.Meet(u.Clip()).Has(u.In.X, u.In.Y)
}

// touch is how a control is being used.
type touch struct {
	over, held, focus bool
	struck            bool // the mouse went down on it
	clicked           bool // let go on it, or its key was pressed
}

// touch lets mouse and keys act on the control id at r.
func (u *UI) touch(id string, r Rect, help string) touch {
	if !u.awake() {
		return touch{}
	}
	u.order = append(u.order, id)
	u.places[id] = r.Meet(u.Clip())
	t := touch{over: u.Over(r) && (u.held == "" || u.held == id)}
	if t.over && u.In.Struck[LeftButton] && u.held == "" {
		u.held, u.focus, u.byKey, t.struck = id, id, false, true
		if u.edit.id == id {
			u.edit.leave = false
		}
	}
	t.held, t.focus = u.held == id, u.focus == id
	if t.focus {
		u.focusAt = r
	}
	t.clicked = t.held && t.over && u.In.Freed[LeftButton]
	if t.focus && u.edit.id != id && (u.In.Took(KeyEnter, Mods{}) || u.In.Took(KeySpace, Mods{})) {
		t.clicked = true
	}
	if t.over || t.focus && u.Help == "" {
		u.Help, u.on[1] = help, id
	}
	return t
}

// Use is how an area that is not a control is being used.
type Use struct {
	Over, Held, Focus bool
	Struck, Clicked   bool
}

// Area makes r a stop of Tab that answers to the left button, for whoever draws
// there.
func (u *UI) Area(id string, r Rect, help string) Use {
	t := u.touch(id, r, help)
	return Use{t.over, t.held, t.focus, t.struck, t.clicked}
}

// Hint gives the help for what is drawn at r and answers to nothing.
func (u *UI) Hint(id string, r Rect, help string) {
	if u.Over(r) && u.held == "" {
		u.Help, u.on[1] = help, id
	}
}

// Ring marks an area that has the focus, if that came by key.
func (u *UI) Ring(r Rect, t Use) { u.ring(r, touch{focus: t.Focus}) }

// Place returns where a control was last drawn, in units, and whether it was.
func (u *UI) Place(id string) (Rect, bool) {
	r, ok := u.places[id]
	return r, ok && !r.Empty()
}

// ring marks the control that has the focus.
func (u *UI) ring(r Rect, t touch) {
	if t.focus && u.byKey {
		u.Frame(r.Inset(-2), 5, 1.5, u.Theme.Accent)
	}
}
