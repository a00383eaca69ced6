//go:build cgo

package window

import (
	"fmt"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape/measure"
)

const figuresDialog = "figures"

// tableRow is a row of the table of figures: a name and a value of every pane. One with
// no values is a heading.
type tableRow struct {
	name   string
	values []string
}

// noFigure stands where a pane has no figures to tell.
const noFigure = "–"

// figureTable lists the figures of all panes as the readings tell them.
func (a *App) figureTable() []tableRow {
	row := func(name string, value func(*Pane) string) tableRow {
		r := tableRow{name: name}
		for _, p := range a.panes {
			v := noFigure
			if p.figures() {
				v = value(p)
			}
			r.values = append(r.values, v)
		}
		return r
	}
	style := func(name string, value func(*Pane) string) tableRow {
		r := tableRow{name: name}
		for _, p := range a.panes {
			r.values = append(r.values, value(p))
		}
		return r
	}
	out := []tableRow{
		style("Fabric", func(p *Pane) string { return p.Style.Fabric.Title }),
		style("Extension", func(p *Pane) string { return a.units.Length(p.cowl.Extension) }),
		style(a.says("Grain to centre front"), func(p *Pane) string { return fmt.Sprintf("%.0f°", p.cowl.Grain/degree) }),
		style("Lattice", func(p *Pane) string { return a.units.Apart(p.spacing()) }),
		style("State", func(p *Pane) string { return stageWords(p) }),
		row(a.says("Cowl folds above the bust"), func(p *Pane) string { return strconv.Itoa(p.view().Outcome.FoldCount) }),
	}
	for _, g := range measure.InWindow {
		out = append(out, tableRow{name: g.Title})
		for _, f := range g.Figures {
			name, _ := f.Window.Pick(0)
			out = append(out, row(a.says(name), func(p *Pane) string { return a.tableFigure(g, f, p) }))
		}
	}
	return out
}

// tableFigure writes a figure of a pane with its sign, since one name stands for all panes.
func (a *App) tableFigure(g measure.Group, f *measure.Figure, p *Pane) string {
	o := &p.view().Outcome
	for _, told := range g.Told(o) {
		if told == f {
			v := f.SI(o)
			if f.OnForm {
				v = max(v, 0)
			}
			return a.withSpread(p, f, v)
		}
	}
	return noFigure
}

// tabbed writes the table for a spreadsheet.
func tabbed(rows []tableRow) string {
	var b strings.Builder
	for _, r := range rows {
		b.WriteString(strings.Join(append([]string{r.name}, r.values...), "\t") + "\n")
	}
	return b.String()
}

// drawFigures shows the table over the window.
func (a *App) drawFigures() {
	u := a.ui
	in := u.Sheet(330+170*float64(len(a.panes)), 640)
	head := in.Top(40)
	u.Words("Figures side by side", head.X, head.Y+20, 0, panel.Title, u.Theme.Ink)
	rows := a.figureTable()
	if u.Button("figures/close", head.Right(80).Shrunk(0, 4), "Close", "Escape closes it too.") {
		u.OpenDialog("")
	}
	head.Right(8)
	if u.Copy != nil && u.Button("figures/copy", head.Right(80).Shrunk(0, 4), "Copy",
		"Copies the table, to be put into a spreadsheet.") {
		u.Copy(tabbed(rows))
		a.say("The table is copied.")
	}
	note := in.Bottom(36)
	for i, line := range u.Wrap("One placing each: another hand moves a drop by some millimetres, and a difference "+
		"counts only if it is larger.", note.W, panel.Small) {
		u.Words(line, note.X, note.Y+16+16*float64(i), 0, panel.Small, u.Theme.Soft)
	}
	in.W -= 6
	u.Scroll("figures/list", in, func(c *panel.Column) {
		a.figureRow(c, tableRow{name: "Drape", values: numbers(len(a.panes))}, panel.Strong)
		for _, row := range rows {
			if row.values == nil {
				c.Heading(row.name)
				continue
			}
			a.figureRow(c, row, panel.Plain)
		}
	})
}

// numbers are those of n panes.
func numbers(n int) (out []string) {
	for i := range n {
		out = append(out, strconv.Itoa(i+1))
	}
	return out
}

// figureRow writes a row: names take as much room as two panes at most.
func (a *App) figureRow(c *panel.Column, row tableRow, s panel.Style) {
	u := a.ui
	r := c.Next(22)
	name := r.Left(min(240, 0.4*r.W))
	u.Words(u.Fit(row.name, name.W-8, s), name.X, name.Y+16, 0, s, u.Theme.Soft)
	for i, cell := range r.Columns(len(row.values), 8) {
		u.Words(u.Fit(row.values[i], cell.W, s), cell.X+cell.W, cell.Y+16, 1, s, u.Theme.Ink)
	}
	u.Rule(panel.Rect{X: name.X, Y: r.Y, W: name.W + r.W, H: r.H}, u.Theme.Sunken)
}
