package draft

import (
	"cowl/mesh/polyline"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Walk is a pair of seams that are sewn together, laid along each other as on
// the cutting table.
type Walk struct {
	Name        string
	Front, Back float64 // m, lengths of one half
}

// Off returns what the front is longer than the back, m.
func (w Walk) Off() float64 { return w.Front - w.Back }

// Walked lays the seams of front and back along each other: shoulder, side
// seam, and the facings where both end in the shoulder seam.
func Walked(p Cowl, b Back) []Walk {
	shoulder := "shoulder"
	if p.Pleats != nil {
		shoulder = "shoulder, pleats folded"
	}
	var w []Walk
	add := func(name string, cowl, plain float64) {
		front, back := p.Worn.frontFirst(cowl, plain)
		w = append(w, Walk{name, front, back})
	}
	add(shoulder, p.ShoulderLength(), polyline.Length(b.Shoulder))
	add("side seam", polyline.Length(p.Side), polyline.Length(b.Side))
	if b.FacedBy > 0 {
		add("facing at the shoulder", polyline.Length(p.FacingEnd), b.FacedBy)
	}
	return w
}

// Opening returns the length of the whole neck opening, cowl edge and back
// neck (m): it must pass the head unless there is a fastening.
func Opening(p Cowl, b Back) float64 { return 2 * (p.HalfEdge + polyline.Length(b.Neck)) }

// WaistOpening returns the girth of the sewn waist of front and back (m), darts stitched:
// it must pass what is widest above it, or below it if one steps in, unless there is a
// closing. What bias gives is not counted.
func WaistOpening(p Cowl, b Back) float64 {
	front, back := polyline.Length(p.Waist), polyline.Length(unjutted(b.Waist, b.Dart))
	if p.Hem > 0 {
		front, back = polyline.Length(p.WaistLine), polyline.Length(b.WaistLine)
	}
	if p.DartLeft != nil {
		front -= dist(p.DartLeft[0], p.DartLeft[2])
	}
	return 2 * (front + back - dist(b.Dart[0], b.Dart[2]))
}

// unjutted returns a waist with the line between the legs of its dart straight.
func unjutted(waist, dart []r2.Vec) []r2.Vec {
	outer, inner := slices.Index(waist, dart[0]), slices.Index(waist, dart[2])
	if outer < 0 || inner < 0 {
		return waist
	}
	return slices.Delete(slices.Clone(waist), outer+1, inner)
}

// BackReport holds the figures of a back, of one half, in metres.
type BackReport struct {
	Neck, Armhole float64
	DartIntake    float64
	Facing        float64 // depth of the facing on CB; 0: none
}

// Report measures the back.
func (b Back) Report() BackReport {
	r := BackReport{Neck: polyline.Length(b.Neck), Armhole: polyline.Length(b.Armhole),
		DartIntake: dist(b.Dart[0], b.Dart[2])}
	if b.Facing != nil {
		r.Facing = dist(b.Neck[len(b.Neck)-1], b.Facing[0])
	}
	return r
}
