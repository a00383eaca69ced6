//go:build cgo

package window

import "time"

// times are those of the pictures of a window, s since its start.
type times struct {
	start time.Time
	now   float64
	last  float64 // of the last picture
	moved float64 // when a pane last changed
	awake float64 // until when every picture is drawn
}

// calm is how long nothing must have moved before a slow driver takes the time
// for shadows and smooth rims, s.
const calm = 0.2

// clockNow is the time since the start, s.
func (t *times) clockNow() float64 { return time.Since(t.start).Seconds() }

// stir has every picture drawn for a while.
func (t *times) stir() { t.awake = t.now + 2*calm }
