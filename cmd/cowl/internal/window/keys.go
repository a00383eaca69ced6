//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/panel"
)

// shortcut is a key with what it does.
type shortcut struct {
	key   panel.Key
	mods  panel.Mods
	sign  string
	words string
	do    func(*App)
}

var ctrl = panel.Mods{Ctrl: true}

// shortcuts lists all keys that work wherever the focus is, except in a field.
var shortcuts = []shortcut{
	{panel.Key0 + 1, panel.Mods{}, "1", "view of the cowl", func(a *App) { a.look(0) }},
	{panel.Key0 + 2, panel.Mods{}, "2", "three-quarter view", func(a *App) { a.look(1) }},
	{panel.Key0 + 3, panel.Mods{}, "3", "side view", func(a *App) { a.look(2) }},
	{panel.Key0 + 4, panel.Mods{}, "4", "top view", func(a *App) { a.look(3) }},
	{panel.KeyPlus, panel.Mods{}, "+", "come nearer", func(a *App) { a.zoom(1) }},
	{panel.KeyPlus, panel.Mods{Shift: true}, "", "", func(a *App) { a.zoom(1) }},
	{panel.KeyMinus, panel.Mods{}, "−", "go farther", func(a *App) { a.zoom(-1) }},
	{panel.Letter('v'), panel.Mods{}, "V", "look: turn the view", func(a *App) { a.useTool(toolLook) }},
	{panel.Letter('g'), panel.Mods{}, "G", "grab the cloth", func(a *App) { a.useTool(toolGrab) }},
	{panel.Letter('p'), panel.Mods{}, "P", "pin the cloth", func(a *App) { a.useTool(toolPin) }},
	{panel.Letter('u'), panel.Mods{}, "U", "take a pin out", func(a *App) { a.useTool(toolUnpin) }},
	{panel.Letter('c'), panel.Mods{}, "C", "tape: lay it along the cloth", func(a *App) { a.useTool(toolTape) }},
	{panel.Letter('n'), panel.Mods{}, "N", "write: an arrow or a title", func(a *App) { a.useTool(toolWrite) }},
	{panel.Letter('k'), panel.Mods{}, "K", "large pointer", func(a *App) { a.pointing = !a.pointing }},
	{panel.KeyBackspace, panel.Mods{}, "Backspace, Delete", "take the last mark back, or all",
		func(a *App) { a.takeBack(false) }},
	{panel.KeyDelete, panel.Mods{}, "", "", func(a *App) { a.takeBack(true) }},
	{panel.Letter('l'), panel.Mods{}, "L", "let go of what is held", func(a *App) { a.letGo() }},
	{panel.Letter('a'), panel.Mods{}, "A", "again: another placing", func(a *App) { a.again() }},
	{panel.Letter('h'), panel.Mods{}, "H", "hang by five hands", (*App).hangByFive},
	{panel.Letter('m'), panel.Mods{}, "M", "next map on the cloth",
		func(a *App) { a.show = (a.show + 1) % mapKind(len(maps)) }},
	{panel.Letter('f'), panel.Mods{}, "F", "form on or off", func(a *App) { a.noForm = !a.noForm }},
	{panel.Letter('t'), panel.Mods{}, "T", "see-through cloth", func(a *App) { a.through = !a.through }},
	{panel.Letter('d'), panel.Mods{}, "D", "flat piece beside the drape", func(a *App) { a.flat = !a.flat }},
	{panel.Letter('w'), panel.Mods{}, "W", "one warp, weft and bias line", (*App).switchTrace},
	{panel.Letter('i'), panel.Mods{}, "I", "table of all figures", func(a *App) { a.ui.OpenDialog(figuresDialog) }},
	{panel.Letter('r'), panel.Mods{}, "R", "replay the fall", (*App).replayFall},
	{panel.Letter('b'), panel.Mods{}, "B", "flip: before the last change, and now", (*App).flip},
	{panel.Letter('z'), ctrl, "Ctrl+Z", "undo", (*App).undo},
	{panel.Letter('y'), ctrl, "Ctrl+Y", "redo", (*App).redo},
	{panel.Letter('z'), panel.Mods{Ctrl: true, Shift: true}, "", "", (*App).redo},
	{panel.Letter('s'), ctrl, "Ctrl+S", "save the style", (*App).saveStyle},
	{panel.Letter('o'), ctrl, "Ctrl+O", "open a style or a fabric",
		func(a *App) { a.tab = tabFiles; a.ui.Focus("open/path") }},
	{panel.Letter('p'), ctrl, "Ctrl+P", "save a picture, twice the size", func(a *App) { a.savePicture(2) }},
	{panel.Key0 + 1, ctrl, "Ctrl+1 … 4", "one to four drapes side by side", func(a *App) { a.setCount(1) }},
	{panel.Key0 + 2, ctrl, "", "", func(a *App) { a.setCount(2) }},
	{panel.Key0 + 3, ctrl, "", "", func(a *App) { a.setCount(3) }},
	{panel.Key0 + 4, ctrl, "", "", func(a *App) { a.setCount(4) }},
	{panel.Letter('l'), ctrl, "Ctrl+L", "large letters", func(a *App) { a.setLarge(!a.set.Large) }},
	{panel.KeyF9, panel.Mods{}, "F9, F10", "controls, readings away or back", func(a *App) { away(&a.set.Sides.Left) }},
	{panel.KeyF10, panel.Mods{}, "", "", func(a *App) { away(&a.set.Sides.Right) }},
	{panel.KeyF11, panel.Mods{}, "F11", "full screen, panels away", (*App).fullScreen},
	{panel.Letter('q'), ctrl, "Ctrl+Q", "quit; the style is kept safe", func(a *App) { a.quit = true }},
}

// More keys for the list under F1, which controls answer to themselves.
var moreKeys = [][2]string{
	{"Tab, Shift+Tab", "go from control to control"},
	{"Enter, Space", "press a button, type in a field"},
	{"Arrows", "move a slider or a choice, or turn the view"},
	{"Up, Down", "draw a mark of the section up or down"},
	{"Shift+Arrows", "move the view sideways"},
	{"Page Up, Page Down", "move a slider ten steps"},
	{"Escape", "leave a field, close a sheet"},
}

const keysDialog = "keys"

// away puts a panel away, or brings it back.
func away(s *Side) { s.Away = !s.Away }

// keys lets the keys act that no control took.
func (a *App) keys() {
	in := &a.ui.In
	if in.Took(panel.KeyF1, panel.Mods{}) {
		if a.ui.Dialog() == keysDialog {
			a.ui.OpenDialog("")
		} else {
			a.ui.OpenDialog(keysDialog)
		}
	}
	if a.ui.Dialog() != "" {
		if in.Took(panel.KeyEscape, panel.Mods{}) {
			a.ui.OpenDialog("")
		}
		return
	}
	if a.ui.Typing() {
		return
	}
	switch esc := in.Took(panel.KeyEscape, panel.Mods{}); {
	case esc && a.ui.Focused() != "":
		a.ui.Focus("")
	case esc && !a.cancel() && a.display.full:
		a.fullScreen()
	}
	for _, s := range shortcuts {
		for in.Took(s.key, s.mods) {
			s.do(a)
		}
	}
}

// dialogs draws what lies over all else.
func (a *App) dialogs() {
	switch name := a.ui.Dialog(); name {
	case keysDialog:
		a.ui.OnDialog(name)
		a.drawKeys()
	case figuresDialog:
		a.ui.OnDialog(name)
		a.drawFigures()
	case offerDialog:
		a.ui.OnDialog(name)
		a.drawOffer()
	}
	a.ui.OnDialog("")
}

// drawKeys lists the keys.
func (a *App) drawKeys() {
	u := a.ui
	in := u.Sheet(860, 520)
	head := in.Top(40)
	u.Words("Keys", head.X, head.Y+20, 0, panel.Title, u.Theme.Ink)
	if u.Button("keys/close", head.Right(90).Shrunk(0, 4), "Close", "Escape closes it too.") {
		u.OpenDialog("")
	}
	var rows [][2]string
	for _, s := range shortcuts {
		if s.sign != "" {
			rows = append(rows, [2]string{s.sign, s.words})
		}
	}
	rows = append(rows, moreKeys...)
	half := (len(rows) + 1) / 2
	in.W -= 6
	u.Scroll("keys/list", in, func(c *panel.Column) {
		wide := [2]float64{a.keyWidth(rows[:half]), a.keyWidth(rows[half:])}
		for i := range half {
			row := c.Next(26)
			left := row.Left(0.4 * row.W)
			a.keyRow(left, rows[i], wide[0])
			if i+half < len(rows) {
				a.keyRow(row, rows[i+half], wide[1])
			}
		}
	})
}

// keyWidth is how much room the longest of some keys takes, units.
func (a *App) keyWidth(rows [][2]string) (wide float64) {
	for _, row := range rows {
		wide = max(wide, a.ui.Width(row[0], panel.Strong)+20)
	}
	return wide
}

// keyRow writes a key and what it does.
func (a *App) keyRow(r panel.Rect, row [2]string, wide float64) {
	u, y := a.ui, r.Y+18
	u.Words(row[0], r.X, y, 0, panel.Strong, u.Theme.Ink)
	u.Words(u.Fit(row[1], r.W-wide, panel.Plain), r.X+wide, y, 0, panel.Plain, u.Theme.Ink)
}
