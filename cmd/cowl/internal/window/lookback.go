//go:build cgo

package window

import (
	"fmt"
	"sort"

	"cowl/cmd/cowl/internal/panel"
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

// replayFall shows the fall from its beginning, or comes back to now.
func (a *App) replayFall() {
	a.back = lookback{replay: !a.back.replay, playing: true, speed: a.back.speed, last: a.now}
}

// flip shows the rest before the last change, or comes back to now.
func (a *App) flip() {
	if !a.back.former && a.pane().past.former == nil {
		a.say("There is no drape before this one: change something and let it come to rest.")
		return
	}
	a.back = lookback{former: !a.back.former, speed: a.back.speed}
}

// lookBack chooses what every pane shows in this picture.
func (a *App) lookBack() {
	b := &a.back
	if b.playing {
		b.at += speeds[b.speed] * min(a.now-b.last, 0.1)
		long := 0.0
		for _, p := range a.panes {
			long = max(long, p.past.long())
		}
		if b.at >= long {
			b.at, b.playing = long, !a.pane().still()
		}
	}
	b.last = a.now
	for _, p := range a.panes {
		switch {
		case b.former && p.past.former != nil:
			p.look = p.past.former
		case b.replay:
			p.look = p.past.seenAt(b.at)
		default:
			p.look = nil
		}
	}
}

// view is what is seen of a pane: the present, or what is looked back at.
func (p *Pane) view() *drape.Frame {
	if p.look != nil {
		return p.look
	}
	return &p.frame
}

// backWords says what is looked back at; empty for the present.
func (a *App) backWords(p *Pane) string {
	switch {
	case p.look == nil:
		return ""
	case a.back.former:
		return "Before the change"
	}
	return fmt.Sprintf("Replay, %.1f s", a.back.at)
}

// backTall is the height of the row that drives the replay, units.
const backTall = 62

// replayBar is the row over the foot of the view that drives the replay.
func (a *App) replayBar(r panel.Rect) {
	u, b := a.ui, &a.back
	if !b.replay && !b.former {
		return
	}
	row := r.Bottom(backTall)
	u.Fill(row, panel.Faded(u.Theme.Ground, 0.92))
	in := row.Shrunk(12, 6)
	if u.Button("back/now", in.Right(56).Shrunk(0, 9), "Now", "Back to the cloth as it hangs now. Keys R and B do the same.") {
		a.back = lookback{speed: b.speed}
		return
	}
	in.Right(10)
	if b.former {
		text := "The rest before the last change. B flips between it and now."
		u.Words(u.Fit(text, in.W, panel.Plain), in.X, in.Y+30, 0, panel.Plain, u.Theme.Ink)
		return
	}
	word := "Play"
	if b.playing {
		word = "Pause"
	}
	long := a.pane().past.long()
	if u.Button("back/play", in.Left(64).Shrunk(0, 9), word, "Stops the replay and lets it go on.") {
		b.playing = !b.playing
		if b.playing && b.at >= long {
			b.at = 0
		}
	}
	in.Left(8)
	b.speed = u.Choice("back/speed", in.Left(128).Shrunk(0, 9), speedNames, []string{"As fast as it fell, half as fast, a tenth as fast."}, b.speed)
	in.Left(12)
	s := panel.Slider{
		ID: "back/at", Label: "The fall", Help: "Drag to a moment of the fall.", Max: max(long, 0.1), Step: 0.1,
		Format: plain("%.1f s", 1), Parse: number("s", 1),
	}
	if at, ch := u.Slide(s, in, b.at); ch != panel.Same {
		b.at, b.playing = min(max(at, 0), long), false
	}
}
