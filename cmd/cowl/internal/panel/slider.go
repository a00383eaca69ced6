package panel

import "math"

// Slider says what a number may be and how it is written.
type Slider struct {
	ID, Label, Help string
	Min, Max        float64
	Step            float64 // of an arrow key
	Format          func(float64) string
	Parse           func(string) (float64, error) // refuses what is out of range
	Off             bool                          // dull: there is nothing to set now
}

// Change says what a control did to its value in this picture.
type Change int

// The changes.
const (
	Same   Change = iota
	Moving        // the mouse still holds it
	Set           // changed for good
)

// SliderHeight is the height of a slider with its label, units.
const SliderHeight = 46

// Slide draws a slider with its label and a field for a typed value in r, and
// returns its value.
func (u *UI) Slide(s Slider, r Rect, v float64) (float64, Change) {
	if s.Off {
		return u.dullSlide(s, r, v)
	}
	head := r.Top(24)
	field := head.Right(84)
	u.sliderLabel(s.Label, head)
	typed, done := u.slideField(s, field, v)
	if done {
		return typed, Set
	}
	r.Top(2)
	return u.track(s, r.Top(18), v)
}

// sliderLabel writes a label, in smaller letters or on two lines where there is less room.
func (u *UI) sliderLabel(label string, r Rect) {
	if u.Width(label, Small) <= r.W-6 {
		text, letters := u.squeezed(label, r.W-6)
		u.Words(text, r.X, middle(r, letters), 0, letters, u.Theme.Ink)
		return
	}
	for i, text := range u.Wrap(label, r.W-6, Small) {
		u.Words(text, r.X, r.Y+9+13*float64(i), 0, Small, u.Theme.Ink)
	}
}

// dullSlide keeps the place of a slider that cannot be set.
func (u *UI) dullSlide(s Slider, r Rect, v float64) (float64, Change) {
	head := r.Top(24)
	ink := Faded(u.Theme.Soft, faint)
	u.Words(s.Label, head.X, middle(head, Plain), 0, Plain, ink)
	u.Words(s.Format(v), head.X+head.W-8, middle(head, Plain), 1, Plain, ink)
	r.Top(2)
	track := r.Top(18)
	u.touch(s.ID, track, s.Help)
	u.Round(track.Shrunk(7, 7), 2, Faded(u.Theme.Sunken, faint))
	return v, Same
}

// slideField is the typed value; what cannot be read stays, with the reason in
// Complaint.
func (u *UI) slideField(s Slider, r Rect, v float64) (float64, bool) {
	id := s.ID + "/typed"
	t := u.touch(id, r, s.Help+" Type a value and press Enter.")
	text, done := u.typed(id, r, s.Format(v), "", 1, t)
	if !done {
		return v, false
	}
	if text == s.Format(v) {
		u.edit = editing{}
		return v, false
	}
	x, err := s.Parse(text)
	if err != nil {
		u.Complaint = err.Error()
		u.edit.broken = true
		if u.edit.leave {
			u.edit = editing{}
		}
		return v, false
	}
	u.edit = editing{}
	return x, true
}

// track is the bar with its knob.
func (u *UI) track(s Slider, r Rect, v float64) (float64, Change) {
	t := u.touch(s.ID, r, s.Help)
	const knob = 7
	from, to := r.X+knob, r.X+r.W-knob
	change := Same
	if t.held {
		share := (u.In.X - from) / max(to-from, 1)
		if x := s.snap(s.Min + share*(s.Max-s.Min)); x != v {
			v, change = x, Moving
		}
		if u.In.Freed[LeftButton] {
			change = Set
		}
	}
	if x, ok := u.arrows(s, t, v); ok {
		v, change = x, Set
	}
	share := min(max((v-s.Min)/max(s.Max-s.Min, 1e-9), 0), 1)
	at, y := from+share*(to-from), r.Y+r.H/2
	u.Round(Rect{from, y - 2, to - from, 4}, 2, u.Theme.Sunken)
	u.Round(Rect{from, y - 2, at - from, 4}, 2, u.Theme.Soft)
	fill := u.Theme.Raised
	if t.held {
		fill = u.Theme.Accent
	}
	rim := u.Theme.Soft
	if t.over || t.focus || t.held {
		rim = u.Theme.Accent
	}
	u.Disc(Point{at, y}, knob, rim)
	u.Disc(Point{at, y}, knob-1.5, fill)
	u.ring(Rect{at - knob, y - knob, 2 * knob, 2 * knob}, t)
	return v, change
}

// snap rounds to whole steps within the range.
func (s Slider) snap(v float64) float64 {
	v = min(max(v, s.Min), s.Max)
	if s.Step > 0 {
		v = min(max(math.Round(v/s.Step)*s.Step, s.Min), s.Max)
	}
	return v
}

// arrows moves the value by keys: arrows a step, page keys ten.
func (u *UI) arrows(s Slider, t touch, v float64) (float64, bool) {
	if !t.focus {
		return v, false
	}
	was := v
	for _, k := range []struct {
		key Key
		by  float64
	}{{KeyLeft, -1}, {KeyRight, 1}, {KeyDown, -1}, {KeyUp, 1}, {KeyPageDown, -10}, {KeyPageUp, 10}} {
		for u.In.Took(k.key, Mods{}) {
			v = s.snap(v + k.by*s.Step)
		}
	}
	if u.In.Took(KeyHome, Mods{}) {
		v = s.Min
	}
	if u.In.Took(KeyEnd, Mods{}) {
		v = s.Max
	}
	return v, v != was
}
