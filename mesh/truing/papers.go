package truing

import (
	"fmt"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/ruler"

	"gonum.org/v1/gonum/spatial/r2"
)

// Allowances are what is cut outside the seam lines, in metres.
type Allowances struct {
	Seam float64 // everywhere else
	Side float64 // side seams
}

// Allowances of a trued piece, m: 1 cm all round, 2.5 cm on side seams on the
// bias, which are levelled after they have hung (Pattern Pandemonium, "A tip or
// two", 2012; Folkwear, "Tips for sewing tricky fabrics: bias").
const (
	plainSeam = 0.010
	biasSeam  = 0.025
	// straight is how far from the straight grain a seam still counts as
	// straight: it stretches little.
	straight = 15 * math.Pi / 180
)

// DefaultAllowances returns the allowances for a piece on that grain (rad).
func DefaultAllowances(grain float64) Allowances {
	a := Allowances{Seam: plainSeam, Side: plainSeam}
	if off := math.Abs(math.Mod(grain+math.Pi, math.Pi/2)); math.Min(off, math.Pi/2-off) > straight {
		a.Side = biasSeam
	}
	return a
}

// Suit is a trued front with all that is cut with it, ready for paper. Front is the cowl
// and Back its plain piece, whichever of them is worn at the front.
type Suit struct {
	Front     draft.Cowl
	Back      draft.Back
	BackGrain float64 // rad from CB (+Y) to the warp, towards +X
	Allow     Allowances
	Gap       draft.Gap    // opening that is closed when worn
	Strap     *draft.Strap // of a back cowl; nil: it has none
}

// CowlPapers lays out the front of s alone, and the strap of a back cowl.
func (s Suit) CowlPapers() ([]paper.Piece, error) {
	front, err := FrontPaper(s.Front, s.Allow)
	if err != nil {
		return nil, err
	}
	more := s.marked(&front, nil)
	return append([]paper.Piece{front}, more...), nil
}

// marked marks what the cowl and its plain piece (nil: it is not on paper) have beyond
// their seams, the opening and the strap, and returns the strap, if there is one.
func (s Suit) marked(cowl, plain *paper.Piece) (strap []paper.Piece) {
	if s.Gap.Closure == draft.NoClosure && s.Strap == nil {
		return nil
	}
	if s.Gap.Closure != draft.NoClosure {
		s.closed(cowl, plain)
	}
	if s.Strap != nil {
		strap = []paper.Piece{s.strapped(cowl, plain)}
	}
	cowl.Settle(s.Front.Grain)
	if plain != nil {
		plain.Settle(s.BackGrain)
	}
	return strap
}

// Papers lays out front, back, back-neck facing and strap for paper, with notches
// that meet and the allowances of s.
func (s Suit) Papers() ([]paper.Piece, error) {
	front, err := FrontPaper(s.Front, s.Allow)
	if err != nil {
		return nil, err
	}
	back := s.back()
	strap := s.marked(&front, &back)
	pieces := []paper.Piece{front, back}
	if s.Back.Facing != nil {
		pieces = append(pieces, s.facing())
	}
	return append(pieces, strap...), nil
}

// FrontPaper lays out a front alone as it is laid out beside its back: the same notches
// and allowances.
func FrontPaper(p draft.Cowl, a Allowances) (paper.Piece, error) {
	front, err := paper.FromDraft(p)
	if err != nil {
		return front, fmt.Errorf("truing: %w", err)
	}
	front.Notches = append(front.Notches, sideNotches(p.Side)...)
	a.allow(&front)
	front.Settle(p.Grain)
	return front, nil
}

// allow sets the allowance of every edge and cuts the piece anew.
func (a Allowances) allow(p *paper.Piece) {
	for i := range p.Edges {
		p.Edges[i].Allowance = a.Seam
		if name := p.Edges[i].Name; name == "left side seam" || name == "right side seam" {
			p.Edges[i].Allowance = a.Side
		}
	}
	p.CutLine = paper.Cut(p.Outline, p.Edges)
}

// back lays out the back.
func (s Suit) back() paper.Piece {
	b := s.Back
	p := paper.Piece{
		Worn: b.Worn(), Name: ruler.Capital(b.Worn().String()), Words: []string{"cut 1, whole, right side up"}, Quantity: 1,
		Outline: b.Outline, Notches: append(b.Notches, sideNotches(b.Side)...),
		Lines: backLines(b),
	}
	above, below := b.Worn().Halves()
	for _, m := range b.Marks() {
		p.Holes = append(p.Holes, paper.Hole{Name: above + " " + m.Name, At: m.At},
			paper.Hole{Name: below + " " + m.Name, At: mirrored(m.At)})
	}
	p.Edges = edges(p.Outline, b.Worn(), []run{
		{b.LowerEdge(), b.Waist[0], true}, {"side seam", b.Side[0], false}, {"armhole", b.Armhole[0], true},
		{"shoulder", b.Shoulder[0], false}, {"neck", b.Neck[len(b.Neck)-1], true},
	})
	s.Allow.allow(&p)
	p.Settle(s.BackGrain)
	return p
}

// backLines lists the lines inside the back.
func backLines(b draft.Back) []paper.Line {
	above, below := b.Worn().Halves()
	lines := []paper.Line{{Name: b.Worn().Centre(), Kind: paper.Centre, Points: []r2.Vec{b.Waist[len(b.Waist)-1],
		b.Neck[len(b.Neck)-1]}}}
	both := func(name string, kind paper.Kind, line []r2.Vec) {
		lines = append(lines, paper.Line{Name: above + " " + name, Kind: kind, Points: line},
			paper.Line{Name: below + " " + name, Kind: kind, Points: mirroredLine(line)})
	}
	both("dart", paper.Dart, b.Dart)
	for _, line := range b.DartBelow {
		both("dart below the waist", paper.Dart, line)
	}
	if b.WaistLine != nil {
		both("waist", paper.Guide, b.WaistLine)
	}
	return lines
}

// facing lays out the back-neck facing.
func (s Suit) facing() paper.Piece {
	f := s.Back.Facing
	top := s.Back.Neck[len(s.Back.Neck)-1]
	corner := s.Back.Shoulder[0]
	end := r2.Add(corner, r2.Scale(s.Back.FacedBy, r2.Unit(r2.Sub(s.Back.Shoulder[1], corner))))
	worn := s.Back.Worn()
	p := paper.Piece{
		Worn: worn, Name: ruler.Capital(worn.String()) + " neck facing", Words: []string{"cut 1, whole, same grain as the " +
			worn.String(), "no interfacing"}, Quantity: 1,
		Outline: f,
		Lines:   []paper.Line{{Name: worn.Centre(), Kind: paper.Centre, Points: []r2.Vec{f[0], top}}},
		Notches: []draft.Notch{{At: top, Dir: r2.Vec{Y: 1}, Name: worn.Centre() + ", neck"}},
	}
	p.Edges = edges(f, worn, []run{{"free edge", end, true}, {"shoulder", corner, false}, {"neck", top, true}})
	s.Allow.allow(&p)
	p.Settle(s.BackGrain)
	return p
}

// run is an edge of the half at X above 0 and where it ends, from the middle of the
// lower edge up.
type run struct {
	name  string
	end   r2.Vec
	curve bool
}

// edges lists the stretches of an outline of a piece worn at a side that begins at X = 0
// below and is symmetric.
func edges(outline []r2.Vec, worn draft.Side, runs []run) []paper.Edge {
	above, below := worn.Halves()
	var up, down []paper.Edge
	n, from := len(outline), 0
	for _, r := range runs {
		to := nearestPoint(outline, r.end)
		up = append(up, paper.Edge{Name: above + " " + r.name, From: from, To: to, Curve: r.curve})
		down = append([]paper.Edge{{Name: below + " " + r.name, From: (n - to) % n, To: (n - from) % n, Curve: r.curve}},
			down...)
		from = to
	}
	return append(up, down...)
}

// nearestPoint returns the index of the point of line nearest to v.
func nearestPoint(line []r2.Vec, v r2.Vec) int {
	best := 0
	for i, w := range line {
		if r2.Norm(r2.Sub(v, w)) < r2.Norm(r2.Sub(v, line[best])) {
			best = i
		}
	}
	return best
}

// sideNotches marks the side seams half way down, where front and back meet.
func sideNotches(side []r2.Vec) []draft.Notch {
	at, i := along(side, 0.5)
	d := r2.Unit(r2.Sub(side[i+1], side[i]))
	out := r2.Vec{X: -d.Y, Y: d.X}
	const name = "side seam, half way"
	return []draft.Notch{{At: at, Dir: out, Name: name}, {At: mirrored(at), Dir: mirrored(out), Name: name}}
}

func mirrored(v r2.Vec) r2.Vec { return r2.Vec{X: -v.X, Y: v.Y} }

func mirroredLine(line []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(line))
	for i, v := range line {
		out[i] = mirrored(v)
	}
	return out
}
