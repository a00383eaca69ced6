package drape

import (
	"testing"

	"cowl/mesh/lattice"

	"gonum.org/v1/gonum/spatial/r3"
)

// A node thrown across its neighbours knots the cloth; unpick smooths the place
// and leaves the rest alone.
func TestUnpickKnot(t *testing.T) {
	d, err := job(t, 0.08, 0.020, limp).onLattice(0.020)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(d.System.Cloth.Overstrained(d.State.Pos, knot)); n != 0 || d.Pierced() != 0 {
		t.Fatalf("flat cloth has %d overstrained yarns and %d pierced places, want none", n, d.Pierced())
	}
	mid := len(d.State.Pos) / 2
	d.State.Pos[mid] = r3.Add(d.State.Pos[mid], r3.Vec{Z: 0.06})
	if n := len(d.System.Cloth.Overstrained(d.State.Pos, knot)); n < 3 {
		t.Fatalf("%d overstrained yarns round the thrown node, want 3 or 4", n)
	}
	if !d.unpick() {
		t.Error("unpick found nothing to do")
	}
	if n := len(d.System.Cloth.Overstrained(d.State.Pos, knot)); n != 0 {
		t.Errorf("%d overstrained yarns are left, want none", n)
	}
}

// A crossing of the rim may have no yarn to a neighbour, only shears. To ease it left
// it nowhere, and cloth that is nowhere was looked through for ever.
func TestEaseAlone(t *testing.T) {
	d, err := job(t, 0.08, 0.020, limp).onLattice(0.020)
	if err != nil {
		t.Fatal(err)
	}
	alone := len(d.State.Pos) / 2
	none := lattice.Axis{Prev: lattice.None, Next: lattice.None}
	d.Lattice.U[alone], d.Lattice.V[alone] = none, none
	want := d.State.Pos[alone]
	chosen := make([]bool, len(d.State.Pos))
	chosen[alone], chosen[0] = true, true
	d.ease(chosen)
	if got := d.State.Pos[alone]; got != want {
		t.Errorf("a crossing without yarns goes to %v, want it left at %v", got, want)
	}
}
