//go:build cgo

package window

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/body"
	"cowl/mesh/draft"
)

// cutTab changes how the piece is cut.
func (a *App) cutTab(r panel.Rect) {
	r.W -= 6
	a.ui.Scroll("cut", r, func(c *panel.Column) {
		c.Gap(4)
		a.extensionControls(c)
		a.lengthSlider(c, "cowl_point", "Cowl point", "Where the edge meets the shoulder, from the neck point.", a.pane().piece.CowlPoint, 0, a.mostCowlPoint())
		a.facingSlider(c)
		a.grainSlider(c)
		a.dartControls(c)
		a.pleatControls(c)
		c.Gap(6)
		a.sizeChoice(c)
		a.spacingSlider(c)
		c.Gap(10)
	})
}

// sliderRoom is the height of a slider with the gap below it, units.
const sliderRoom = panel.SliderHeight + 10

// extensionControls are extension and depth, two ways to say one thing.
func (a *App) extensionControls(c *panel.Column) {
	p := a.pane()
	half := p.piece.HalfEdge - p.piece.Extension
	a.autoBox(c, "extension", "What closing the dart gives, no more and no less.", p.Style.Cut.Extension < 0, p.piece.Extension)
	a.lengthSlider(c, "extension", "Extension", "Cloth added to half the edge beyond the block: the more, the deeper.", p.piece.Extension, 0, 0.30)
	_, depth := draft.DropForEdge(half, p.piece.HalfEdge)
	s := a.lengthOf("depth", "Depth of the edge", "How far the edge would hang below the cowl points, alone in an upright plane. It sets the extension.", 0, 0.35)
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), depth); ch != panel.Same {
		_, edge := draft.EdgeForDrop(half, v)
		a.setNumber("extension", max(edge-half, 0), "the depth", "depth")
		a.sealIf(ch)
	}
}

// dartControls say how much of the waist dart is closed.
func (a *App) dartControls(c *panel.Column) {
	p := a.pane()
	a.autoBox(c, "dart_share", "As much of the dart as the extension needs.", p.Style.Cut.DartShare < 0, p.piece.Added.DartShare)
	s := panel.Slider{
		ID: "dart_share", Label: "Dart closed", Help: "Share of the waist dart that becomes cowl: 0 % leaves it open, 100 % closes it.",
		Min: 0, Max: 1, Step: 0.05,
		Format: func(v float64) string { return fmt.Sprintf("%.0f %%", v*100) },
		Parse:  func(t string) (float64, error) { return number(t, "%", "dart share", 0, 100, 0.01) },
	}
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), p.piece.Added.DartShare); ch != panel.Same {
		a.setNumber("dart_share", v, "the dart share", "dart")
		a.sealIf(ch)
	}
}

// pleatControls lay pleats into the shoulder seams.
func (a *App) pleatControls(c *panel.Column) {
	u, cut := a.ui, a.pane().Style.Cut
	head := c.Next(24)
	u.Words("Pleats in each shoulder", head.X, head.Y+17, 0, panel.Plain, u.Theme.Ink)
	names := []string{"0", "1", "2", "3", "4"}
	n := u.Choice("pleats", c.Next(panel.RowHeight), names, []string{"Pleats let the cloth fall in folds from the shoulder."}, cut.Pleats)
	if n != cut.Pleats {
		a.setNumber("pleats", float64(n), "the pleats", "")
	}
	c.Gap(8)
	if n == 0 {
		return
	}
	a.lengthSlider(c, "pleat_depth", "Depth of a pleat", "A pleat takes twice its depth of cloth.", cut.PleatDepth, 0.005, 0.04)
	to := draft.Towards(u.Choice("pleats/to", c.Next(panel.RowHeight), []string{"To the neck", "To the armhole"}, []string{"Where the folds of the pleats point."}, int(cut.PleatsTo)))
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

// lengthOf is a slider for a length in m, in the user's units.
func (a *App) lengthOf(id, label, help string, lo, hi float64) panel.Slider {
	step := 0.005
	if a.units == Inches {
		step = inch / 8
	}
	return panel.Slider{
		ID: id, Label: label, Help: help, Min: lo, Max: hi, Step: step, Format: a.units.Length,
		Parse: func(t string) (float64, error) {
			v, err := a.units.Parse(t)
			if err == nil && !(v >= lo-1e-9 && v <= hi+1e-9) {
				err = fmt.Errorf("%s %s, want %s to %s", label, a.units.Length(v), a.units.Length(lo), a.units.Length(hi))
			}
			return v, err
		},
	}
}

// lengthSlider is a slider for a length of the style by its name there.
func (a *App) lengthSlider(c *panel.Column, name, label, help string, v, lo, hi float64) {
	if v, ch := a.ui.Slide(a.lengthOf(name, label, help, lo, hi), c.Next(sliderRoom), v); ch != panel.Same {
		a.setNumber(name, v, "the "+strings.ToLower(label), name)
		a.sealIf(ch)
	}
}

// mostCowlPoint leaves 3 cm of shoulder, as the draft wants.
func (a *App) mostCowlPoint() float64 {
	if b := a.pane().piece.Block; b.Neck != b.ShoulderTip {
		return b.ShoulderLength() - 0.03
	}
	return 0.09
}

// facingSlider skips what is too narrow to stay folded.
func (a *App) facingSlider(c *panel.Column) {
	s := a.lengthOf("facing", "Self-facing", "Depth of the facing folded in along the edge; 5 to 15 cm is usual, 0 for none.", 0, 0.20)
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), a.pane().piece.Facing); ch != panel.Same {
		if v > 0 && v < 0.01 {
			v = math.Round(v*100) / 100
		}
		a.setNumber("facing", v, "the facing", "facing")
		a.sealIf(ch)
	}
}

func (a *App) grainSlider(c *panel.Column) {
	s := panel.Slider{
		ID: "grain", Label: "Grain to centre front", Help: "From the centre front to the warp: 0° straight, 45° true bias, 90° crosswise.",
		Min: -90, Max: 90, Step: 5,
		Format: func(v float64) string { return noMinus(fmt.Sprintf("%.0f°", v)) },
		Parse:  func(t string) (float64, error) { return number(t, "°", "grain", -90, 90, 1) },
	}
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), a.pane().Style.Cut.Grain/degree); ch != panel.Same {
		a.setNumber("grain", v*degree, "the grain", "grain")
		a.sealIf(ch)
	}
}

// sizeChoice picks a size of the chart.
func (a *App) sizeChoice(c *panel.Column) {
	u, p := a.ui, a.pane()
	head := c.Next(24)
	u.Words("Size of the chart", head.X, head.Y+17, 0, panel.Plain, u.Theme.Ink)
	var names []string
	on := -1
	for i, n := range body.Sizes() {
		names = append(names, strconv.Itoa(n))
		if n == p.Style.Size {
			on = i
		}
	}
	if k := u.Choice("size", c.Next(panel.RowHeight), names, []string{"Body by size; a new form is made, which takes a second or two."}, on); k != on {
		a.setNumber("size", float64(body.Sizes()[k]), "the size", "")
	}
	c.Gap(10)
}

// spacingSlider trades figures for speed.
func (a *App) spacingSlider(c *panel.Column) {
	s := panel.Slider{
		ID: "spacing", Label: "Lattice", Help: "Distance of the yarns reckoned with: 15 mm is quick, 8 mm a look, 5 mm and less for figures.",
		Min: 4, Max: 20, Step: 1,
		Format: func(v float64) string { return fmt.Sprintf("%.1f mm", v) },
		Parse:  func(t string) (float64, error) { return number(t, "mm", "lattice", 2, 20, 1) },
	}
	if v, ch := a.ui.Slide(s, c.Next(sliderRoom), a.pane().Style.Hang.Spacing*1000); ch == panel.Set {
		a.change("the lattice", "", func(st *style.Style) error { return st.Set("spacing", v/1000, "window") })
	}
}

// sealIf ends a change that is done.
func (a *App) sealIf(ch panel.Change) {
	if ch == panel.Set {
		a.past.Seal()
	}
}

// number reads a plain number with or without its unit and gives back times it.
func number(text, unit, what string, lo, hi, times float64) (float64, error) {
	t := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), unit))
	v, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64)
	if err != nil || !(v >= lo && v <= hi) {
		return 0, fmt.Errorf("%s %q, want a number from %g to %g %s", what, text, lo, hi, unit)
	}
	return v * times, nil
}
