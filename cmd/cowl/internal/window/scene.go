//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"
)

// sheetNow copies the cloth of a pane as it is now.
func (p *Pane) sheetNow() mesh.Sheet {
	s := p.view().Sheet
	s.Pos = append(s.Pos[:0:0], s.Pos...)
	return s
}

// scene is what the stage draws of a pane whose cloth lies as in sheet.
func (p *Pane) scene(sheet mesh.Sheet) stage.Scene {
	f := p.view()
	s := stage.Scene{Cloth: sheet, FoldY: f.Hung.FoldY, Grain: f.Job.Cowl.Grain}
	s.Form, s.Seams = &p.dummy.surface, p.dummy.seams
	if f.Job.Free {
		s.Form, s.Seams, s.Look.Form = p.dummy.hangerAt(f.Job.Cowl.CowlPoint), nil, stage.Wood
	}
	return s
}
