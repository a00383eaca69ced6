// Package paper describes a flat piece as it goes on paper: seam line, cut
// line with an allowance for each edge, the lines, notches and holes inside,
// grain line and words. Every export draws this one description, so that SVG,
// PDF, DXF and CSV agree. Places are metres, X to the wearer's left or, of a piece worn
// at the back, to the right, Y up, seen from the right side of the cloth. Start at Piece and FromDraft.
package paper

import (
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// Piece is one flat piece, whole: nothing is cut on a fold.
type Piece struct {
	Worn     draft.Side    // where it is worn
	Name     string        // short, such as "Front"; no two pieces of a style share one
	Size     string        // of the wearer, for a piece of a nest
	Nest     string        // name of the nest: the pieces of one are drawn over each other; "": none
	Words    []string      // lines printed under the name: how many to cut and how
	Quantity int           // how many to cut
	Outline  []r2.Vec      // closed seam line, counter-clockwise, no allowance
	Edges    []Edge        // the stretches of Outline, in its order, together all of it
	CutLine  []r2.Vec      // closed, counter-clockwise: Outline and its allowances; see Cut
	Lines    []Line        // lines inside that are not cut
	Notches  []draft.Notch // marks on the seam line that help to put seams together
	Holes    []Hole        // marks inside the piece that are pierced or tacked
	Texts    []Text        // more words inside the piece, at places of their own
	Steps    []string      // of the work on this piece, before it is sewn to others
	// foot and head of the grain line, which lies along the warp; see Settle. The same place: not
	// known
	GrainLine [2]r2.Vec
	Label     r2.Vec  // m, middle of the room for name and words; see Settle
	LabelWide float64 // m, how wide words there may be
}

// Edge is a stretch of the seam line between two corners.
type Edge struct {
	Name      string  // such as "left side seam", seen by the wearer
	From, To  int     // indices into Outline; To is the next edge's From, the last edge ends at 0
	Allowance float64 // m, from the seam line to the cut line
	Curve     bool    // points between From and To lie on a smooth curve; else they are corners
}

// Kind says what a line inside a piece stands for.
type Kind int

// The kinds of lines. They differ in how they are drawn and in the layer they
// have in a DXF file.
const (
	Centre Kind = iota // centre front or back
	Fold               // cloth folds in along it
	Dart               // stitched together with its mirror image: outer leg, apex, inner leg
	Pleat              // a leg of a pleat: the fold, or the place that it is brought onto
	Slash              // cut in from the seam: first point on the seam line, last the end of the cut
	Guide              // any other line to be marked on the cloth
)

// Line is an open line inside a piece, marked but not cut.
type Line struct {
	Name   string
	Kind   Kind
	Points []r2.Vec // m, at least two
}

// Hole is a marked place inside a piece.
type Hole struct {
	Name string // such as "left apex"
	At   r2.Vec // m
}

// Text is a line of words inside a piece.
type Text struct {
	Said string
	At   r2.Vec // m, middle of the words
}

// Grain returns the angle from +Y to the warp, towards +X (rad), within ±π/2.
func (p Piece) Grain() float64 { return leaning(r2.Sub(p.GrainLine[1], p.GrainLine[0])) }

// Centre returns the name of the centre line, "centre front" or the like, or
// "" if the piece has none.
func (p Piece) Centre() string {
	for _, l := range p.Lines {
		if l.Kind == Centre {
			return l.Name
		}
	}
	return ""
}
