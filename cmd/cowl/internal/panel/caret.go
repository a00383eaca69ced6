package panel

// caretAt returns the place in the text under the mouse.
func (u *UI) caretAt(r Rect, align float64) int {
	x := u.textAt(r, align)
	best, off := 0, -1.0
	for k := range len(u.edit.text) + 1 {
		d := u.In.X - x - u.Width(string(u.edit.text[:k]), Plain)
		if d = max(d, -d); off < 0 || d < off {
			best, off = k, d
		}
	}
	return best
}

// textAt returns where the text being typed begins, so that the caret is in sight.
func (u *UI) textAt(r Rect, align float64) float64 {
	in := r.Shrunk(8, 4)
	x := in.X + align*(in.W-u.Width(string(u.edit.text), Plain))
	before := u.Width(string(u.edit.text[:u.edit.caret]), Plain)
	return min(max(x, in.X-before), in.X+in.W-before)
}
