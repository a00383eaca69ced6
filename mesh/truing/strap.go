package truing

import (
	"fmt"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

// strapped marks where the strap of s is caught in the shoulder seams of the cowl and of
// its plain piece (nil: it is not on paper), and returns the strap.
func (s Suit) strapped(cowl, plain *paper.Piece) paper.Piece {
	s.joins(cowl, s.Front.Shoulder)
	if plain != nil {
		s.joins(plain, s.Back.Shoulder)
	}
	p := strapPaper(*s.Strap, s.Allow.Seam)
	cowl.Steps = append(cowl.Steps, fmt.Sprintf("Fold each %v lengthwise, right side in, stitch its long edge and "+
		"turn it. Catch its raw ends in the shoulder seams, its middle on the notch %s from the cowl point%s. "+
		"Pin it on the wearer before it is sewn: it lies over the back below the nape and keeps the neck from sliding off.",
		s.Strap.Kind, ruler.Spoken().Length(s.Strap.At),
		map[draft.Strapping]string{draft.Tied: ", and tie the two in a bow at the centre back"}[s.Strap.Kind]))
	return p
}

// joins marks the middle of the strap on both shoulder seams of a piece: by a notch, or by
// a line into the piece where the notch would run out into the allowance of the facing.
func (s Suit) joins(p *paper.Piece, shoulder []r2.Vec) {
	at, i := along(shoulder, s.Strap.At/polyline.Length(shoulder))
	d := r2.Unit(r2.Sub(shoulder[i+1], shoulder[i]))
	out := r2.Vec{X: -d.Y, Y: d.X}
	kind := s.Strap.Kind.String()
	n := draft.Notch{At: at, Dir: out, Name: kind + ", middle"}
	if r2.Norm(r2.Sub(p.NotchOnCut(n), at)) <= notchOut*s.Allow.Seam {
		p.Notches = append(p.Notches, n, draft.Notch{At: mirrored(at), Dir: mirrored(out), Name: n.Name})
	} else {
		in := []r2.Vec{at, r2.Sub(at, r2.Scale(stopLong, out))}
		above, below := p.Worn.Halves()
		p.Lines = append(p.Lines, paper.Line{Name: above + " " + n.Name, Kind: paper.Guide, Points: in},
			paper.Line{Name: below + " " + n.Name, Kind: paper.Guide, Points: mirroredLine(in)})
	}
	p.Texts = append(p.Texts, paper.Text{Said: kind + " here", At: mirrored(r2.Sub(at, r2.Scale(noteIn, out)))})
}

const (
	notchOut  = 1.1   // how far out a notch may run, times the allowance
	strapSeam = 0.010 // m, allowance of the long edges of a strap at most: more would fill it (common practice)
)

// strapPaper lays out a strap as it is cut: flat, twice as wide as it is finished.
func strapPaper(s draft.Strap, allowance float64) paper.Piece {
	x, y, say := s.Wide, s.Long/2, ruler.Spoken().Length
	p := paper.Piece{
		Worn: draft.AtBack, Name: "Strap", Quantity: 1,
		Words:   []string{"cut 1, straight grain", "fold lengthwise, finished", say(s.Long) + " × " + say(s.Wide)},
		Outline: []r2.Vec{{X: -x, Y: -y}, {X: x, Y: -y}, {X: x, Y: y}, {X: -x, Y: y}},
		Notches: []draft.Notch{{At: r2.Vec{X: x}, Dir: r2.Vec{X: 1}, Name: "centre back"},
			{At: r2.Vec{X: -x}, Dir: r2.Vec{X: -1}, Name: "centre back"}},
	}
	ends := [2]string{"shoulder", "shoulder"}
	if s.Kind == draft.Tied {
		p.Name, p.Quantity, p.Notches, ends[0] = "Tie", 2, nil, "free end"
		p.Words[0] = "cut 2, straight grain"
	}
	long := math.Min(allowance, strapSeam)
	p.Edges = []paper.Edge{{Name: ends[0], From: 0, To: 1, Allowance: allowance},
		{Name: "long edge", From: 1, To: 2, Allowance: long},
		{Name: ends[1], From: 2, To: 3, Allowance: allowance}, {Name: "long edge", From: 3, To: 0, Allowance: long}}
	p.CutLine = paper.Cut(p.Outline, p.Edges)
	p.Settle(0) // the warp runs along it
	return p
}
