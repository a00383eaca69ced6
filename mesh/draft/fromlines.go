package draft

import (
	"math"

	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// FromLines returns the front that a finished pattern shows: l its seam lines,
// c its Facing, Grain and Trim; nothing else of c is read. The block says where
// it meets the body: shoulder tip on shoulder tip, waist on waist. Extension is
// counted from the block, as FromOther. Without an Apex (zero) that of the
// block is taken. Lines that do not meet, a shoulder longer than the block's,
// and what Draft refuses of a facing, a grain or an outline are errors.
func FromLines(b Block, l Lines, c Cut) (Cowl, error) {
	if err := b.check(); err != nil {
		return Cowl{}, limit.Errorf("block", "block: %v", err)
	}
	if err := l.checkOwn(b); err != nil {
		return Cowl{}, limit.Errorf("piece", "piece of your own: %v", err)
	}
	cowl := math.Max(b.ShoulderLength()-polyline.Length(l.Shoulder), 0)
	own := Cut{Worn: c.Worn, DartShare: Auto, Extension: Auto, CowlPoint: cowl, Facing: c.Facing, Grain: c.Grain,
		Trim: c.Trim}
	if err := own.check(b); err != nil {
		return Cowl{}, err
	}
	p, err := newCowl(b, own, Added{}).Redrawn(l.lifted(b))
	if err != nil {
		return Cowl{}, err
	}
	p.Extension = p.HalfEdge - b.CowlPoint(cowl).X
	p.Added.FromOther = p.Extension
	return p, nil
}

// longerShoulder is by how much a shoulder may be longer than the block's, m:
// such a front meets the edge at the neck point.
const longerShoulder = 0.003

// checkOwn says what keeps the lines from being a front for the block.
func (l Lines) checkOwn(b Block) error {
	for _, line := range [][]r2.Vec{l.Shoulder, l.Armhole, l.Side, l.Waist, l.Dart, {l.Apex}} {
		for _, v := range line {
			if !(math.Abs(v.X) <= farthest && math.Abs(v.Y) <= farthest) {
				return limit.Errorf("piece", "point %v, want %.0f both ways", place(v),
					limit.Between(-farthest, farthest, limit.Length))
			}
		}
	}
	if n := len(l.Dart); n != 0 && n != 3 {
		return limit.Errorf("piece", "dart has %d points, want 3: end of the outer leg, dart point, end of the inner leg", n)
	}
	if err := l.check(); err != nil {
		return err
	}
	if got, most := polyline.Length(l.Shoulder), b.ShoulderLength()+longerShoulder; got < leastShoulder || got > most {
		return limit.Errorf("piece", "shoulder seam %v, want %v, the shoulder of the block: give the measurements of the "+
			"body that the piece was made for",
			limit.Metres(got), limit.Between(leastShoulder, most, limit.Length))
	}
	return nil
}

// lifted returns l with its waist on CF at the block's.
func (l Lines) lifted(b Block) Lines {
	up := r2.Vec{Y: b.CFWaist.Y - l.Waist[len(l.Waist)-1].Y}
	m := func(v r2.Vec) r2.Vec { return r2.Add(v, up) }
	l.Shoulder, l.Armhole, l.Side, l.Waist = movedLine(l.Shoulder, m), movedLine(l.Armhole, m), movedLine(l.Side, m),
		movedLine(l.Waist, m)
	if l.Dart != nil {
		l.Dart = movedLine(l.Dart, m)
	}
	if l.Apex == (r2.Vec{}) {
		l.Apex = b.Apex
	} else {
		l.Apex = m(l.Apex)
	}
	return l
}
