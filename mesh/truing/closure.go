package truing

import (
	"fmt"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	stopLong = 0.012 // m, a stop is drawn so far into the piece
	underlap = 0.02  // m, of a buttoned shoulder
	noteIn   = 0.045 // m, of the words inside the seam
)

// closed marks the gap of s on front, which is the cowl, and back, the plain piece: a notch and
// a stop where it ends, a note beside it, and a step of the work.
func (s Suit) closed(front, back *paper.Piece) {
	g, long := s.Gap, ruler.Spoken().Length(s.Gap.Long)
	stops(front, g.Front, g.Out, gapWords(g))
	switch g.Closure {
	case draft.SideZip:
		front.Steps = append(front.Steps, fmt.Sprintf("Leave the left side seam open %s and set in a zip of %s, its stop "+
			"at the upper mark; "+
			"stay both edges with tape first, they are on the bias or near it.", spanWords(g), long))
	case draft.ShoulderOpen:
		front.Steps = append(front.Steps, fmt.Sprintf("Leave the left shoulder open for %s from the cowl point to its stop. "+
			"Face both edges, the back's with an underlap of %s, and close it with two or three buttons or snaps.",
			long, ruler.Spoken().Length(underlap)))
	}
	if back == nil {
		return
	}
	stops(back, g.Back, g.BackOut, gapWords(g))
	if g.Closure == draft.BackOpen {
		top := s.Back.Neck[len(s.Back.Neck)-1]
		back.Lines = append(back.Lines, paper.Line{Name: "back opening, " + long, Kind: paper.Guide,
			Points: []r2.Vec{top, g.Back[0]}})
		back.Steps = append(back.Steps, fmt.Sprintf("Stitch a facing round the opening of the centre back, to a point at "+
			"its stop, "+
			"then slit back and facing %s from the neck seam. Close it at the neck with a button and a loop.", long))
	}
}

// spanWords says from where to where a gap in the side seam runs: one with one stop runs
// on to the edge.
func spanWords(g draft.Gap) string {
	if len(g.Front) == 1 {
		return "between its stop and the lower edge"
	}
	return "between its stops"
}

// gapWords is the note beside a gap.
func gapWords(g draft.Gap) string {
	switch g.Closure {
	case draft.SideZip:
		return "zip " + ruler.Spoken().Length(g.Long)
	case draft.ShoulderOpen:
		return "open " + ruler.Spoken().Length(g.Long) + ", buttoned"
	}
	return ""
}

// stops draws the ends of a gap.
func stops(p *paper.Piece, at []r2.Vec, out r2.Vec, note string) {
	for _, v := range at {
		if note != "" { // in a seam; a slit ends inside
			p.Notches = append(p.Notches, draft.Notch{At: v, Dir: out, Name: "opening, stop"})
		}
		within := r2.Sub(v, r2.Scale(stopLong, out))
		p.Lines = append(p.Lines, paper.Line{Name: "left opening, stop", Kind: paper.Guide, Points: []r2.Vec{within, v}})
	}
	if note != "" && len(at) > 0 {
		p.Texts = append(p.Texts, paper.Text{Said: note, At: r2.Sub(at[0], r2.Scale(noteIn, out))})
	}
}
