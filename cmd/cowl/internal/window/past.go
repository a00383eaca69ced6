//go:build cgo

package window

import (
	"sort"

	"cowl/sim/drape"
)

// past is how a pane came to hang as it does: moments of the way from the last change,
// and the rest before that change.
type past struct {
	moments []moment
	every   float64      // s between them; doubled when there is no more room
	began   float64      // s, of the first
	rest    *drape.Frame // the last rest
	former  *drape.Frame // the one before the last change, nil: none
}

// moment is what was seen so many seconds after the way began.
type moment struct {
	at    float64
	frame *drape.Frame
}

// What moments are kept.
const (
	momentEvery = 0.04     // s, at first
	momentBytes = 24 << 20 // of one pane
	leastKept   = 24
	mostMoments = 500
)

// begin starts a new way: what rested so far is what was before.
func (h *past) begin() {
	if h.rest != nil {
		h.former = h.rest
	}
	h.moments, h.rest = nil, nil
}

// keep takes a moment up. Where there is no more room every second one goes, so that the
// whole way is kept.
func (h *past) keep(f *drape.Frame, now float64) {
	n := len(h.moments)
	if n == 0 {
		h.began, h.every = now, momentEvery
	}
	at := now - h.began
	rests := f.Stage == drape.StageRest
	if n > 0 && !rests && at < h.moments[n-1].at+h.every {
		return
	}
	c := copied(f)
	h.moments = append(h.moments, moment{at, c})
	if rests {
		h.rest = c
	}
	if most := min(max(momentBytes/(24*max(len(f.Sheet.Pos), 1)), leastKept), mostMoments); n+1 > most {
		for k := range (n + 2) / 2 {
			h.moments[k] = h.moments[min(2*k, n)]
		}
		h.moments, h.every = h.moments[:(n+2)/2], 2*h.every
		h.moments[len(h.moments)-1] = moment{at, c}
	}
}

// copied is a frame with places of its own; fields of maps are kept of a rest alone.
func copied(f *drape.Frame) *drape.Frame {
	c := *f
	c.Sheet.Pos = append(c.Sheet.Pos[:0:0], f.Sheet.Pos...)
	c.Strain, c.Shear, c.Clear = nil, nil, nil
	if f.Stage == drape.StageRest {
		c.Strain = append(c.Strain, f.Strain...)
		c.Shear = append(c.Shear, f.Shear...)
		c.Clear = append(c.Clear, f.Clear...)
	}
	return &c
}

// long is how long the way kept is, s.
func (h *past) long() float64 {
	if n := len(h.moments); n > 0 {
		return h.moments[n-1].at
	}
	return 0
}

// seenAt returns what was seen at a time of the way, s; nil where nothing is kept.
func (h *past) seenAt(at float64) *drape.Frame {
	k := sort.Search(len(h.moments), func(i int) bool { return h.moments[i].at > at })
	if len(h.moments) == 0 {
		return nil
	}
	return h.moments[max(k-1, 0)].frame
}

// lookback is the window looking at what was: the fall once more, or the rest before.
type lookback struct {
	replay, former bool
	at             float64 // s, of the replay
	playing        bool
	speed          int // of speeds
	last           float64
}

// speeds of the replay, as a part of that of the fall.
var (
	speeds     = []float64{1, 0.5, 0.1}
	speedNames = []string{"1×", "½×", "¹⁄₁₀×"}
)
