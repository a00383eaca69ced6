package main

import (
	"runtime"

	"cowl/cmd/cowl/internal/memory"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// affordable is that of one drape by all its hands.
func (h *hung) affordable() error {
	drapes := h.Style.Hang.Placings
	if h.Style.Hang.Folds == drape.Auto {
		drapes = max(drapes, memory.Tries)
	}
	return memory.Afford(memory.Points(h.Cowl, h.Style.Job(h.Cowl, h.Form).FinestSpacing()), drapes,
		runtime.GOMAXPROCS(0), "a wider --spacing or fewer --placings")
}

// viewable is affordable for so many panes of a window that hang p, the front of s, on
// forms of their own.
func viewable(s style.Style, p draft.Cowl, panes int) error {
	return memory.Afford(memory.Points(p, s.Job(p, nil).Spacing), panes, panes, "a wider spacing")
}
