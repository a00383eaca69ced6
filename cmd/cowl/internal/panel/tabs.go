package panel

// tabTall is the height of a row of tabs, units.
const tabTall = 32

// Tabs is a Choice that stands over what it chooses: the one that is on carries a line
// of the accent. It takes one row off the top of r, or two where the words would become
// too small for one.
func (u *UI) Tabs(id string, r *Rect, labels, helps []string, on int) int {
	plain, strong, gap, rows := u.tabStyle(r.W, labels)
	per := (len(labels) + rows - 1) / rows
	for first := 0; first < len(labels); first += per {
		row := r.Top(tabTall)
		x := row.X
		for i := first; i < min(first+per, len(labels)); i++ {
			c := Rect{x, row.Y, u.Width(labels[i], strong), row.H}
			if u.tab(id+"/"+labels[i], c, gap, labels[i], helps[min(i, len(helps)-1)], [2]Style{plain, strong}, i == on) {
				on = i
			}
			x += c.W + gap
		}
		if first+per >= len(labels) {
			u.Rule(row, u.Theme.Rule)
		}
	}
	return on
}

func (u *UI) tab(id string, c Rect, gap float64, label, help string, letters [2]Style, on bool) bool {
	t := u.touch(id, c.Shrunk(-gap/2, 0), help)
	ink, s := u.Theme.Soft, letters[0]
	if on || t.over {
		ink = u.Theme.Ink
	}
	if on {
		s = letters[1]
		u.Fill(Rect{c.X, c.Y + c.H - 2, c.W, 2}, u.Theme.Accent)
	}
	u.Words(label, c.X+c.W/2, middle(c, s), 0.5, s, ink)
	u.ring(c.Shrunk(-3, 3), t)
	return t.clicked
}

// The gap between tabs, units.
const tabGap, tabGapMost = 8, 18

// tabStyle returns how tabs are written so that all go into wide units, the gap between
// them, and in how many rows.
func (u *UI) tabStyle(wide float64, labels []string) (plain, strong Style, gap float64, rows int) {
	for size := Plain.Size; size >= Small.Size; size -= 0.5 {
		plain, strong = Style{Size: size}, Style{Size: size, Bold: true}
		total := 0.0
		for _, l := range labels {
			total += u.Width(l, strong)
		}
		if gap = min((wide-total)/float64(len(labels)-1), tabGapMost); gap >= tabGap {
			return plain, strong, gap, 1
		}
	}
	return Plain, Strong, tabGapMost, 2
}
