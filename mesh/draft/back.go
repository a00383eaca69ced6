package draft

import (
	"fmt"
	"math"
	"slices"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// Back is the whole plain bodice back that is sewn to a cowl front, with its
// back-neck facing, symmetric about X = 0 (CB). All places are metres; the
// open lines are of one half, seen from the right side, so X runs from CB to the side.
// Beside a back cowl it is the plain front: its CB is CF.
type Back struct {
	Cowl     Side     // where the cowl is worn that it is sewn to
	Outline  []r2.Vec // closed seam line, counter-clockwise, first point CB at the waist, no allowance
	Neck     []r2.Vec // cowl point to CB
	Shoulder []r2.Vec // cowl point to tip
	Armhole  []r2.Vec // tip to underarm
	Side     []r2.Vec // underarm to waist or hem
	Waist    []r2.Vec // side to CB, the lower edge: waist, which juts out between the dart legs, see jutted, or hem
	Dart     []r2.Vec // outer leg end at the waist, point, inner leg end

	WaistLine []r2.Vec   // side to CB, inside a back that goes on to a hem; else nil
	DartBelow [][]r2.Vec // of such a back, the dart below the waist: to its lower point, or either leg to the hem

	Facing  []r2.Vec // closed outline of the back-neck facing; nil: the front has none
	FacedBy float64  // m, how far the facing reaches down the shoulder seam
	Notches []Notch
}

const (
	// backNeckDrop is how far CB is lowered for a cowl point 4 cm down the
	// shoulder: 1½ in (Artvani, "Method of sewing mid depth cowl", 2014). A
	// neck that is widened less is lowered less, in proportion.
	backNeckDrop  = 0.038
	backNeckWiden = 0.040
	// backFacingDepth is the depth of the back-neck facing on CB, m: within the
	// 5 to 7.5 cm of a self-facing (Poldapop, "Drafting a facing for a cowl neck
	// top", 2012).
	backFacingDepth = 0.070
)

// MatchBack cuts the back that is sewn to the front p from the block k, or the plain
// front that is sewn to the back cowl p, see PlainFromBody. The
// shoulder seam is measured from the tip to the length of the front's, so the
// ease of the back shoulder falls away with the widened neck; the side seam
// takes the front's length from the underarm down. A front that goes on to a hem has
// such a back. Where the front was cut
// from a block with another shoulder, the tip of the back is set first. The
// neck is a curve square to CB and to the shoulder, the facing ends where the
// front's ends. An outline that crosses itself is an error.
func MatchBack(k BackBlock, p Cowl) (Back, error) {
	want := p.ShoulderLength()
	k = k.shouldered(p.CowlPoint + want + k.ease)
	b := Back{Cowl: p.Worn}
	cowl := lerp(k.ShoulderTip, k.Neck, want/dist(k.Neck, k.ShoulderTip))
	b.Shoulder = []r2.Vec{cowl, k.ShoulderTip}
	b.Armhole = append(append([]r2.Vec{k.ShoulderTip}, k.Armhole...), k.Underarm)
	down := r2.Unit(r2.Sub(k.SideWaist, k.Underarm))
	b.Side = []r2.Vec{k.Underarm, r2.Add(k.Underarm, r2.Scale(p.SideToWaist(), down))}
	b.Waist = []r2.Vec{b.Side[1], k.DartOuter, k.DartInner, k.CBWaist}
	b.Dart = []r2.Vec{k.DartOuter, k.DartPoint, k.DartInner}
	b.blend(p)
	b.Waist = jutted(b.Waist, b.Dart)
	if p.Hem > 0 {
		if err := b.hemmed(k, p); err != nil {
			return Back{}, err
		}
	}
	cb := r2.Vec{Y: k.Nape.Y}
	if b.Worn() == AtBack {
		cb.Y -= backNeckDrop * math.Min(1, p.CowlPoint/backNeckWiden)
	}
	seam := r2.Unit(r2.Sub(k.ShoulderTip, k.Neck))
	b.Neck = neckCurve(cowl, cb, seam)
	if end := polyline.Length(p.FacingEnd); p.Facing > 0 && end > samePoint {
		b.FacedBy = end
		b.Facing = backFacing(b.Neck, r2.Add(cowl, r2.Scale(end, seam)), seam)
	}
	b.close()
	if err := checkOutline(named("back", b.Outline)); err != nil {
		return Back{}, limit.Errorf("back", "%v: %v", b.Worn(), err)
	}
	if b.Facing != nil {
		if err := checkOutline(named("facing", b.Facing)); err != nil {
			return Back{}, limit.Errorf("back", "%v-neck facing: %v", b.Worn(), err)
		}
	}
	b.Notches = b.notches()
	return b, nil
}

// Worn is where b is worn: not where the cowl is.
func (b Back) Worn() Side { return b.Cowl.Other() }

// jutted returns the waist with the mouth of the dart between its legs. The dart is
// pressed towards CB: its cloth lies folded at the middle under the back, and its edge on
// the seam if the mouth from the inner leg to the middle mirrors the waist about the inner
// leg, and from there to the outer leg about the middle (common practice: fold the dart,
// then cut). Allowances laid outside that line fold onto each other too.
func jutted(waist, dart []r2.Vec) []r2.Vec {
	outer, point, inner := dart[0], dart[1], dart[2]
	k := slices.Index(waist, inner)
	middle := lerp(outer, inner, 0.5)
	half, at := []r2.Vec{}, middle
	for i := k; i < len(waist)-1; i++ {
		a, b := reflected(waist[i], point, inner), reflected(waist[i+1], point, inner)
		d, m := r2.Sub(b, a), r2.Sub(middle, point)
		t := r2.Cross(r2.Sub(point, a), m) / r2.Cross(d, m)
		at = lerp(a, b, t)
		if t <= 1 {
			break
		}
		half = append(half, b)
	}
	mouth := movedLine(half, func(v r2.Vec) r2.Vec { return reflected(v, point, middle) })
	mouth = append(append(mouth, at), polyline.Reversed(half)...)
	return slices.Insert(slices.Clone(waist), k, mouth...)
}

// reflected returns v mirrored about the line through a and b.
func reflected(v, a, b r2.Vec) r2.Vec {
	u, d := r2.Unit(r2.Sub(b, a)), r2.Sub(v, a)
	return r2.Add(a, r2.Sub(r2.Scale(2*r2.Dot(d, u), u), d))
}

// anotherShoulder is by how much a shoulder must differ for the tip to be
// moved, m; less is taken up where the neck is cut.
const anotherShoulder = 0.002

// shouldered returns k with its tip set at the length of a shoulder seam; the
// armhole follows, less and less down to the underarm.
func (k BackBlock) shouldered(long float64) BackBlock {
	more := long - dist(k.Neck, k.ShoulderTip)
	if math.Abs(more) <= anotherShoulder {
		return k
	}
	step := r2.Scale(more, r2.Unit(r2.Sub(k.ShoulderTip, k.Neck)))
	line := append(append([]r2.Vec{k.ShoulderTip}, k.Armhole...), k.Underarm)
	whole, s := polyline.Length(line), 0.0
	out := k
	out.ShoulderTip = r2.Add(k.ShoulderTip, step)
	out.Armhole = nil
	for i, v := range k.Armhole {
		s += dist(line[i], v)
		out.Armhole = append(out.Armhole, r2.Add(v, r2.Scale(1-s/whole, step)))
	}
	return out
}

// neckCurve returns a curve from the shoulder to CB, square to both: seam is
// the direction of the shoulder seam, away from the neck.
func neckCurve(shoulder, cb, seam r2.Vec) []r2.Vec {
	h := dist(shoulder, cb)
	rise := math.Min(h, 2*math.Abs(shoulder.Y-cb.Y))
	square := r2.Scale(rise, r2.Vec{X: seam.Y, Y: -seam.X}) // down
	var line []r2.Vec
	for i := 0; i <= 2*pointsPerSpan; i++ {
		line = append(line, hermite(shoulder, cb, square, r2.Vec{X: -h}, float64(i)/(2*pointsPerSpan)))
	}
	return line
}

// backFacing returns the closed facing below the neck line (shoulder to CB),
// which it leaves at the place end of the shoulder seam.
func backFacing(neck []r2.Vec, end, seam r2.Vec) []r2.Vec {
	cb := neck[len(neck)-1]
	free := neckCurve(end, r2.Vec{Y: cb.Y - backFacingDepth}, seam)
	half := append(polyline.Reversed(free), neck...)
	return folded(half)
}

// folded closes a left half line, CB to CB, counter-clockwise with its mirror
// image.
func folded(half []r2.Vec) []r2.Vec {
	out := join(nil, half...)
	for i := len(out) - 2; i > 0; i-- {
		out = append(out, mirrored(out[i]))
	}
	return out
}

// close draws the outline from the lines.
func (b *Back) close() {
	half := polyline.Reversed(b.Waist)
	for _, l := range [][]r2.Vec{polyline.Reversed(b.Side), polyline.Reversed(b.Armhole),
		polyline.Reversed(b.Shoulder), b.Neck} {
		half = join(half, l...)
	}
	b.Outline = folded(half)
}

// named gives every point of an outline a name for messages.
func named(what string, outline []r2.Vec) []corner {
	c := make([]corner, len(outline))
	for i, v := range outline {
		c[i] = corner{fmt.Sprintf("%s %d", what, i+1), v}
	}
	return c
}

// twin is the distance of the two notches by which a back is told from a
// front, m (common practice).
const twin = 0.006

// notches returns the marks of both halves, wearer's left first.
func (b Back) notches() []Notch {
	marks := []Notch{
		{b.Waist[len(b.Waist)-1], r2.Vec{Y: -1}, b.Worn().Centre() + ", " + b.LowerEdge()},
		{b.Neck[len(b.Neck)-1], r2.Vec{Y: 1}, b.Worn().Centre() + ", neck"},
	}
	half := b.Worn().armholeNotches(b.Armhole)
	half = append(half, b.lowerNotches()...)
	if b.FacedBy > 0 {
		at, _ := polyline.Along(b.Shoulder, b.FacedBy)
		half = append(half, Notch{at, outward(b.Shoulder[0], b.Shoulder[1]), "end of the facing"})
	}
	for _, n := range half {
		marks = append(marks, n, Notch{mirrored(n.At), mirrored(n.Dir), n.Name})
	}
	return marks
}

// armholeNotches mark the middle of an armhole: one at the front, two at the back.
func (s Side) armholeNotches(armhole []r2.Vec) []Notch {
	places := []float64{0}
	if s == AtBack {
		places = []float64{-twin / 2, twin / 2}
	}
	var out []Notch
	for _, d := range places {
		at, i := polyline.Along(armhole, polyline.Length(armhole)/2+d)
		out = append(out, Notch{at, outward(armhole[i], armhole[i+1]), "armhole, half way"})
	}
	return out
}
