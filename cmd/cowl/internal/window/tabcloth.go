//go:build cgo

package window

import (
	"fmt"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
)

// limpest is the library as the list shows it. A fabric opened from a file
// stands first.
var limpest = materials.Query{Limp: true}.Pick(materials.Library())

// clothTab is the list of fabrics.
func (a *App) clothTab(r panel.Rect) {
	u := a.ui
	text, done := u.Field("search", r.Top(panel.RowHeight), a.search, "Search: silk, twill, crepe …",
		"Words in name, fibre or weave; the list shows what has them all. Enter takes the first.")
	a.search = text
	r.Top(8)
	about := r.Bottom(min(206, r.H*0.42))
	r.Bottom(8)
	now := a.pane().Style.Fabric
	list := a.fabrics()
	on := -1
	items := make([]panel.Item, len(list))
	for i, f := range list {
		items[i] = panel.Item{
			Name: f.Title, Sign: knownWord(f),
			Note:  fmt.Sprintf("%s, %s", materials.Weight.Format(f), limpness(a.units, f)),
			Brief: fmt.Sprintf("%s, %s", materials.Weight.Format(f), limpWord(f)),
		}
		if f.Name == now.Name {
			on = i
		}
	}
	if len(list) == 0 {
		u.Words("No fabric has all these words.", r.X, r.Y+20, 0, panel.Plain, u.Theme.Soft)
	} else if k := u.Pick("fabrics", r, items, on, "Limp ones first. Arrow keys go through the list."); k != on {
		a.takeFabric(list[k])
	} else if done && a.search != "" && u.Entered() && list[0].Name != now.Name {
		a.takeFabric(list[0])
	}
	a.aboutFabric(about, now)
}

// fabrics lists what fits the search, and the fabric of a file that is in use.
func (a *App) fabrics() []materials.Fabric {
	list := materials.Query{Words: a.search, Limp: true}.Pick(limpest)
	now := a.pane().Style.Fabric
	if _, err := materials.Find(now.Name); err != nil && a.search == "" {
		list = append([]materials.Fabric{now}, list...)
	}
	return list
}

// takeFabric hangs the active pane in another cloth.
func (a *App) takeFabric(f materials.Fabric) {
	a.watched = watched{}
	a.change("the fabric "+f.Title, "", func(s *style.Style) error {
		s.Fabric = f
		return nil
	})
}

// limpness says how a cloth falls, by its bending length (F. T. Peirce, J.
// Textile Institute 21 (1930) T377); the words are ours.
func limpness(u Units, f materials.Fabric) string {
	return fmt.Sprintf("%s (%s)", limpWord(f), u.Small(f.GravityLength()))
}

func limpWord(f materials.Fabric) string {
	switch c := f.GravityLength() * 1000; {
	case c < 11:
		return "very limp"
	case c < 14:
		return "limp"
	case c < 19:
		return "medium"
	}
	return "stiff"
}

// knownWord says how well a fabric is known, by its least known deciding value.
func knownWord(f materials.Fabric) string {
	worst := materials.Measured
	for _, q := range []materials.Field{materials.Weight, materials.BendWarp, materials.BendWeft, materials.Shear} {
		worst = max(worst, f.Basis[q].Kind)
	}
	if worst == materials.Memory {
		return "from memory"
	}
	return worst.String()
}

// aboutFabric tells the values that decide the drape.
func (a *App) aboutFabric(r panel.Rect, f materials.Fabric) {
	u := a.ui
	u.Fill(panel.Rect{X: r.X, Y: r.Y, W: r.W, H: 1 / a.scale}, u.Theme.Rule)
	r.Top(4)
	r.W -= 6
	u.Scroll("about", r, func(c *panel.Column) {
		c.Heading(f.Title)
		c.Pair("Weight", materials.Weight.Format(f))
		c.Pair("Bending, warp × weft", materials.BendWarp.Format(f)+" × "+materials.BendWeft.Format(f))
		c.Pair("Shear", materials.Shear.Format(f))
		c.Pair("Falls over edges longer than", a.units.Small(f.GravityLength()))
		c.Text("Bending: what it takes to bend the cloth along warp and weft; shear: to turn the one against the other. "+
			"Little of either falls in soft folds.", panel.Small, true)
		c.Gap(4)
		text := "Values: " + knownWord(f) + "."
		if knownWord(f) == "from memory" {
			text = "Values recalled, not measured: a starting value. Do not buy cloth on it."
		}
		c.Text(text, panel.Small, true)
	})
}
