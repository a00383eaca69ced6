//go:build cgo

package window

import (
	"fmt"

	"cowl/cmd/cowl/internal/panel"
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
	if u.Button("back/now", in.Right(56).Shrunk(0, 9), "Now",
		"Back to the cloth as it hangs now. Keys R and B do the same.") {
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
	b.speed = u.Choice("back/speed", in.Left(128).Shrunk(0, 9), speedNames,
		[]string{"As fast as it fell, half as fast, a tenth as fast."}, b.speed)
	in.Left(12)
	s := panel.Slider{
		ID: "back/at", Label: "The fall", Help: "Drag to a moment of the fall.", Max: max(long, 0.1), Step: 0.1,
		Format: plain("%.1f s", 1), Parse: number("s", 1),
	}
	if at, ch := u.Slide(s, in, b.at); ch != panel.Same {
		b.at, b.playing = min(max(at, 0), long), false
	}
}
