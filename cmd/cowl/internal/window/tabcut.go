//go:build cgo

package window

import (
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
)

// cutTab changes how the piece is cut.
func (a *App) cutTab(r panel.Rect) {
	a.cutSketch(r.Top(sketchTall))
	r.W -= 6
	a.ui.Scroll("cut", r, func(c *panel.Column) {
		c.Gap(4)
		a.extensionControls(c)
		p := a.pane()
		a.numberSlider(c, control{"cowl_point", "the cowl point", "Cowl point",
			"Where the edge meets the shoulder, from the neck point."}, p.cowl.CowlPoint)
		a.numberSlider(c, control{"facing", "the facing", "Self-facing", "Depth of the facing folded in along the edge; " +
			a.units.Said(limit.Say("%.0f is usual, 0 for none.", limit.Between(0.05, 0.15, limit.Length)))}, p.cowl.Facing)
		a.numberSlider(c, control{"grain", "the grain", "Grain to centre front",
			"From the centre front to the warp: 0° straight, 45° true bias, 90° crosswise."}, p.Style.Cut.Grain)
		if p.limits("hem").Hi > 0 {
			a.numberSlider(c, control{"hem", "the hem", "Hem below the waist",
				"How far the front goes on below the waist; 0 ends it there. With a hem the waist hangs free."}, p.Style.Cut.Hem)
		}
		a.dartControls(c)
		a.pleatControls(c)
		c.Gap(6)
		a.sizeChoice(c)
		a.spacingSlider(c)
		c.Gap(10)
	})
}

// extensionControls are extension and depth, two ways to say one thing.
func (a *App) extensionControls(c *panel.Column) {
	p := a.pane()
	half := p.cowl.HalfEdge - p.cowl.Extension
	a.autoBox(c, "extension", "What closing the dart gives, no more and no less.", p.Style.Cut.Extension < 0,
		p.cowl.Extension)
	a.numberSlider(c, control{"extension", "the extension", "Extension",
		"Cloth added to half the edge beyond the block: the more, the deeper."}, p.cowl.Extension)
	_, depth := draft.DropForEdge(half, p.cowl.HalfEdge)
	_, most := draft.DropForEdge(half, half+p.limits("extension").Hi)
	s := a.slider(limit.Range{Field: "depth", Hi: most, Unit: limit.Length},
		control{"depth", "the depth", "Depth of the edge",
			"How far the edge would hang below the cowl points, alone in an upright plane. It sets the extension."})
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), depth); ch != panel.Same {
		_, edge := draft.EdgeForDrop(half, v)
		a.setNumber("extension", max(edge-half, 0), "the depth", "depth")
		a.sealIf(ch)
	}
}

// dartControls say how much of the waist dart is closed.
func (a *App) dartControls(c *panel.Column) {
	p := a.pane()
	a.autoBox(c, "dart_share", "As much of the dart as the extension needs.", p.Style.Cut.DartShare < 0,
		p.cowl.Added.DartShare)
	a.numberSlider(c, control{"dart_share", "the dart share", "Dart closed",
		"Share of the waist dart that becomes cowl: 0 % leaves it open, 100 % closes it."}, p.cowl.Added.DartShare)
}

// pleatControls lay pleats into the shoulder seams.
func (a *App) pleatControls(c *panel.Column) {
	u, cut := a.ui, a.pane().Style.Cut
	head := c.Next(24)
	u.Words("Pleats in each shoulder", head.X, head.Y+17, 0, panel.Plain, u.Theme.Ink)
	var names []string
	for k := range draft.MostPleats + 1 {
		names = append(names, strconv.Itoa(k))
	}
	n := u.Choice("pleats", c.Next(panel.RowHeight), names,
		[]string{"Pleats let the cloth fall in folds from the shoulder."}, cut.Pleats)
	if n != cut.Pleats {
		a.setNumber("pleats", float64(n), "the pleats", "")
	}
	c.Gap(8)
	if n == 0 {
		return
	}
	a.numberSlider(c, control{"pleat_depth", "the depth of a pleat", "Depth of a pleat",
		"A pleat takes twice its depth of cloth."}, cut.PleatDepth)
	to := draft.Towards(u.Choice("pleats/to", c.Next(panel.RowHeight), []string{"To the neck", "To the armhole"},
		[]string{"Where the folds of the pleats point."}, int(cut.PleatsTo)))
	if to != cut.PleatsTo {
		a.change("the way of the pleats", "", func(s *style.Style) error { s.Cut.PleatsTo = to; return nil })
	}
	c.Gap(8)
}

// autoBox lets the draft choose a value; fixed is what takes its place.
func (a *App) autoBox(c *panel.Column, name, help string, on bool, fixed float64) {
	r := panel.Rect{X: c.R.X + c.R.W - 140, Y: c.R.Y, W: 54, H: 24}
	if got := a.ui.Check("auto/"+name, r, "auto", help, on); got != on {
		v := fixed
		if got {
			v = draft.Auto
		}
		a.setNumber(name, v, "auto for "+strings.ReplaceAll(name, "_", " "), "")
	}
}

// sizeChoice picks a size of the chart.
func (a *App) sizeChoice(c *panel.Column) {
	u, p := a.ui, a.pane()
	head := c.Next(24)
	u.Words("Size of the chart", head.X, head.Y+17, 0, panel.Plain, u.Theme.Ink)
	var names []string
	on := -1
	sizes := p.Style.Chart.Numbers()
	for i, n := range sizes {
		names = append(names, strconv.Itoa(n))
		if n == p.Style.Size {
			on = i
		}
	}
	if k := u.Choice("size", c.Next(panel.RowHeight), names,
		[]string{"Body by size; a new form is made, which takes a second or two."}, on); k != on {
		a.setNumber("size", float64(sizes[k]), "the size", "")
	}
	c.Gap(10)
}

// spacingSlider trades figures for speed.
func (a *App) spacingSlider(c *panel.Column) {
	p := a.pane()
	s := a.slider(p.limits("spacing"), control{"spacing", "the lattice", "Lattice",
		"Distance of the yarns reckoned with: 15 mm is quick, 8 mm a look, 5 mm and less for figures."})
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), p.spacing()); ch == panel.Set {
		a.setSpacing(v)
	}
	c.Text("The cloth is reckoned as a net of yarns, so far apart. Closer is nearer to cloth, and slower.", panel.Small,
		true)
	a.finerBox(c)
}
