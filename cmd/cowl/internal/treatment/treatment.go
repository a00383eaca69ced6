// Package treatment tells of what is done to a front beyond cutting it and sewing it together,
// pleats, stays, weights and what is cut on the stand: what was done, the same front without
// it, and what the drape gained by it. Start at [Of]; [Compared] and [Changes] are for a drape.
package treatment

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/polyline"
)

// Figures are what is done to a front beyond cutting it and sewing it together, as files have
// it: lengths in mm, areas in mm², weights in g. What is not done is 0 and left out.
type Figures struct {
	Lowered  float64 `json:"edge_lowered_mm,omitempty"`
	TakenIn  float64 `json:"side_taken_in_mm,omitempty"` // at the waist
	Trims    []Trim  `json:"trims,omitempty"`
	Pleats   *Pleats `json:"pleats,omitempty"`
	Slashes  []Slash `json:"release_slashes,omitempty"`  // of one half
	Shoulder float64 `json:"shoulder_stay_mm,omitempty"` // tape along each shoulder
	Edge     float64 `json:"edge_stay_mm,omitempty"`     // tape along the whole edge
	Weight   float64 `json:"weight_g,omitempty"`
	Taken    float64 `json:"taken_up_mm,omitempty"` // at either cowl point; below 0: let down

	// What lowering the edge does besides.
	CowlPoint float64 `json:"cowl_point_moved_mm,omitempty"` // down the shoulder
	Extension float64 `json:"extension_lost_mm,omitempty"`   // of one half
	Deeper    float64 `json:"drop_more_mm,omitempty"`        // below the cowl points, as a hanging curve
}

// Trim is a line that the front was cut along on the flat.
type Trim struct {
	Line [][2]float64 `json:"line_mm"`     // on the wearer's left half
	Area float64      `json:"cut_off_mm2"` // of both halves
}

// Pleats are those of the shoulders, both alike.
type Pleats struct {
	Number  int     `json:"in_each_shoulder"`
	Depth   float64 `json:"depth_mm"`
	Towards string  `json:"towards"`
	Open    float64 `json:"shoulder_open_mm"` // seam on the table
	Folded  float64 `json:"shoulder_folded_mm"`
}

// Slash is cut into a seam from outside, so that the cloth spreads there.
type Slash struct {
	Seam   string  `json:"seam"`
	At     float64 `json:"at_share"` // of the seam, as release_waist_at and release_armhole_at
	Length float64 `json:"length_mm"`
}

// Of lists what was done to p, the front of s; nil: nothing.
func Of(s style.Style, p draft.Cowl) *Figures {
	t := &Figures{Lowered: say.MM(s.Stand.Lower), TakenIn: say.MM(s.Stand.TakeIn), Trims: trimsOf(s),
		Weight: p.Weight * 1000, Taken: say.MM(p.Taken)}
	if s.Stand.Lower > 0 {
		before := s.Clone()
		before.Stand.Lower = 0
		if q, err := before.Cowl(); err == nil {
			t.CowlPoint, t.Extension = say.MM(p.CowlPoint-q.CowlPoint), say.MM(q.Extension-p.Extension)
			t.Deeper = say.MM(p.Report().DropChain - q.Report().DropChain)
		}
	}
	if n := len(p.Pleats); n > 0 {
		folded, depth := p.ShoulderLength(), 0.0
		for _, k := range p.Pleats {
			depth += k.Depth
		}
		t.Pleats = &Pleats{n, say.MM(depth) / float64(n), p.Pleats[0].To.String(), say.MM(folded + 2*depth),
			say.MM(folded)}
	}
	if s.Stand.ReleaseWaist > 0 {
		t.Slashes = append(t.Slashes, Slash{"waist", s.Stand.ReleaseWaistAt, say.MM(s.Stand.ReleaseWaist)})
	}
	if s.Stand.ReleaseArmhole > 0 {
		t.Slashes = append(t.Slashes, Slash{"armhole", s.Stand.ReleaseArmholeAt, say.MM(s.Stand.ReleaseArmhole)})
	}
	if p.StayShoulder {
		t.Shoulder = say.MM(p.ShoulderLength())
	}
	if p.StayEdge {
		t.Edge = say.MM(2 * p.HalfEdge)
	}
	if t.none() {
		return nil
	}
	return t
}

func (t *Figures) none() bool {
	return t.Lowered == 0 && t.TakenIn == 0 && t.Trims == nil && t.Pleats == nil && t.Slashes == nil && t.Shoulder == 0 &&
		t.Edge == 0 && t.Weight == 0 && t.Taken == 0
}

// trimsOf measures what each trim of s takes off what those before it left. The
// front of s can be drafted.
func trimsOf(s style.Style) []Trim {
	var out []Trim
	left := s.Clone()
	left.Stand.ReleaseWaist, left.Stand.ReleaseArmhole, left.Stand.Weight = 0, 0, 0
	area := func(n int) float64 {
		left.Trims = s.Trims[:n]
		p, err := left.Cowl()
		if err != nil {
			panic(fmt.Sprintf("cowl: the front with %d of its trims: %v", n, err))
		}
		return polyline.Area(p.Outline)
	}
	for k, line := range s.Trims {
		t := Trim{Area: (area(k) - area(k+1)) * 1e6}
		for _, v := range line {
			t.Line = append(t.Line, [2]float64{say.MM(v.X), say.MM(v.Y)})
		}
		out = append(out, t)
	}
	return out
}

// Report prints them, a row each.
func (t *Figures) Report(row func(name, format string, args ...any)) {
	if t == nil {
		return
	}
	if p := t.Pleats; p != nil {
		row("Pleats", "%d in each shoulder, %s deep, towards the %s; the seam is %s on the table, %s folded",
			p.Number, say.Length(p.Depth/1000), p.Towards, say.Length(p.Open/1000), say.Length(p.Folded/1000))
	}
	if said := t.standWords(); said != "" {
		row("On the stand", "%s", said)
	}
	if t.CowlPoint > 0 {
		more := "more"
		if t.Deeper < 0 {
			more = "less"
		}
		row("Lowering", "moves the cowl points %s down the shoulders and takes %s off the extension: "+
			"below them the edge drops %s %s in an upright plane",
			say.Length(t.CowlPoint/1000), say.Length(t.Extension/1000), say.Length(math.Abs(t.Deeper)/1000), more)
	}
	if n := len(t.Trims); n > 0 {
		area := 0.0
		for _, k := range t.Trims {
			area += k.Area
		}
		row("Trimmed", "along %s drawn on the flat, %s off both halves together", say.Several(n, "line"),
			say.Area(area/1e6, 1))
	}
}

// standWords lists what is done on the stand.
func (t *Figures) standWords() string {
	var words []string
	add := func(mm float64, format string) {
		if mm > 0 {
			words = append(words, fmt.Sprintf(format, say.Length(mm/1000)))
		}
	}
	add(t.Lowered, "edge %s lower")
	add(t.TakenIn, "side taken in %s at the waist")
	for _, s := range t.Slashes {
		add(s.Length, s.Seam+" released by %s")
	}
	if t.Weight > 0 {
		words = append(words, fmt.Sprintf("weight of %.0f g at the centre front of the facing", t.Weight))
	}
	add(t.Shoulder, "each shoulder stayed with %s of tape")
	add(t.Edge, "edge stayed with %s of tape")
	return strings.Join(words, ", ")
}
