//go:build cgo

package window

import (
	"fmt"
	"reflect"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh/draft"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// rested is what was read when a pane last came to rest.
type rested struct {
	stand   draft.Stand
	trims   int    // lines cut along
	all     string // the style
	rest    string // all of it but the work on the stand
	outcome drape.Outcome
	pulls   map[string]float64 // N, by seam
}

// keepRest keeps what was read at rest. Where nothing but the work on the stand
// has changed since the rest before, that one stays for comparison.
func (p *Pane) keepRest() {
	f := &p.frame
	if f.Stage != drape.StageRest || !f.Read || !reflect.DeepEqual(f.Job.Piece, p.piece) {
		return
	}
	bare := p.Style.Clone()
	bare.Stand, bare.Trims = draft.DefaultStand(), nil
	now := &rested{p.Style.Stand, len(p.Style.Trims), string(p.Style.YAML()), string(bare.YAML()), f.Outcome, f.Pulls}
	switch was := p.rested; {
	case was == nil || was.rest != now.rest:
		p.before = nil
	case was.all != now.all:
		p.before = was
	}
	p.rested = now
}

// standWords says what was done on the stand.
func standWords(u Units, r *rested) string {
	var out []string
	s := r.stand
	for _, k := range []struct {
		v    float64
		text string
	}{
		{s.Lower, "edge lowered " + u.Length(s.Lower)}, {s.TakeIn, "side in " + u.Length(s.TakeIn)},
		{s.ReleaseWaist, "waist slash " + u.Length(s.ReleaseWaist)}, {s.ReleaseArmhole, "armhole slash " + u.Length(s.ReleaseArmhole)},
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
	c.Text("First: "+standWords(a.units, b)+". Then: "+standWords(a.units, n)+". The cloth went on from where it hung; for figures to keep run cowl drape, which hangs both afresh.", panel.Small, true)
}
