package panel

// RowHeight is that of a button or a field, units.
const RowHeight = 30

// radius of the corners of controls, units.
const radius = 4

// middle returns the base line that centres a line of style s in r.
func middle(r Rect, s Style) float64 { return r.Y + r.H/2 + 0.36*s.Size }

// Button draws a button and reports a click on it.
func (u *UI) Button(id string, r Rect, label, help string) bool {
	return u.push(id, r, label, help, false)
}

// ButtonIf is a button that is dull and does nothing unless it can be pressed.
func (u *UI) ButtonIf(can bool, id string, r Rect, label, help string) bool {
	if can {
		return u.push(id, r, label, help, false)
	}
	t := u.touch(id, r, help) // it may be asked what it would do
	u.Frame(r, radius, 1, Faded(u.Theme.Rule, 0.6))
	u.ring(r, t)
	label, letters := u.squeezed(label, r.W-6)
	u.Words(label, r.X+r.W/2, middle(r, letters), 0.5, letters, Faded(u.Theme.Soft, faint))
	return false
}

// Toggle is a button that stays down while on.
func (u *UI) Toggle(id string, r Rect, label, help string, on bool) bool {
	return u.push(id, r, label, help, on)
}

func (u *UI) push(id string, r Rect, label, help string, on bool) bool {
	t := u.touch(id, r, help)
	ground, ink := u.Theme.Raised, u.Theme.Ink
	switch {
	case on:
		ground, ink = u.Theme.Ink, u.Theme.OnInk
	case t.held:
		ground = u.Theme.Sunken
	}
	u.Round(r, radius, ground)
	if !on {
		rim := u.Theme.Rule
		if t.over {
			rim = u.Theme.Soft
		}
		u.Frame(r, radius, 1, rim)
	}
	u.ring(r, t)
	label, letters := u.squeezed(label, r.W-6)
	u.Words(label, r.X+r.W/2, middle(r, letters), 0.5, letters, ink)
	return t.clicked
}

// Choice is a row of buttons of which one is on. It returns the number of the
// one that is on after this picture.
func (u *UI) Choice(id string, r Rect, labels, helps []string, on int) int {
	u.Round(r, radius, u.Theme.Sunken)
	for i, c := range u.shares(r, labels) {
		if i == on {
			u.Round(c.Inset(2), radius-1, u.Theme.Raised)
		}
		t := u.touch(id+"/"+labels[i], c, helps[min(i, len(helps)-1)])
		ink, s := u.Theme.Soft, Plain
		if i == on {
			ink, s = u.Theme.Ink, Strong
		} else if t.over {
			ink = u.Theme.Ink
		}
		label, s := u.squeezedFrom(labels[i], c.W-6, s)
		u.Words(label, c.X+c.W/2, middle(c, s), 0.5, s, ink)
		u.ring(c.Inset(2), t)
		if t.clicked {
			on = i
		}
	}
	return on
}

// shares divides r into columns for labels: of one width, unless that leaves too little
// for one of them; then each has the room it takes and an equal share of the rest.
func (u *UI) shares(r Rect, labels []string) []Rect {
	const inset = 10
	cols := r.Columns(len(labels), 0)
	total, most := 0.0, 0.0
	for _, l := range labels {
		w := u.Width(l, Strong) + inset
		total, most = total+w, max(most, w)
	}
	if len(labels) == 0 || most <= cols[0].W {
		return cols
	}
	x := r.X
	for i, l := range labels {
		w := u.Width(l, Strong) + inset
		if rest := r.W - total; rest > 0 {
			w += rest / float64(len(labels))
		} else {
			w *= r.W / total
		}
		cols[i].X, cols[i].W = x, w
		x += w
	}
	return cols
}

// Check is a box with words beside it. It returns whether the box is ticked
// after this picture.
func (u *UI) Check(id string, r Rect, label, help string, on bool) bool {
	t := u.touch(id, r, help)
	box := Rect{r.X, r.Y + r.H/2 - 8, 16, 16}
	u.Round(box, 3, u.Theme.Raised)
	rim := u.Theme.Rule
	if t.over {
		rim = u.Theme.Soft
	}
	u.Frame(box, 3, 1, rim)
	if on {
		u.Round(box, 3, u.Theme.Accent)
		u.Stroke([]Point{{box.X + 3.5, box.Y + 8.5}, {box.X + 6.8, box.Y + 11.8}, {box.X + 12.5, box.Y + 4.8}}, 2,
			u.Theme.OnInk)
	}
	u.ring(box, t)
	u.Words(u.Fit(label, r.W-24, Plain), r.X+24, middle(r, Plain), 0, Plain, u.Theme.Ink)
	if t.clicked {
		return !on
	}
	return on
}

// Radio is one of several of which one is on. It reports whether it was chosen.
func (u *UI) Radio(id string, r Rect, label, help string, on bool) bool {
	t := u.touch(id, r, help)
	at := Point{r.X + 8, r.Y + r.H/2}
	rim := u.Theme.Rule
	switch {
	case on:
		rim = u.Theme.Accent
	case t.over:
		rim = u.Theme.Soft
	}
	u.Disc(at, 8, rim)
	u.Disc(at, 7, u.Theme.Raised)
	if on {
		u.Disc(at, 4, u.Theme.Accent)
	}
	u.ring(Rect{at.X - 8, at.Y - 8, 16, 16}, t)
	u.Words(u.Fit(label, r.W-24, Plain), r.X+24, middle(r, Plain), 0, Plain, u.Theme.Ink)
	return t.clicked
}

// faint is how much of an ink is left where a column is dull.
const faint = 0.45
