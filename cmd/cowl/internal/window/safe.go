//go:build cgo

package window

import (
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials/infile"
)

const sheetOffer = "offer"

// safeHead says in the file what it is.
const safeHead = "# Kept safe by cowl view: the style as it was changed last and not yet saved.\n"

// touched keeps the style of the active pane safe after a change.
func (a *App) touched() {
	a.unsaved = true
	a.safeAt = a.now + 0.5
}

// keepSafe writes the style to the config folder, half a second after the last
// change; a crash or a reset of the driver then loses nothing.
func (a *App) keepSafe(now bool) {
	if a.safeAt == 0 || !now && a.now < a.safeAt {
		return
	}
	a.safeAt = 0
	data := append([]byte(safeHead), a.pane().Style.YAML()...)
	if err := store(a.opt.Config, safeFile, data); err != nil {
		a.complain(err)
	}
}

// saved forgets the style kept safe: it has been saved.
func (a *App) saved() {
	a.unsaved, a.safeAt = false, 0
	os.Remove(filepath.Join(a.opt.Config, safeFile))
}

// offer asks whether to go on with the style of the last run that was not
// saved.
func (a *App) offer() {
	data, err := infile.Read(filepath.Join(a.opt.Config, safeFile), "the style kept safe", infile.YAML)
	if err != nil || a.opt.Frames > 0 {
		return
	}
	a.offered = data
	a.ui.OpenSheet(sheetOffer)
}

// offerSheet asks the question.
func (a *App) offerSheet() {
	u := a.ui
	whole := u.Whole()
	u.Fill(whole, panel.Faded(u.Theme.Ink, 0.45))
	r := panel.Rect{W: min(460, whole.W-40), H: 190}
	r.X, r.Y = (whole.W-r.W)/2, (whole.H-r.H)/2
	u.Round(r, 8, u.Theme.Ground)
	in := r.Inset(28)
	u.Words("Go on where you stopped?", in.X, in.Y+18, 0, panel.Title, u.Theme.Ink)
	in.Top(34)
	for i, line := range u.Wrap("The last time the window closed before the style was saved. It was kept safe.", in.W, panel.Plain) {
		u.Words(line, in.X, in.Y+14+20*float64(i), 0, panel.Plain, u.Theme.Ink)
	}
	b := in.Bottom(panel.RowHeight+2).Columns(2, 12)
	switch {
	case u.Button("offer/yes", b[0], "Go on with it", "Opens the style that was kept safe."):
		u.OpenSheet("")
		a.takeOffer()
	case u.Button("offer/no", b[1], "Leave it", "It is let go and not offered again."):
		u.OpenSheet("")
		a.saved()
		a.offered = nil
	}
}

func (a *App) takeOffer() {
	s, err := style.Parse(safeFile, a.offered)
	a.offered = nil
	if err != nil {
		a.complain(err)
		return
	}
	a.useStyle(safeFile, s)
	a.path = ""
	a.unsaved = true
}

// keepSettings writes the settings, and the style if that was to be done still.
func (a *App) keepSettings() {
	a.keepSafe(true)
	if err := a.set.save(a.opt.Config); err != nil {
		a.complain(err)
	}
}
