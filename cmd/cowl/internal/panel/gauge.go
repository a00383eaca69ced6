package panel

import "image/color"

// Bar shows a share, 0 to 1.
func (u *UI) Bar(r Rect, share float64) {
	u.Round(r, r.H/2, u.Theme.Sunken)
	if w := r.W * min(max(share, 0), 1); w >= 1 {
		u.Round(Rect{r.X, r.Y, max(w, r.H), r.H}, r.H/2, u.Theme.Accent)
	}
}

// Legend shows a row of colours with values below its ends and its middle.
func (u *UI) Legend(r Rect, name string, at func(t float64) color.RGBA, labels [3]string) {
	head := r.Top(18)
	u.Words(u.Fit(name, head.W, Small), head.X, middle(head, Small), 0, Small, u.Theme.Ink)
	bar := r.Top(12)
	const steps = 64
	for i := range steps {
		x := bar.W * float64(i) / steps
		u.Fill(Rect{bar.X + x, bar.Y, bar.W/steps + 0.5, bar.H}, at((float64(i)+0.5)/steps))
	}
	foot := r.Top(18)
	for i, l := range labels {
		t := float64(i) / 2
		u.Words(l, foot.X+t*foot.W, middle(foot, Small), t, Small, u.Theme.Ink)
	}
}
