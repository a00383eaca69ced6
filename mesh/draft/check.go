package draft

import (
	"fmt"
	"math"
	"strings"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

const (
	farthest = 2.0    // m, no point of a bodice lies further from its origin
	offCF    = 0.0005 // m, how far a CF point may lie off CF: half a pencil line
	// m, a narrower dart is no dart, and legs that differ by more do not meet when stitched
	leastDart  = 0.001
	widestDart = 120 * math.Pi / 180
	// slopes of a front shoulder seam with a wide margin
	flattest, steepestShoulder = 5 * math.Pi / 180, 45 * math.Pi / 180

	leastSegment = 1e-4 // m, two corners nearer than this are one
)

// corner is a named point of an outline.
type corner struct {
	name string
	at   r2.Vec
}

// corners returns the outline of the block, counter-clockwise, starting at the
// waist on CF; the dart is cut out of it.
func (b Block) corners() []corner {
	c := []corner{{"cf waist", b.CFWaist}}
	if b.DartIntake() > leastDart {
		c = append(c, corner{"dart inner", b.DartInner}, corner{"apex", b.Apex}, corner{"dart outer", b.DartOuter})
	} else {
		c = append(c, corner{"dart inner", b.DartInner})
	}
	c = append(c, corner{"side waist", b.SideWaist}, corner{"underarm", b.Underarm})
	for i := len(b.Armhole) - 1; i >= 0; i-- {
		c = append(c, corner{fmt.Sprintf("armhole %d", i+1), b.Armhole[i]})
	}
	return append(c, corner{"shoulder tip", b.ShoulderTip}, corner{"neck", b.Neck}, corner{"cf neck", b.CFNeck})
}

// field is the name of the points that c is one of.
func (c corner) field() string { return strings.TrimRight(c.name, " 0123456789") }

// check returns what keeps b from being cut, nil if nothing.
func (b Block) check() error {
	all := append(b.corners(), corner{"apex", b.Apex}, corner{"dart outer", b.DartOuter})
	for _, c := range all {
		if !(math.Abs(c.at.X) <= farthest && math.Abs(c.at.Y) <= farthest) {
			return limit.Errorf(c.field(), "%s %v, want %.0f both ways: give metres from CF and the neck level",
				c.name, place(c.at), limit.Between(-farthest, farthest, limit.Length))
		}
	}
	for _, c := range []corner{{"cf neck", b.CFNeck}, {"cf waist", b.CFWaist}} {
		if math.Abs(c.at.X) > offCF {
			return limit.Errorf(c.field(), "%s %.2f off CF, want 0 ± %.2f: CF is the line X = 0", c.name, limit.Metres(c.at.X),
				limit.Metres(offCF))
		}
	}
	if a := b.ShoulderSlope(); a < flattest || a > steepestShoulder {
		return limit.Errorf("shoulder slope", "shoulder slope %v, want %.0f: the facing is mirrored about the level of "+
			"the cowl point and needs a falling seam",
			limit.Of(a, limit.Angle), limit.Between(flattest, steepestShoulder, limit.Angle))
	}
	if err := b.checkDart(); err != nil {
		return err
	}
	if err := checkSpacing(b.corners()); err != nil {
		return err
	}
	return checkOutline(b.corners())
}

// checkDart says whether the dart can be closed.
func (b Block) checkDart() error {
	inner, outer := b.DartLegs()
	if d := math.Abs(inner - outer); d > leastDart {
		return limit.Errorf("dart legs", "dart legs %.2f and %.2f, want at most %v apart: true the waist so that both "+
			"legs are equal or the dart cannot close",
			limit.Metres(inner), limit.Metres(outer), limit.Metres(leastDart))
	}
	if b.DartIntake() <= leastDart {
		return nil
	}
	if a := b.DartAngle(); a <= 0 || a > widestDart {
		return limit.Errorf("dart angle", "dart angle %v, want %.0f: the outer leg lies towards the side, the apex above "+
			"the waist",
			limit.Of(a, limit.Angle), limit.Between(0, widestDart, limit.Angle))
	}
	return nil
}

// checkSpacing says which neighbours of an outline are one point.
func checkSpacing(c []corner) error {
	for i := range c {
		next := c[(i+1)%len(c)]
		if d := dist(c[i].at, next.at); d < leastSegment {
			return limit.Errorf(c[i].field(), "%s and %s are %.2f apart, want at least %.2f: leave one out or move it",
				c[i].name, next.name, limit.Metres(d), limit.Metres(leastSegment))
		}
	}
	return nil
}

// checkOutline says where an outline folds onto itself or turns inside out.
func checkOutline(c []corner) error {
	p := make([]r2.Vec, len(c))
	for i := range c {
		p[i] = c[i].at
	}
	n := len(p)
	if i, j, ok := Crossing(p); ok {
		return limit.Errorf("outline", "the outline crosses itself: %s–%s meets %s–%s near %v: move one of these points",
			c[i].name, c[(i+1)%n].name, c[j].name, c[(j+1)%n].name, place(p[j]))
	}
	if polyline.Area(p) <= 0 {
		return limit.Errorf("outline", "the outline runs the wrong way round (area %.0f cm²), want the side at X above 0 "+
			"and the waist below the neck", polyline.Area(p)*1e4)
	}
	return nil
}

// place is where a point lies, for a message.
func place(v r2.Vec) limit.Quantity { return limit.Point(v.X, v.Y) }
