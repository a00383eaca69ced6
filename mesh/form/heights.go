package form

import (
	"math"

	"cowl/mesh/body"
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

// heightsOver places the landmarks so that the lengths of the flat block lie
// over this shape as a taut tape lies: neck point to apex, apex to waist,
// front neck to waist on CF, nape to waist on CB. A block has its lengths on
// the surface; heights equal to them would make every form too long for it.
func (s *shape) heightsOver(b body.Body) heights {
	flat := flatHeights(b)
	x := b.BustSpan / 2
	apexZ, waistZ := s.frontZ(x, s.at.apex), s.frontZ(x, 0)
	slant := math.Hypot(b.ApexDepth, x-halfNeck(b))
	h := flat
	h.apex = leg(flat.apex, apexZ-waistZ)
	h.neck = h.apex + leg(slant, math.Hypot(x-halfNeck(b), apexZ))
	h.frontLow = s.heightAlong(flat.frontLow, 1)
	h.nape = s.heightAlong(b.NapeToWaist, -1)
	h.top = h.neck + neckColumn
	return h
}

// leg is the other leg of a right triangle.
func leg(hypotenuse, a float64) float64 {
	return math.Sqrt(math.Max(hypotenuse*hypotenuse-a*a, 0))
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
