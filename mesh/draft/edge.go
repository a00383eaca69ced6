package draft

import "math"

// The cowl edge hangs between two cowl points that are 2·half apart. Two
// curves bracket its drop below them: a V, as if a weight hung on CF, and the
// curve of a hanging chain (catenary), as if the edge carried its own weight
// only.

// EdgeForDrop returns the half edge length (m) that hangs drop metres below
// the cowl points, half metres from CF each:
// V: √(half² + drop²); chain: a·sinh(half/a) with drop = a(cosh(half/a) − 1).
func EdgeForDrop(half, drop float64) (v, chain float64) {
	if drop <= 0 {
		return half, half
	}
	t := chainParameter(func(t float64) float64 { return half * (math.Cosh(t) - 1) / t }, drop)
	return math.Hypot(half, drop), half * math.Sinh(t) / t
}

// DropForEdge is the inverse of EdgeForDrop: the drop (m) of a half edge of
// the length edge. An edge no longer than half does not drop.
func DropForEdge(half, edge float64) (v, chain float64) {
	if edge <= half || half <= 0 {
		return 0, 0
	}
	t := chainParameter(func(t float64) float64 { return half * math.Sinh(t) / t }, edge)
	return math.Sqrt(edge*edge - half*half), half * (math.Cosh(t) - 1) / t
}

// chainParameter solves rising(t) = want for t = half/a. t = 50 is a chain
// 10²⁰ times as long as wide.
func chainParameter(rising func(float64) float64, want float64) float64 {
	return solve(50, want, func(t float64) float64 {
		return rising(math.Max(t, 1e-6)) // below, cosh t − 1 has no digits left
	})
}
