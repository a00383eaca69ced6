//go:build cgo

package window

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
	"cowl/mesh/limit"
)

// compareTab puts drapes side by side and turns the grain.
func (a *App) compareTab(r panel.Rect) {
	u := a.ui
	r.W -= 6
	u.Scroll("compare", r, func(c *panel.Column) {
		c.Heading("Side by side")
		names := []string{"1", "2", "3", "4"}
		if n := u.Choice("panes", c.Next(panel.RowHeight), names,
			[]string{"How many drapes are shown; cameras move together. Click one to change it."},
			len(a.panes)-1); n != len(a.panes)-1 {
			a.setCount(n + 1)
		}
		c.Gap(8)
		c.Text("Fill them with one cut in different", panel.Plain, true)
		c.Gap(4)
		b := c.Next(panel.RowHeight).Columns(3, 4)
		for i, f := range []fan{fanFabrics, fanExtensions, fanGrains} {
			if u.Button("fan/"+f.name, b[i], f.name, a.units.Said(f.help)) {
				a.spread(f)
			}
		}
		c.Gap(8)
		if len(a.panes) > 1 {
			a.comparison(c)
			c.Gap(6)
		}
		if u.Button("compare/table", c.Next(panel.RowHeight), "Table of all figures",
			"Every figure of every drape, to be read or copied. Key I.") {
			u.OpenDialog(figuresDialog)
		}
		c.Gap(8)
		a.fiveControls(c, "compare/five", a.pane())
		a.grainDemonstration(c)
		c.Gap(8)
	})
}

// setCount shows n drapes.
func (a *App) setCount(n int) {
	if n == len(a.panes) {
		return
	}
	a.past.Record(a.state(), "the number of drapes", "")
	a.letGo()
	a.keepSafe(true)
	a.count(n)
}

// fan is one cut in several ways.
type fan struct {
	name string
	help limit.Words
	set  func(s *style.Style, i, n int) error // way i of n
}

var (
	fanFabrics = fan{"Fabrics", limit.Say("Beside yours: from limp to stiff, of those with measured values."),
		func(s *style.Style, i, n int) error {
			known := slices.DeleteFunc(measured(), func(f materials.Fabric) bool { return f.Name == s.Fabric.Name })
			s.Fabric = known[i*(len(known)-1)/max(n-1, 1)]
			return nil
		}}
	fanExtensions = fan{"Extensions", limit.Say("Beside yours: from a shallow to a deep cowl, %.0f.",
		limit.Between(0.04, 0.16, limit.Length)), func(s *style.Style, i, n int) error {
		return s.Set("extension", 0.04+0.12*float64(i)/float64(max(n-1, 1)), "")
	}}
	fanGrains = fan{"Grains", limit.Say("Beside yours: from straight grain over bias to crosswise."),
		func(s *style.Style, i, n int) error {
			return s.Set("grain", 90*degree*float64(i)/float64(max(n-1, 1)), "")
		}}
)

// measured lists the fabrics of which every deciding value is published, limp
// ones first.
func measured() []materials.Fabric {
	var out []materials.Fabric
	for _, f := range limpest {
		if f.Complete() {
			out = append(out, f)
		}
	}
	return out
}

// mostPanes is how many drapes are shown at most.
const mostPanes = 4

// spread fills the panes beside one's own. A pane in which something was changed by
// hand, and the one that is in use, stay as they are; where all are, new ones come.
func (a *App) spread(f fan) {
	var others []*Pane
	for _, p := range a.panes {
		if !p.own && p != a.pane() {
			others = append(others, p)
		}
	}
	more := mostPanes - len(a.panes)
	if len(others) > 0 {
		more = 0
	}
	if len(others)+more == 0 {
		a.complain(errors.New("all four drapes hold changes of your own, which stay: show fewer side by side first"))
		return
	}
	a.past.Record(a.state(), "drapes side by side", "")
	a.count(len(a.panes) + more)
	others = append(others, a.panes[len(a.panes)-more:]...)
	base := a.pane().Style
	for i, p := range others {
		s := base.Clone()
		err := f.set(&s, i, len(others))
		if err == nil {
			_, _, err = a.try(&s)
		}
		if err != nil {
			a.complain(err)
			continue
		}
		p.Style = s
		if err := a.mount(p); err != nil {
			a.complain(err)
		}
	}
}

// comparison lists the leading figures of all panes.
func (a *App) comparison(c *panel.Column) {
	u := a.ui
	for i, p := range a.panes {
		r := c.Next(44)
		if i == a.active {
			u.Fill(panel.Rect{X: r.X - 8, Y: r.Y + 2, W: 3, H: r.H - 6}, u.Theme.Accent)
		}
		drop := "–"
		if p.figures() {
			drop = a.units.Length(p.frame.Outcome.EdgeDrop)
		}
		u.Words(drop, r.X+r.W, r.Y+18, 1, panel.Strong, u.Theme.Ink)
		u.Words(u.Fit(strconv.Itoa(i+1)+"  "+p.Style.Fabric.Title, r.W-70, panel.Plain), r.X, r.Y+18, 0, panel.Plain,
			u.Theme.Ink)
		cut := fmt.Sprintf("extension %s, grain %.0f°, %s", a.units.Length(p.cowl.Extension), p.cowl.Grain/degree,
			stageWords(p))
		u.Words(u.Fit(cut, r.W, panel.Small), r.X, r.Y+35, 0, panel.Small, u.Theme.Soft)
	}
	c.Text("Edge drop of one placing each. Another hand moves it by some millimetres: a difference counts only if it "+
		"is larger.", panel.Small, true)
}
