//go:build cgo

package window

import (
	"fmt"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// standWords says what was done on the stand.
func standWords(u Units, r *rested) string {
	var out []string
	s := r.stand
	for _, k := range []struct {
		v    float64
		text string
	}{
		{s.Lower, "edge lowered " + u.Length(s.Lower)}, {s.TakeIn, "side in " + u.Length(s.TakeIn)},
		{s.ReleaseWaist, "waist slash " + u.Length(s.ReleaseWaist)}, {s.ReleaseArmhole, "armhole slash " +
			u.Length(s.ReleaseArmhole)},
		{s.Weight, fmt.Sprintf("weight %.0f g", s.Weight*1000)},
	} {
		if k.v > 0 {
			out = append(out, k.text)
		}
	}
	if r.trims > 0 {
		out = append(out, plural(r.trims, "trim"))
	}
	if s.StayShoulder {
		out = append(out, "stay in the shoulders")
	}
	if s.StayEdge {
		out = append(out, "stay along the edge")
	}
	if len(out) == 0 {
		return "as cut"
	}
	return strings.Join(out, ", ")
}

// effect tells what the last change on the stand did: the rest before it and
// the rest after it.
func (a *App) effect(c *panel.Column) {
	p := a.pane()
	if p.before == nil {
		return
	}
	b, n := p.before, p.rested
	c.Heading("What it did")
	grams := func(r *rested, seam string) string { return fmt.Sprintf("%.0f", measure.Gram.From(r.pulls[seam])) }
	figure := func(name, key string) [3]string {
		f := measure.Named(key)
		before := figure(a.units, f, f.SI(&b.outcome))
		return [3]string{name, before[:max(strings.LastIndex(before, " "), 0)], figure(a.units, f, f.SI(&n.outcome))}
	}
	for _, row := range [][3]string{
		{"Waist pins pull, together", grams(b, "waist"), grams(n, "waist") + " g"},
		{"Side pins pull, together", grams(b, "side"), grams(n, "side") + " g"},
		figure("Yarns change by at most", "max_strain_percent"), figure("Edge drop", "edge_drop_mm"),
	} {
		if row[0] == "Waist pins pull, together" && p.Style.Held() != drape.Pinned {
			continue // there are none
		}
		c.Pair(row[0], row[1]+" → "+row[2])
	}
	c.Text("First: "+standWords(a.units, b)+". Then: "+standWords(a.units,
		n)+". The cloth went on from where it hung; for figures to keep run cowl drape, which hangs both afresh.",
		panel.Small, true)
}
