//go:build cgo

package window

import "testing"

// The eye glides to a named view and stands there; taken by the user it stays where it is.
func TestCameraGlides(t *testing.T) {
	from, to := Orbit{Away: 2}, Orbit{Away: 1, Azimuth: 1}
	c := camera{eye: from, named: -1}
	c.head(to, 2, 10)
	c.glide(10.1)
	if c.eye == from || c.eye == to || c.goal == nil || c.named != 2 {
		t.Errorf("0.1 s on its way the eye is %+v, named %d, want it between %+v and %+v", c.eye, c.named, from, to)
	}
	on := c
	on.freely()
	on.glide(11)
	if on.eye != c.eye || on.named != -1 {
		t.Errorf("taken by the user the eye went to %+v, named %d, want it to stay at %+v", on.eye, on.named, c.eye)
	}
	c.glide(10 + glideTime)
	if c.eye != to || c.goal != nil || c.named != 2 {
		t.Errorf("after %.2f s the eye is %+v, want %+v", glideTime, c.eye, to)
	}
}
