package contact

import (
	"math"
	"slices"
	"testing"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	rubGap = 0.002
	rubMu  = 0.4
)

// rubbed is the upper of the two layers of a hairpin, shoved about over the lower.
type rubbed struct {
	l      *lattice.Lattice
	s      *Self
	pos    []r3.Vec
	motion float64
}

// lie lays two layers on each other with friction mu, closer than the gap by a
// share of it.
func lie(t *testing.T, share float64) *rubbed {
	t.Helper()
	l, pos := hairpin(t, 0.5, (1-share)*rubGap)
	s := NewSelf(l, rubGap, 25)
	s.Friction = rubMu
	return &rubbed{l: l, s: s, pos: pos}
}

// upper reports whether node i lies in the upper layer, clear of the bend, where
// what is pushed aslant has parts on both sides of any line.
func (r *rubbed) upper(i int) bool { return r.l.Rest[i].Y > 0.014 }

// shove moves the upper layer and the bend, and returns the force on every node.
func (r *rubbed) shove(by r3.Vec) []r3.Vec {
	r.motion += r3.Norm(by)
	for i := range r.pos {
		if r.l.Rest[i].Y > 0 {
			r.pos[i] = r3.Add(r.pos[i], by)
			r.s.Moved(i, r3.Norm(by))
		}
	}
	force := make([]r3.Vec, len(r.pos))
	addSelf(r.s, r.pos, force, make([]float64, len(r.pos)), r.motion)
	return force
}

// friction returns what friction mu puts on the upper layer after all shoves so
// far, and the press without friction at the same places.
func (r *rubbed) friction(force []r3.Vec) (rub r3.Vec, press float64) {
	plain, without := NewSelf(r.l, rubGap, 25), make([]r3.Vec, len(r.pos))
	addSelf(plain, r.pos, without, make([]float64, len(r.pos)), 0)
	for i, f := range force {
		if r.upper(i) {
			rub = r3.Add(rub, r3.Sub(f, without[i]))
			press += without[i].Z
		}
	}
	return rub, press
}

// Shoved on, the upper layer is held back by μ times the press, whichever way,
// and back the other way after a turn; the layers together by nothing.
func TestRubIsCoulomb(t *testing.T) {
	r := lie(t, 0.001)
	r.shove(r3.Vec{})
	n := 0
	for _, way := range []r3.Vec{{X: 1}, {X: -1}, {X: 0.6, Y: 0.8}, {Y: -1}} {
		var force []r3.Vec
		for range 40 {
			force = r.shove(r3.Scale(2e-5, way))
		}
		rub, press := r.friction(force)
		back := -r3.Dot(rub, way)
		t.Logf("shoved %v: held back %.4g N by a press of %.4g N", way, back, press)
		// What lies beside a triangle by up to √(2·gap·depth), 0.09 mm of 5, is
		// pressed aslant and swings about its rim before it slips.
		if math.Abs(back/(rubMu*press)-1) > 0.05 {
			t.Errorf("shoved %v: held back by %.4g N, want μ·press = %.4g ± 3 %%", way, back, rubMu*press)
		}
		if aside := r3.Norm(r3.Add(rub, r3.Scale(back, way))); aside > 0.05*back {
			t.Errorf("shoved %v: pushed aside by %.4g N, want little of %.4g", way, aside, back)
		}
		var sum r3.Vec
		for _, f := range force {
			sum = r3.Add(sum, f)
			if f != (r3.Vec{}) {
				n++
			}
		}
		if r3.Norm(sum) > 1e-12*press*float64(len(force)) {
			t.Errorf("shoved %v: forces add up to %v N, want 0", way, sum)
		}
	}
	if n < 200 {
		t.Errorf("%d pushed nodes, want hundreds", n)
	}
}

// Shoved less than friction gives, the layers stick: shoved back, nothing is left.
func TestRubSticks(t *testing.T) {
	r := lie(t, 0.05)
	r.shove(r3.Vec{})
	const far = 1e-6 // m; pairs slip from μ·gap/19, 40 µm
	held, press := r.friction(r.shove(r3.Vec{X: far}))
	if held.X >= 0 || -held.X > rubMu*press {
		t.Errorf("shoved by 1 µm: held by %.4g N, want less than 0 and no more than μ·press = %.4g", held.X, rubMu*press)
	}
	if twice, _ := r.friction(r.shove(r3.Vec{X: far})); math.Abs(twice.X/held.X-2) > 0.01 {
		t.Errorf("shoved by 2 µm: held by %.4g N, want twice %.4g", twice.X, held.X)
	}
	if left, _ := r.friction(r.shove(r3.Vec{X: -2 * far})); r3.Norm(left) > 1e-3*-held.X {
		t.Errorf("shoved back: held by %v N, want 0 within 1e-3 of %.4g: only what hardly touches has slipped", left, held.X)
	}
}

// Layers that turn and travel together do not rub, and what is held turns with them.
func TestRubTurnsWithLayers(t *testing.T) {
	r := lie(t, 0.05)
	r.shove(r3.Vec{})
	before := r.shove(r3.Vec{X: 5e-6})
	turn := r3.NewRotation(1, r3.Vec{X: 0.3, Y: -0.5, Z: 0.8})
	start := slices.Clone(r.pos)
	for k := range 100 {
		far := 0.0
		part := r3.NewRotation(float64(k+1)/100, r3.Vec{X: 0.3, Y: -0.5, Z: 0.8})
		for i := range r.pos {
			p := r3.Add(part.Rotate(start[i]), r3.Vec{X: 0.001 * float64(k+1)})
			d := r3.Norm(r3.Sub(p, r.pos[i]))
			r.s.Moved(i, d)
			r.pos[i], far = p, math.Max(far, d)
		}
		r.motion += far
		addSelf(r.s, r.pos, make([]r3.Vec, len(r.pos)), make([]float64, len(r.pos)), r.motion)
	}
	after := r.shove(r3.Vec{})
	var most float64
	for _, f := range before {
		most = math.Max(most, r3.Norm(f))
	}
	for i, f := range before {
		if d := r3.Norm(r3.Sub(after[i], turn.Rotate(f))); d > 1e-7*most {
			t.Fatalf("turned by 1 rad and moved by 100 mm (motion %.0f mm): node %d is pushed %v N, want %v as before it "+
				"turned", r.motion*1000, i, after[i], turn.Rotate(f))
		}
	}
}

// Pairs listed anew hold on where they held; layers that have parted let go.
func TestRubKeepsItsGrip(t *testing.T) {
	r := lie(t, 0.05)
	r.shove(r3.Vec{})
	before := r.shove(r3.Vec{X: 5e-6})
	pairs := len(r.s.pairs)
	r.s.reach *= 1.5 // other pairs between them
	r.s.list(r.pos, r.motion, nil)
	after := r.shove(r3.Vec{})
	held, _ := r.friction(before)
	again, _ := r.friction(after)
	if len(r.s.pairs) <= pairs {
		t.Errorf("%d pairs listed anew, want more than %d", len(r.s.pairs), pairs)
	}
	if held.X == 0 || r3.Norm(r3.Sub(held, again)) > 1e-9*-held.X {
		t.Errorf("listed anew: held by %v N, want %v as before", again, held)
	}
	r.shove(r3.Vec{Z: 0.2 * rubGap})
	r.shove(r3.Vec{X: 1e-4})
	parted, _ := r.friction(r.shove(r3.Vec{Z: -0.2 * rubGap}))
	if r3.Norm(parted) > 1e-9*-held.X {
		t.Errorf("parted, shoved and laid down again: held by %v N, want nothing", parted)
	}
}

// While it sticks, friction is the gradient of an energy and turns nothing: the push
// on every node is what the energy of the slip loses, and pushes have no moment.
func TestRubTurnsNothing(t *testing.T) {
	r := lie(t, 0.05)
	r.shove(r3.Vec{})
	force := r.shove(r3.Vec{X: 5e-6})
	plain, without := NewSelf(r.l, rubGap, 25), make([]r3.Vec, len(r.pos))
	addSelf(plain, r.pos, without, make([]float64, len(r.pos)), 0)
	var moment r3.Vec
	sum := 0.0
	for i := range force {
		f := r3.Sub(force[i], without[i])
		moment = r3.Add(moment, r3.Cross(r.pos[i], f))
		sum += r3.Norm(f)
	}
	if sum == 0 || r3.Norm(moment) > 1e-3*rubGap*sum {
		t.Errorf("friction of %.4g N in all turns the cloth by %v N·m, want none", sum, moment)
	}
}
