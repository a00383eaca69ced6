//go:build cgo

package window

// camera is the eye that looks at all panes, and where it is going.
type camera struct {
	eye   Orbit
	goal  *Orbit  // where the eye is gliding to; nil: it stands
	stand float64 // s, when it began to glide
	named int     // the named view it stands at, −1: another
	shape float64 // of the narrowest pane, width over height
}

// glideTime is how long the eye takes to a named view, s.
const glideTime = 0.25

// head begins to glide to a named view; now is in s.
func (c *camera) head(to Orbit, view int, now float64) {
	c.goal, c.stand, c.named = &to, now, view
}

// freely lets go of the named view: the user moves the eye.
func (c *camera) freely() { c.goal, c.named = nil, -1 }

// zoom brings the eye so many steps nearer.
func (c *camera) zoom(steps float64) {
	c.eye.Zoom(steps)
	c.freely()
}

// glide moves the eye on; now is in s.
func (c *camera) glide(now float64) {
	if c.goal == nil {
		return
	}
	t := (now - c.stand) / glideTime
	if t >= 1 {
		c.eye, c.goal = *c.goal, nil
		return
	}
	c.eye = c.eye.Towards(*c.goal, t*t*(3-2*t)*0.35)
}
