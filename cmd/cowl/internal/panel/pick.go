package panel

// Item is a row of a list.
type Item struct {
	Name, Note string // the second line is lesser
	Brief      string // in place of Note where there is no room for it
	Sign       string // at the right end of the second line
}

// itemHeight is that of a row, units.
const itemHeight = 42

// Pick is a list of which one row is on; on is −1 for none. It returns the
// number of the row that is on after this picture.
func (u *UI) Pick(id string, r Rect, items []Item, on int, help string) int {
	u.Round(r, radius, u.Theme.Raised)
	u.Frame(r, radius, 1, u.Theme.Rule)
	in := r.Inset(1)
	in.W -= barWide + 4
	t := u.touch(id, in, help)
	was := on
	if t.focus {
		on = u.pickKeys(items, on)
		if on != was && on >= 0 {
			top := in.Y - u.offset[id] + float64(on)*itemHeight
			u.Reveal(id, in.Y, in.H, top, top+itemHeight)
		}
	}
	u.Scroll(id, in, func(c *Column) {
		for i, item := range items {
			row := c.Next(itemHeight)
			if row.Meet(u.Clip()).Empty() {
				continue
			}
			if t.clicked && u.Over(row) && u.In.Freed[LeftButton] {
				on = i
			}
			u.item(row, item, i == on, u.Over(row))
		}
	})
	u.ring(r.Inset(2), t)
	return on
}

func (u *UI) item(row Rect, item Item, on, over bool) {
	name := Plain
	switch {
	case on:
		u.Fill(row, Faded(u.Theme.Accent, 0.13))
		u.Fill(Rect{row.X, row.Y, 3, row.H}, u.Theme.Accent)
		name = Strong
	case over:
		u.Fill(row, Faded(u.Theme.Sunken, 0.5))
	}
	in := row.Shrunk(11, 4)
	top, low := in.Top(in.H/2), in
	sign := u.Width(item.Sign, Small)
	text, name := u.squeezedFrom(item.Name, top.W, name)
	u.Words(text, top.X, middle(top, name), 0, name, u.Theme.Ink)
	u.Words(item.Sign, low.X+low.W, middle(low, Small), 1, Small, u.Theme.Soft)
	note := item.Note
	if item.Brief != "" && u.Width(note, Small) > low.W-sign-8 {
		note = item.Brief
	}
	u.Words(u.Fit(note, low.W-sign-8, Small), low.X, middle(low, Small), 0, Small, u.Theme.Soft)
}

// pickKeys moves the choice by keys.
func (u *UI) pickKeys(items []Item, on int) int {
	n := len(items)
	if n == 0 {
		return on
	}
	for _, k := range []struct {
		key Key
		by  int
	}{{KeyUp, -1}, {KeyDown, 1}, {KeyPageUp, -5}, {KeyPageDown, 5}, {KeyHome, -n}, {KeyEnd, n}} {
		for u.In.Took(k.key, Mods{}) {
			on = min(max(on+k.by, 0), n-1)
		}
	}
	return on
}
