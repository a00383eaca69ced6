//go:build cgo

package window

import (
	"path/filepath"
	"time"

	"cowl/cmd/cowl/internal/panel"
)

const offerDialog = "offer"

// offer asks whether to go on with a style that was not saved, unless it was asked
// before.
func (a *App) offer() {
	a.shelf().adopt(filepath.Join(a.opt.Config, "unsaved-style.yaml"))
	list := a.shelf().list()
	if len(list) == 0 || a.opt.Frames > 0 || !list[0].when.After(a.set.Asked) {
		return
	}
	a.set.Asked = list[0].when
	a.offered = offering{list: list, from: time.Now()}
	a.ui.OpenDialog(offerDialog)
}

// drawOffer names what was not saved and asks the question.
func (a *App) drawOffer() {
	u, o := a.ui, &a.offered
	in := u.Sheet(520, 212+42*float64(min(len(o.list), 5)))
	u.Words("Go on where you stopped?", in.X, in.Y+18, 0, panel.Title, u.Theme.Ink)
	in.Top(32)
	for _, text := range u.Wrap("These were changed and not saved. They stay kept under Files, the last ten, whatever "+
		"you choose here.", in.W, panel.Plain) {
		line := in.Top(20)
		u.Words(text, line.X, line.Y+14, 0, panel.Plain, u.Theme.Ink)
	}
	in.Top(8)
	b := in.Bottom(panel.RowHeight+2).Columns(2, 12)
	in.Bottom(14)
	items := make([]panel.Item, len(o.list))
	for i, k := range o.list {
		items[i].Name, items[i].Note, items[i].Sign = k.words(o.from)
	}
	o.on = u.Pick("offer/list", in, items, o.on, "Choose one; arrow keys go through the list.")
	switch {
	case u.Button("offer/yes", b[0], "Go on with it", "Opens the style that is chosen above."):
		u.OpenDialog("")
		a.takeKept(o.list[max(o.on, 0)])
	case u.Button("offer/no", b[1], "Begin with "+a.pane().Style.Name,
		"They are not offered at the next start, and stay under Files."):
		u.OpenDialog("")
	}
}

// takeKept opens a style of the shelf and goes on with it there.
func (a *App) takeKept(k kept) {
	if !a.useStyle(k.file, k.style, k.pins) {
		return
	}
	a.path = ""
	a.pane().keep = keeping{unsaved: true, file: k.file}
}

// keptList lists under Files what was not saved.
func (a *App) keptList(c *panel.Column) {
	list := a.keptNow()
	if len(list) == 0 {
		return
	}
	c.Heading("Kept, not saved")
	for _, k := range list {
		name, note, when := k.words(time.Now())
		if a.ui.Button("kept/"+k.file, c.Next(panel.RowHeight), name+" · "+when, "Open it: "+note+".") {
			a.takeKept(k)
		}
		c.Gap(4)
	}
}

// keptLook is how often the shelf is looked at while it is shown, s.
const keptLook = 1

// keptNow is the list of the shelf but for what the panes themselves have laid there.
func (a *App) keptNow() (out []kept) {
	if o := &a.offered; a.now >= o.look {
		o.list, o.look = a.shelf().list(), a.now+keptLook
	}
	for _, k := range a.offered.list {
		mine := false
		for _, p := range a.panes {
			mine = mine || p.keep.file == k.file
		}
		if !mine {
			out = append(out, k)
		}
	}
	return out
}
