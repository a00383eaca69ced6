package sim

import (
	"math"

	"cowl/mesh/lattice"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// Tie is a stretch of stay tape sewn to the cloth at both its ends. It pulls
// and never pushes: a woven tape of a centimetre's length buckles out of the
// way under less than the weight of the cloth beneath it. Its own weight and
// bending are left out.
type Tie struct {
	A, B  lattice.Point
	Long  float64 // m, between the ends when cut, above 0
	Stiff float64 // N, force over strain: extension modulus (N/m) times width
}

// slackening is the strain over which a tape that straightens takes up its full
// stiffness. It keeps the force smooth and costs a pulled tape half of it.
const slackening = 1e-3

// stress returns the pull of the tape over its stiffness at a strain, and the
// energy per length over its stiffness: a parabola that runs on into a straight
// line.
func stress(strain float64) (pull, energy float64) {
	const e = slackening
	switch {
	case strain <= 0:
		return 0, 0
	case strain < e:
		return strain * strain / (2 * e), strain * strain * strain / (6 * e)
	}
	return strain - e/2, strain*strain/2 - e*strain/2 + e*e/6
}

// Pull returns the force of the tape with the nodes at x (m), N; 0 where slack.
func (t *Tie) Pull(x []r3.Vec) float64 {
	p, _ := stress(r3.Norm(r3.Sub(t.B.At(x), t.A.At(x)))/t.Long - 1)
	return t.Stiff * p
}

// energy returns what is stored in the tape with the nodes at x (m), J.
func (t *Tie) energy(x []r3.Vec) float64 {
	_, e := stress(r3.Norm(r3.Sub(t.B.At(x), t.A.At(x)))/t.Long - 1)
	return t.Stiff * t.Long * e
}

// stay adds the pull of the tapes. Their row sums (see stable) stay in the mass
// of a node while a tape is slack: one that snaps taut must not find it light.
func (w *Stepper) stay(sum []contact.Sum) {
	x := w.state.Pos
	for k := range w.system.Ties {
		t := &w.system.Ties[k]
		d := r3.Sub(t.B.At(x), t.A.At(x))
		long := math.Sqrt(max(r3.Norm2(d), tiny))
		pull, _ := stress(long/t.Long - 1)
		f := r3.Scale(t.Stiff*pull/long, d)
		t.sew(t.A, f, sum)
		t.sew(t.B, r3.Scale(-1, f), sum)
	}
}

// sew puts the force f of one end of the tape on the nodes that hold it.
func (t *Tie) sew(end lattice.Point, f r3.Vec, sum []contact.Sum) {
	for j, n := range end.Node {
		sum[n].Force = r3.Add(sum[n].Force, r3.Scale(end.Weight[j], f))
		sum[n].Mass += 2 * stable * t.Stiff / t.Long * math.Abs(end.Weight[j])
	}
}
