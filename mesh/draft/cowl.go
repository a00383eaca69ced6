package draft

import (
	"cowl/mesh/polyline"
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
)

// Notch is a mark on the outline that helps to put seams together.
type Notch struct {
	At   r2.Vec // m, on the outline
	Dir  r2.Vec // unit, out of the piece
	Name string
}

// DrapeLine is where a fold is to lie in the flat: from CF to the shoulder seam
// of the wearer's left half, m. One slash makes one drape (common practice of
// flat pattern cutting).
type DrapeLine struct{ CF, Shoulder r2.Vec }

// Cowl is the whole cowl front with its self-facing, left and right half,
// symmetric about X = 0. All places are metres. What is said of the front holds of a
// back cowl too: its CF is CB, its front neck point the nape, its apex the point of the
// back dart, and the half at X above 0 the wearer's right.
type Cowl struct {
	Worn      Side     // where it is worn
	Outline   []r2.Vec // closed seam line with facing, counter-clockwise, first point CF at the waist or hem, no allowance
	CutLine   []r2.Vec // closed, Outline moved out by Trim
	FoldY     float64  // the facing folds along Y = FoldY, X from -HalfEdge to HalfEdge: the cowl edge
	HalfEdge  float64  // m, edge length of one half
	Extension float64  // m, HalfEdge less the distance of the cowl point from CF on the block
	Taken     float64  // m, of the half edge, slid over the cowl point on the stand; below 0: let down
	Facing    float64  // m, depth of the facing on CF
	Grain     float64  // rad from CF (+Y) to the warp, towards the wearer's left
	CowlPoint float64  // m, place of the cowl point down the shoulder seam
	Trim      float64  // m, allowance
	Hem       float64  // m, the front goes on so far below the waist; 0: it ends there
	// m, what is left of the dart where it is not sewn but ease at the waist: with a hem, or too
	// little to sew
	Eased float64
	Clean bool // its lines run on over the seams, see Blended

	// Open lines of the wearer's left half.
	Shoulder   []r2.Vec // cowl point to tip, pleats open
	Armhole    []r2.Vec // tip to underarm
	Side       []r2.Vec // underarm to waist, or to the hem
	Waist      []r2.Vec // side to CF, the lower edge: waist, which crosses what is left of the dart, or hem
	WaistLine  []r2.Vec // side to CF, inside a front that goes on to a hem; else nil
	FacingEnd  []r2.Vec // cowl point to free corner; one point if there is no facing
	FacingEdge []r2.Vec // free corner to CF; the cowl edge if there is no facing
	DartLeft   []r2.Vec // outer leg end, apex, inner leg end of the open rest of the dart; nil if it is closed

	sideWaist float64 // m, of Side, down to the waist, if there is a hem

	Apex     r2.Vec // bust point of the wearer's left half
	Notches  []Notch
	Drapes   []DrapeLine // of the slashes that were opened, the one nearest to the edge first
	Pleats   []Pleat     // in the shoulder seam of either half, the one nearest to the cowl point first
	Releases []Release   // release slashes of both halves, wearer's left first
	Weight   float64     // kg, sewn to the free edge of the facing on CF

	StayShoulder, StayEdge bool // stay tape along both shoulder seams; along the cowl edge

	Added   Added // how the extension came about
	How     How   // how Added.FromOther was added
	Slashes int   // number of slashes opened, 0 unless How is Slash and was needed
	Block   Block // what the piece was cut from
}

// newCowl returns a piece with all but its lines.
func newCowl(b Block, c Cut, a Added) Cowl {
	p := Cowl{
		Worn: c.Worn, Facing: c.Facing, Grain: c.Grain, CowlPoint: c.CowlPoint, Trim: c.Trim,
		Added: a, How: c.How, Block: b, Extension: a.FromDart + a.FromOther,
	}
	if c.How == Slash && a.Amount > 0 {
		p.Slashes = c.Slashes
	}
	return p
}

// draw draws the lines of the half front f, its facing and the other half, down to the
// waist or the hem below it.
func (p *Cowl) draw(f front, end, edge []r2.Vec, hem float64) error {
	p.FoldY, p.HalfEdge, p.Pleats, p.Drapes = f.edge().Y, f.edge().X, f.pleats, f.drapes
	p.Shoulder, p.Armhole = f.shoulder, f.armhole
	p.Side = []r2.Vec{f.armhole[len(f.armhole)-1], f.side}
	p.Waist, p.Apex = f.waist(), f.apex
	p.FacingEnd, p.FacingEdge = end, edge
	if dist(f.outer, f.inner) > leastDart {
		p.DartLeft = []r2.Vec{f.outer, f.apex, f.inner}
	}
	if hem > 0 {
		if err := p.hemmed(f, hem); err != nil {
			return err
		}
	}
	for _, c := range p.corners() {
		p.Outline = append(p.Outline, c.at)
	}
	p.Notches = notches(*p)
	return nil
}

// corners returns the outline with a name for each point.
func (p *Cowl) corners() []corner {
	var half []corner
	add := func(name string, line []r2.Vec) {
		for i, v := range line {
			if len(half) == 0 || dist(half[len(half)-1].at, v) > samePoint {
				half = append(half, corner{fmt.Sprintf("%s %d", name, i+1), v})
			}
		}
	}
	add(p.LowerEdge(), polyline.Reversed(p.Waist))
	add("side", polyline.Reversed(p.Side))
	add("armhole", polyline.Reversed(p.Armhole))
	add("shoulder", polyline.Reversed(p.Shoulder))
	add("facing end", p.FacingEnd)
	add("facing edge", p.FacingEdge)
	all := half
	for i := len(half) - 2; i > 0; i-- { // the CF points, first and last, are their own mirror
		all = append(all, corner{"right " + half[i].name, mirrored(half[i].at)})
	}
	return all
}

// notches returns the marks of both halves, wearer's left first.
func notches(p Cowl) []Notch {
	down, up := r2.Vec{Y: -1}, r2.Vec{Y: 1}
	top := p.FacingEdge[len(p.FacingEdge)-1]
	marks := []Notch{
		{p.Waist[len(p.Waist)-1], down, p.Worn.Centre() + ", " + p.LowerEdge()},
		{top, up, p.Worn.Centre() + ", top"},
	}
	half := []Notch{{p.Shoulder[0], r2.Vec{X: 1}, "cowl point, fold"}}
	half = append(half, p.Worn.armholeNotches(p.Armhole)...)
	if end := polyline.Length(p.FacingEnd); end > samePoint {
		at, k := polyline.Along(p.Shoulder, end)
		half = append(half, Notch{at, outward(p.Shoulder[k], p.Shoulder[k+1]), "end of the facing"})
	}
	half = append(half, p.pleatNotches()...)
	half = append(half, p.waistNotches()...)
	if p.DartLeft != nil {
		d := outward(p.DartLeft[0], p.DartLeft[2])
		half = append(half, Notch{p.DartLeft[0], d, "dart, outer leg"}, Notch{p.DartLeft[2], d, "dart, inner leg"})
	}
	for _, n := range half {
		marks = append(marks, n, Notch{mirrored(n.At), mirrored(n.Dir), n.Name})
	}
	return marks
}

// outward returns the unit normal on the left of a→b: out of the piece for
// lines of the wearer's left half, which run clockwise.
func outward(a, b r2.Vec) r2.Vec {
	d := r2.Unit(r2.Sub(b, a))
	return r2.Vec{X: -d.Y, Y: d.X}
}
