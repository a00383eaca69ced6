package form

import (
	"math"
	"slices"

	"cowl/mesh/body"

	"gonum.org/v1/gonum/spatial/r2"
)

// flatHeights places the landmarks where the flat block has them over its
// waist line.
func flatHeights(b body.Body) heights {
	neck := b.NapeToWaist + body.NapeDrop
	return heights{
		neck:     neck,
		nape:     b.NapeToWaist,
		frontLow: neck - frontDrop(b),
		underarm: neck - (body.NapeDrop + b.ArmscyeDepth + body.ArmscyeEase),
		apex:     neck - b.ApexDepth,
		hip:      -b.WaistToHip,
		bottom:   -b.WaistToHip - 0.06,
		top:      neck + neckColumn,
	}
}

// neckColumn is how far the neck cap stands over the neck points, m.
const neckColumn = 0.055

// frontDrop is how far the front neck point lies below neck-point level in the
// flat block, m: a fifth of the neck less 2 mm (common practice).
func frontDrop(b body.Body) float64 { return b.Neck/5 - 0.002 }

// shallowest is the least depth of the front neck as a share of the flat one. A
// bust that stands far out draws the neck points down to the front neck point.
const shallowest = 0.4

// heightsOver places the landmarks so that the lengths of the flat block lie
// over this shape as a taut tape lies: neck point to apex, apex to waist,
// front neck to waist on CF, nape to waist on CB; the underarm keeps its height.
// A block has its lengths on the surface; heights equal to them would make every form too long for it.
func (s *shape) heightsOver(b body.Body) heights {
	flat := flatHeights(b)
	x := b.BustSpan / 2
	apexZ, waistZ := s.frontZ(x, s.at.apex), s.frontZ(x, 0)
	slant := math.Hypot(b.ApexDepth, x-halfNeck(b))
	h := flat
	h.apex = leg(flat.apex, apexZ-waistZ)
	h.neck = h.apex + s.at.neck - s.at.apex + slant - s.slantTape(b)
	h.frontLow = min(s.heightAlong(flat.frontLow, 1), h.neck-shallowest*frontDrop(b))
	h.nape = s.heightAlong(b.NapeToWaist, -1)
	h.top = h.neck + neckColumn
	return h
}

// leg is the other leg of a right triangle.
func leg(hypotenuse, a float64) float64 {
	return math.Sqrt(math.Max(hypotenuse*hypotenuse-a*a, 0))
}

// slantTape is the length of a tape drawn taut from the neck point to the apex
// in the vertical plane through both, m: it runs along the hull of the section.
func (s *shape) slantTape(b body.Body) float64 {
	const n = 64
	rise, run := s.at.neck-s.at.apex, halfNeck(b)-b.BustSpan/2
	length := math.Hypot(rise, run)
	pts := []r2.Vec{{X: length}}
	for i := range n {
		t := float64(i) / n
		pts = append(pts, r2.Vec{X: t * length, Y: s.frontZ(b.BustSpan/2+t*run, s.at.apex+t*rise)})
	}
	apexZ := pts[1].Y
	// What lies behind the chord would lengthen the hull on its other side.
	pts = slices.DeleteFunc(pts, func(p r2.Vec) bool { return p.Y*length < apexZ*(length-p.X) })
	return tape(pts) - math.Hypot(length, apexZ)
}

// heightAlong returns the height that lies the given length over the waist
// along the middle line of the front (way = 1) or the back (−1).
func (s *shape) heightAlong(length, way float64) float64 {
	const step = 1e-3
	z := s.frontZ
	if way < 0 {
		z = s.backZ
	}
	y, sum := 0.0, 0.0
	for sum < length && y < 1 {
		d := math.Hypot(step, z(0, y+step)-z(0, y))
		y, sum = y+step, sum+d
	}
	return y - (sum - length)
}

// miss is the largest difference between two sets of heights, m.
func (h heights) miss(o heights) float64 {
	return max(math.Abs(h.neck-o.neck), math.Abs(h.nape-o.nape), math.Abs(h.frontLow-o.frontLow), math.Abs(h.apex-o.apex))
}

// halfway returns the heights between two sets.
func (h heights) halfway(o heights) heights {
	mid := func(a, b float64) float64 { return (a + b) / 2 }
	return heights{
		neck: mid(h.neck, o.neck), nape: mid(h.nape, o.nape), frontLow: mid(h.frontLow, o.frontLow),
		underarm: mid(h.underarm, o.underarm), apex: mid(h.apex, o.apex),
		hip: mid(h.hip, o.hip), bottom: mid(h.bottom, o.bottom), top: mid(h.top, o.top),
	}
}
