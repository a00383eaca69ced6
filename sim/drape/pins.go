package drape

import (
	"fmt"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/lattice"
	"cowl/mesh/polyline"
	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// pin is a place of the flat piece and where it goes on the form.
type pin struct {
	name string
	flat r2.Vec  // m, on the piece
	at   r3.Vec  // m, in space, where the cloth's middle surface ends up
	over float64 // m, distance of that from the form
	down float64 // m, of a pin in the shoulder: how far down the flat seam from the cowl point
	out  bool    // taken out by the hand of a Live
	sewn bool    // no pin: the side seam as it is sewn to the back, see inSidePlane
}

// Pins stand this far apart along the seams, m: a dressmaker's pins.
const (
	shoulderStep = 0.010
	sideStep     = 0.040
	waistStep    = 0.040
)

// pinGrip is the stiffness of a pin, N/m: a pull of 0.1 N moves it 0.1 mm.
const pinGrip = 1000

// smooth is the pull up to which cloth is pinned, as a share of its weight. A
// draper smooths the cloth and sets the pin where it lies; a pin that drags is
// moved (common practice). Some fifty pins at this share carry the piece once.
const smooth = 0.02

// grip returns the stiffness with which the pin holds, N/m.
func (p pin) grip() float64 {
	if p.out {
		return 0
	}
	return pinGrip
}

// giveWay moves a pin that drags along the form towards where the cloth would lie. Smooth
// is the pull (N) that it may keep. It gives way by as much as it has been drawn aside:
// pins stand nearer than crossings and hold each other off by cloth that hardly
// stretches, so more than that would throw neighbours to and fro for ever.
func (p *pin) giveWay(j Job, pull r3.Vec, smooth float64) {
	pull = j.alongForm(p.at, pull)
	if f := r3.Norm(pull); f > smooth {
		p.at = j.off(r3.Add(p.at, r3.Scale(math.Min((f-smooth)/pinGrip, repinMost)/f, pull)), p.over)
	}
}

// alongForm returns what of a pull at a place runs along the form; all of it on a free hang.
func (j Job) alongForm(at, pull r3.Vec) r3.Vec {
	if j.Free {
		return pull
	}
	_, n := j.Form.Distance(at)
	return r3.Sub(pull, r3.Scale(r3.Dot(pull, n)/math.Max(r3.Norm2(n), 1e-9), n))
}

// firm pins are set first and never moved: the cowl points, which carry the
// drape, and pleats, which are sewn down.
func (p pin) firm() bool { return p.name == "cowl point" || p.name == "pleat" }

// onShoulder reports whether the pin holds the shoulder seam of the front.
func (p pin) onShoulder() bool { return p.firm() || p.name == "shoulder" }

// pins lists the pins of both sides.
func (j Job) pins() []pin {
	var out []pin
	for _, side := range [2]float64{1, -1} {
		out = append(out, j.shoulderPins(side)...)
		if !j.Free {
			out = append(out, j.sidePins(side)...)
			if j.Waist == Pinned {
				out = append(out, j.waistPins(side)...)
			}
		}
	}
	return j.clearOfReleases(out)
}

// shoulderPins hold the shoulder seam along the form's; on a free hang only
// a centimetre of each layer behind the cowl point.
func (j Job) shoulderPins(side float64) []pin {
	var out []pin
	p := j.Cowl
	for _, q := range j.shoulderPlaces() {
		s, pleat := p.Folded(q)
		name := "shoulder"
		switch {
		case q == 0 || j.Free && q <= shoulderStep:
			name = "cowl point"
		case pleat >= 0:
			name = "pleat"
		}
		over := j.overAt(q)
		out = append(out, pin{name: name, flat: sided(along(p.Shoulder, q), side),
			at: j.off(j.Form.ShoulderPoint(side, p.CowlPoint+s*j.seamShare()), over), over: over, down: q})
	}
	free, end := facingFree(p), polyline.Length(p.FacingEnd)
	if j.Free {
		end = math.Min(end, free+shoulderStep)
	}
	for _, s := range steps(free, end, shoulderStep) {
		out = append(out, pin{name: "facing", flat: sided(along(p.FacingEnd, s), side),
			at: j.off(j.Form.ShoulderPoint(side, p.CowlPoint+s), sim.Shell), over: sim.Shell})
	}
	return out
}

// facingFree is how far from the cowl point the facing is left unpinned, m: over the
// relief, beside which four cells would take the whole shear of the roll.
func facingFree(p draft.Cowl) float64 {
	rise := p.FacingEnd[len(p.FacingEnd)-1].Y - p.FoldY
	if rise < relief {
		return relief
	}
	return relief * polyline.Length(p.FacingEnd) / rise
}

// seamShare is the length of the form's shoulder seam over that of the cloth: 1 but
// where cloth was taken up, and more or less than the seam lies over the shoulder.
func (j Job) seamShare() float64 {
	if j.Cowl.Taken == 0 {
		return 1
	}
	return (j.Cowl.Block.ShoulderLength() - j.Cowl.CowlPoint) / j.Cowl.ShoulderLength()
}

// waistPins spread the waist over the form's front quarter. What is left of
// the dart is pinched: both its legs go to one place.
func (j Job) waistPins(side float64) []pin {
	var out []pin
	p := j.Cowl
	skip, width := j.dartMouth()
	whole := polyline.Length(p.Waist)
	for _, s := range steps(0, whole-width, waistStep) {
		t := 1 - s/(whole-width)
		at := j.off(j.Form.WaistPoint(side, t), sim.Shell)
		if s >= skip {
			s += width
		}
		out = append(out, pin{name: "waist", flat: sided(along(p.Waist, s), side), at: at, over: sim.Shell})
	}
	if width > 0 {
		at := j.off(j.Form.WaistPoint(side, 1-skip/(whole-width)), sim.Shell)
		for _, leg := range [2]float64{skip, skip + width} {
			out = append(out, pin{name: "dart", flat: sided(along(p.Waist, leg), side), at: at, over: sim.Shell})
		}
	}
	return out
}

// dartMouth returns how far along the waist, from the side, the open dart
// begins, and its width, m.
func (j Job) dartMouth() (from, width float64) {
	d := j.Cowl.DartLeft
	if len(d) < 3 {
		return math.Inf(1), 0
	}
	outer, inner := d[0], d[2]
	return r2.Norm(r2.Sub(j.Cowl.Side[len(j.Cowl.Side)-1], outer)), r2.Norm(r2.Sub(outer, inner))
}

// off moves a point of the form outwards.
func (j Job) off(p r3.Vec, by float64) r3.Vec {
	if j.Free {
		return p
	}
	for range 4 {
		d, g := j.Form.Distance(p)
		p = r3.Add(p, r3.Scale((by-d)/math.Max(0.5, r3.Norm2(g)), g))
	}
	return p
}

// holds turns pins, guided edge and guided centre front into holds of the lattice.
func (j Job) holds(l *lattice.Lattice) ([]sim.Hold, error) {
	var out []sim.Hold
	add := func(name string, q r2.Vec, only r3.Vec) error {
		p, ok := l.Locate(q)
		if !ok {
			return fmt.Errorf("drape: %s point (%.1f, %.1f) cm lies off the cloth", name, q.X*100, q.Y*100)
		}
		out = append(out, sim.Hold{Name: name, Point: p, Only: only})
		return nil
	}
	for _, p := range j.pins() {
		if err := add(p.name, p.flat, p.only()); err != nil {
			return nil, err
		}
	}
	for _, q := range j.edge() {
		if err := add("edge", q, sim.All); err != nil {
			return nil, err
		}
	}
	for _, q := range j.centre() {
		if err := add("centre", q, r3.Vec{X: 1}); err != nil {
			return nil, err
		}
	}
	for _, f := range j.fingers(handOf(j.Seed)) {
		if err := add("finger", f.flat, sim.All); err != nil {
			return nil, err
		}
	}
	for _, p := range led(j.pins()) {
		if err := add("seam finger", p.flat, sim.All); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// guideStep is the distance of the guiding fingers along edge and centre front, m.
const guideStep = 0.010

// edge lists the flat places of the cowl edge that the hand guides, from the
// wearer's right to the left, short of the pinned ends.
func (j Job) edge() []r2.Vec {
	var out []r2.Vec
	e := j.Cowl.HalfEdge
	n := int(math.Round(2 * e / guideStep))
	for k := 2; k <= n-2; k++ {
		out = append(out, r2.Vec{X: -e + 2*e*float64(k)/float64(n), Y: j.Cowl.FoldY})
	}
	return out
}

// centre lists the flat places of the centre front that the hand keeps in the middle.
func (j Job) centre() []r2.Vec {
	var out []r2.Vec
	w := j.Cowl.Waist
	for _, s := range steps(0, j.Cowl.FoldY-w[len(w)-1].Y, guideStep) {
		out = append(out, r2.Vec{Y: j.Cowl.FoldY - s})
	}
	return out
}
