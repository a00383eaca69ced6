package paper

import (
	"fmt"
	"math"
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// FromDraft returns the drafted front or back cowl as it goes on paper, with the allowance
// of the draft on every edge. A piece without an outline is an error.
func FromDraft(p draft.Cowl) (Piece, error) {
	if len(p.Outline) < 3 || len(p.CutLine) < 3 {
		return Piece{}, fmt.Errorf("paper: the piece has no outline: draft it first")
	}
	p.Outline = jutted(p)
	above, below := p.Worn.Halves()
	q := Piece{
		Worn:     p.Worn,
		Name:     "Cowl " + p.Worn.String(),
		Words:    []string{"cut 1, whole piece, single layer", "right side up, never on the fold"},
		Quantity: 1,
		Outline:  p.Outline, Notches: p.Notches,
		Edges: frontEdges(p), Lines: frontLines(p),
		Holes: []Hole{{above + " " + p.Worn.Say("apex"), p.Apex}, {below + " " + p.Worn.Say("apex"), mirrored(p.Apex)}},
		Steps: treatmentSteps(p),
	}
	q.CutLine = Cut(q.Outline, q.Edges)
	for k, words := range treatments(p) {
		q.Texts = append(q.Texts, Text{words, r2.Vec{X: -p.HalfEdge / 2, Y: p.FoldY - 0.02 - 0.01*float64(k)}})
	}
	if p.Facing > shallow {
		at := r2.Vec{X: -p.HalfEdge / 2, Y: p.FoldY + p.Facing/2}
		q.Texts = append(q.Texts, Text{"self-facing " + length(p.Facing), at})
	}
	q.Settle(p.Grain)
	return q, nil
}

// jutted returns the outline with the seam line of every pleat drawn as it lies
// folded.
func jutted(p draft.Cowl) []r2.Vec {
	out := slices.Clone(p.Outline)
	for k := range p.Pleats {
		jut := p.PleatJut(k)
		_, b := p.Legs(k)
		lower, _ := polyline.Along(p.Shoulder, b) // the outline runs up the wearer's left half and down the right
		out = slices.Insert(out, nearest(out, lower)+1, jut)
		out = slices.Insert(out, nearest(out, mirrored(lower)), mirrored(jut))
	}
	return out
}

const shallow = 0.025 // m, a facing in which there is no room for words

// frontEdges lists the stretches of the outline: up the wearer's left half,
// down the right.
func frontEdges(p draft.Cowl) []Edge {
	ends := []struct {
		name  string
		line  []r2.Vec // ends where the edge ends, going up; the edge begins at its other end
		up    bool     // line runs up the outline, else down
		curve bool
	}{
		{p.LowerEdge(), p.Waist, false, p.Hem > 0 || p.Clean},
		{"side seam", p.Side, false, false},
		{"armhole", p.Armhole, false, true},
		{"shoulder", p.Shoulder, false, false},
		{"facing end", p.FacingEnd, true, false},
		{"facing edge", p.FacingEdge, true, false},
	}
	above, below := p.Worn.Halves()
	var up, down []Edge
	from := 0
	n := len(p.Outline)
	for _, e := range ends {
		end := e.line[0]
		if e.up {
			end = e.line[len(e.line)-1]
		}
		to := nearest(p.Outline, end)
		if to == from {
			continue // no facing
		}
		up = append(up, Edge{above + " " + e.name, from, to, p.Trim, e.curve})
		down = append([]Edge{{below + " " + e.name, (n - to) % n, (n - from) % n, p.Trim, e.curve}}, down...)
		from = to
	}
	return append(up, down...)
}

// frontLines lists the lines inside the front.
func frontLines(p draft.Cowl) []Line {
	foot, top := p.Waist[len(p.Waist)-1], p.FacingEdge[len(p.FacingEdge)-1]
	above, below := p.Worn.Halves()
	lines := []Line{{p.Worn.Centre(), Centre, []r2.Vec{foot, top}}}
	if n := len(p.WaistLine); n > 0 {
		lines = append(lines, Line{above + " waist", Guide, p.WaistLine}, Line{below + " waist", Guide,
			mirroredLine(p.WaistLine)})
	}
	if p.Facing > 0 {
		lines = append(lines, Line{"cowl edge: fold facing in", Fold, []r2.Vec{{X: -p.HalfEdge, Y: p.FoldY},
			{X: p.HalfEdge, Y: p.FoldY}}})
	}
	for k, r := range p.Releases {
		name := fmt.Sprintf("%s release slash %d", []string{above, below}[k%2], k/2+1)
		lines = append(lines, Line{name, Slash, []r2.Vec{r.From, r.To}})
	}
	for _, l := range p.PleatLines() {
		lines = append(lines, Line{above + " " + l.Name, Pleat, []r2.Vec{l.From, l.To}},
			Line{below + " " + l.Name, Pleat, []r2.Vec{mirrored(l.From), mirrored(l.To)}})
	}
	if p.DartLeft != nil {
		lines = append(lines, Line{above + " dart left open", Dart, p.DartLeft},
			Line{below + " dart left open", Dart, mirroredLine(p.DartLeft)})
	}
	return lines
}

func mirroredLine(line []r2.Vec) []r2.Vec {
	var out []r2.Vec
	for _, v := range line {
		out = append(out, mirrored(v))
	}
	return out
}

func mirrored(v r2.Vec) r2.Vec { return r2.Vec{X: -v.X, Y: v.Y} }

// nearest returns the index of the point of line nearest to v.
func nearest(line []r2.Vec, v r2.Vec) int {
	best, least := 0, math.Inf(1)
	for i, w := range line {
		if d := r2.Norm(r2.Sub(v, w)); d < least {
			best, least = i, d
		}
	}
	return best
}
