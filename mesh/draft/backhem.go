package draft

import (
	"cowl/mesh/polyline"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	// backDartBelow is how far below the waist the back waist dart ends that goes on
	// below it, as a share of waist to hip: 14 cm of 20 (common practice, from memory).
	backDartBelow = 0.7
	// dartClear is kept between the lower point of a dart and the hem, m; nearer, the
	// dart is sewn through to the hem.
	dartClear = 0.02
)

// hemmed goes on below the waist to the hem of the front p: side seam and hem by the
// rule of the front, CB straight down, the dart to a lower point.
func (b *Back) hemmed(k BackBlock, p Cowl) error {
	waist := b.Side[len(b.Side)-1]
	below, err := hipLine(waist, k.HipWide, k.HipDeep, polyline.Length(p.Side)-p.SideToWaist())
	if err != nil {
		return err
	}
	b.Side = join(b.Side, below...)
	b.Waist = hemFrom(b.Side, k.CBWaist.Y-p.Hem, squareFor)
	b.WaistLine = []r2.Vec{waist, k.CBWaist}
	b.DartBelow = b.dartBelow(backDartBelow*k.HipDeep, p.Hem)
	return nil
}

// dartBelow lists the lines of the dart below the waist, deep metres down, or cut off
// by the hem.
func (b *Back) dartBelow(deep, hem float64) [][]r2.Vec {
	outer, inner := b.Dart[0], b.Dart[2]
	low := r2.Vec{X: (outer.X + inner.X) / 2, Y: outer.Y - deep}
	if hem >= deep+dartClear {
		return [][]r2.Vec{{outer, low, inner}}
	}
	low.Y = outer.Y - math.Max(deep, hem+dartClear)
	var legs [][]r2.Vec
	for _, from := range []r2.Vec{outer, inner} {
		to := low
		if c := meets([]r2.Vec{from, low}, b.Waist); len(c) > 0 {
			to = c[0].at
		}
		legs = append(legs, []r2.Vec{from, to})
	}
	return legs
}

// LowerEdge is what the lower edge of b is called: waist or hem.
func (b Back) LowerEdge() string {
	if b.WaistLine != nil {
		return "hem"
	}
	return "waist"
}

// lowerNotches mark the legs of the dart on the lower edge, and the waist on the side
// seam of a back that goes on below it.
func (b Back) lowerNotches() []Notch {
	d := outward(b.Dart[0], b.Dart[2])
	legs := []r2.Vec{b.Dart[0], b.Dart[2]}
	var out []Notch
	if b.WaistLine != nil {
		share, _ := foot(b.Side, b.WaistLine[0])
		_, i := polyline.Along(b.Side, math.Max(0, share*polyline.Length(b.Side)-samePoint))
		out = append(out, Notch{b.WaistLine[0], outward(b.Side[i], b.Side[i+1]), "side seam, waist"})
		legs = nil
	}
	if len(b.DartBelow) == 2 {
		for _, leg := range b.DartBelow {
			legs = append(legs, leg[1])
		}
	}
	for i, v := range legs {
		out = append(out, Notch{v, d, "dart, " + []string{"outer", "inner"}[i] + " leg"})
	}
	return out
}

// Mark is a named place inside a piece.
type Mark struct {
	Name string
	At   r2.Vec
}

// Marks returns the ends of the dart that lie inside the wearer's left half: its point,
// and with a hem its width at the waist and its lower point.
func (b Back) Marks() []Mark {
	point := "dart point"
	if b.Worn() == AtFront {
		point = "apex"
	}
	out := []Mark{{point, b.Dart[1]}}
	if b.WaistLine != nil {
		out = append(out, Mark{"outer leg", b.Dart[0]}, Mark{"inner leg", b.Dart[2]})
	}
	if len(b.DartBelow) == 1 {
		out = append(out, Mark{"lower dart point", b.DartBelow[0][1]})
	}
	return out
}
