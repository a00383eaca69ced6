package drape

import (
	"math"
	"slices"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hands are what a Live has put to the cloth: the hand that grabs, pins of
// one's own, and pins of the draft taken out.
type hands struct {
	grab *touch
	own  []*touch
	gone []LivePin // pins of the draft that were taken out
	wait bool      // a hand is placing the piece: own and gone come after it
}

// touch is a place of the cloth that is held, by one point or a finger's breadth.
type touch struct {
	flat   r2.Vec
	at     r3.Vec   // m
	grip   float64  // N/m, of all points together
	finger float64  // m, half the breadth; 0 is a point
	offset []r3.Vec // m, len = points; from at to where each is drawn
}

// grabGrip is the stiffness of the hand that grabs, N/m: soft beside a pin.
const grabGrip = 200

// strongest is the largest pull of a hand or own pin, in weights of the piece.
// It lifts the whole piece and does not tear the lattice where it takes hold.
const strongest = 8

// fingertip is half the breadth over which the hand takes hold, m.
const fingertip = 0.008

// grab takes hold of the cloth or moves the hand that holds it.
func (w *walker) grab(flat r2.Vec, at r3.Vec) {
	if g := w.hands.grab; g != nil && g.flat == flat {
		g.at = at
	} else {
		w.hands.grab = &touch{flat: flat, at: at, grip: grabGrip, finger: fingertip}
		w.rehold()
	}
	w.busy = true
}

// drop lets go.
func (w *walker) drop() {
	if w.hands.grab == nil {
		return
	}
	w.hands.grab = nil
	w.rehold()
	w.busy = true
}

// pinApart is how near to a place a pin is taken for the one at that place, m.
const pinApart = 0.004

// pin sets or moves a pin of one's own, or puts one of the draft back.
func (w *walker) pin(flat r2.Vec, at r3.Vec) {
	h := &w.hands
	near := func(q r2.Vec) bool { return r2.Norm(r2.Sub(q, flat)) < pinApart }
	if k := slices.IndexFunc(h.gone, func(p LivePin) bool { return near(p.Flat) }); k >= 0 {
		h.gone = slices.Delete(h.gone, k, k+1)
	} else if k := slices.IndexFunc(h.own, func(t *touch) bool { return near(t.flat) }); k >= 0 {
		h.own[k].at = at
	} else {
		h.own = append(h.own, &touch{flat: flat, at: at, grip: pinGrip})
	}
	w.touched()
}

// unpin takes out the pin nearest to a place.
func (w *walker) unpin(flat r2.Vec) {
	if w.d == nil {
		return
	}
	h, best, found := &w.hands, math.Inf(1), LivePin{}
	for _, p := range h.list(w.d) {
		if far := r2.Norm(r2.Sub(p.Flat, flat)); far < best {
			best, found = far, p
		}
	}
	switch {
	case math.IsInf(best, 1):
		return
	case found.Own:
		h.own = slices.DeleteFunc(h.own, func(t *touch) bool { return t.flat == found.Flat })
	default:
		h.gone = append(h.gone, found)
	}
	w.touched()
}

// touched puts all pins into force and asks for a walk.
func (w *walker) touched() {
	w.hands.wait = false
	w.rehold()
	w.busy = true
}

// list returns the pins that are in.
func (h *hands) list(d *Drape) []LivePin {
	var out []LivePin
	if d == nil {
		return out
	}
	for _, p := range d.pins {
		if !p.out && !p.sewn {
			out = append(out, LivePin{Name: p.name, Flat: p.flat, At: p.at})
		}
	}
	for _, t := range h.own {
		out = append(out, LivePin{Name: "own", Flat: t.flat, At: t.at, Own: true})
	}
	return out
}

// rehold takes out the pins of the draft that are gone, and makes the hands of
// the drape those in force.
func (w *walker) rehold() {
	if w.d != nil {
		w.hands.take(w.d)
	}
}

// take is rehold for any drape of the walker.
func (h *hands) take(d *Drape) {
	h.takeOut(d)
	st := d.State
	st.Hands = nil
	for _, t := range h.inForce() {
		t.offset = nil
		points := t.points(d)
		for _, p := range points {
			t.offset = append(t.offset, r3.Sub(p.Point.At(st.Pos), points[0].Point.At(st.Pos)))
			st.Hands = append(st.Hands, sim.Hand{Hold: p, Target: t.at, Grip: t.grip / float64(len(points))})
		}
	}
	h.hold(d)
}

// inForce lists what holds the cloth now, the hand first.
func (h *hands) inForce() []*touch {
	var out []*touch
	if h.grab != nil {
		out = append(out, h.grab)
	}
	if !h.wait {
		out = append(out, h.own...)
	}
	return out
}

// points returns the holds of a touch, the middle first; none if it is off the cloth.
func (t *touch) points(d *Drape) []sim.Hold {
	var out []sim.Hold
	s := t.finger
	for _, by := range [5]r2.Vec{{}, {X: s}, {X: -s}, {Y: s}, {Y: -s}} {
		p, ok := d.Lattice.Locate(r2.Add(t.flat, by))
		if !ok || slices.Min(p.Weight[:]) < -0.5 {
			if len(out) == 0 {
				return nil
			}
			continue
		}
		out = append(out, sim.Hold{Name: "hand", Point: p, Only: sim.All})
		if s == 0 {
			break
		}
	}
	return out
}

// hold draws the cloth to where the hands are, no stronger than strongest. The
// target of a far hand follows the cloth, so that its pull stays the same.
func (h *hands) hold(d *Drape) {
	k, st := 0, d.State
	if len(st.Hands) == 0 {
		return
	}
	most := strongest * d.System.Cloth.Weight()
	for _, t := range h.inForce() {
		reach := most / t.grip
		for _, by := range t.offset {
			p := st.Hands[k].Point.At(st.Pos)
			way := r3.Sub(r3.Add(t.at, by), p)
			if l := r3.Norm(way); l > reach {
				way = r3.Scale(reach/l, way)
			}
			st.Hands[k].Target = r3.Add(p, way)
			k++
		}
	}
}

// seamApart is how far along its seam a pin of the draft is looked for after a
// change of cut, m.
const seamApart = 0.030

// takeOut takes the pins of the draft out that are gone, and puts the others in.
func (h *hands) takeOut(d *Drape) {
	out := make([]bool, len(d.pins))
	for _, g := range h.gone {
		best, at := seamApart, -1
		for k, p := range d.pins {
			if far := r2.Norm(r2.Sub(g.Flat, p.flat)); p.name == g.Name && !out[k] && far < best {
				best, at = far, k
			}
		}
		if at >= 0 && !h.wait {
			out[at] = true
		}
	}
	for k := range d.pins {
		if p := &d.pins[k]; p.out != out[k] {
			p.out = out[k]
			d.State.Target[k], d.State.Grip[k] = p.at, p.grip()
		}
	}
}

// move carries everything to its place on a piece of another cut.
func (h *hands) move(m match) {
	if h.grab != nil {
		h.grab.flat = m.at(h.grab.flat)
	}
	for _, t := range h.own {
		t.flat = m.at(t.flat)
	}
	for k := range h.gone {
		h.gone[k].Flat = m.at(h.gone[k].Flat)
	}
}
