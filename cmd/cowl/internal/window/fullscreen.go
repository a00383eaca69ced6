//go:build cgo

package window

import (
	"github.com/go-gl/glfw/v3.3/glfw"
)

// display is how the window lies on the screen.
type display struct {
	full  bool   // it fills it, and the panels are away
	want  bool   // as it is to be
	place [4]int // x, y, width and height before it was made full
}

// follow makes the window fill the screen, or takes it back, as was asked for.
func (s *display) follow(w *glfw.Window) {
	if s.want == s.full {
		return
	}
	s.full = s.want
	if !s.full {
		if s.place[2] > 0 { // it was taken to a monitor
			w.SetMonitor(nil, s.place[0], s.place[1], s.place[2], s.place[3], 0)
		}
		return
	}
	m := under(w)
	if m == nil {
		return // the panels go away all the same
	}
	x, y := w.GetPos()
	wide, tall := w.GetSize()
	s.place = [4]int{x, y, wide, tall}
	mode := m.GetVideoMode()
	w.SetMonitor(m, 0, 0, mode.Width, mode.Height, mode.RefreshRate)
}

// under returns the monitor on which most of the window lies, nil where there is none.
func under(w *glfw.Window) (best *glfw.Monitor) {
	x, y := w.GetPos()
	wide, tall := w.GetSize()
	most := -1
	for _, m := range glfw.GetMonitors() {
		mx, my := m.GetPos()
		mode := m.GetVideoMode()
		dx := max(0, min(x+wide, mx+mode.Width)-max(x, mx))
		dy := max(0, min(y+tall, my+mode.Height)-max(y, my))
		if dx*dy > most {
			best, most = m, dx*dy
		}
	}
	return best
}
