package lab

import (
	"context"
	"math"
	"testing"

	"cowl/sim"
)

// A metre of edge over 60 cm: the sag of the hanging curve was worked out by
// hand from S = 2a·sinh(d/2a), a = 0.163 m.
func TestHangingDrop(t *testing.T) {
	for _, c := range []struct{ length, span, curve, v float64 }{
		{1, 0.6, 0.363, 0.4}, {0.5, 0.5, 0, 0}, {0.4, 0.5, 0, 0},
	} {
		curve, v := HangingDrop(c.length, c.span)
		if math.Abs(curve-c.curve) > 6e-4 || math.Abs(v-c.v) > 1e-9 {
			t.Errorf("HangingDrop(%g, %g) = %.4f, %.4f, want %g, %g", c.length, c.span, curve, v, c.curve, c.v)
		}
	}
}

var hungCloth = sim.Stiffness{Weight: 0.15, TensileWarp: 2000, TensileWeft: 2000, Shear: 50, BendWarp: 1e-5,
	BendWeft: 1e-5, Twist: 5e-6}

// The edge of a sheet cannot hang deeper than the V of its own length, to which
// its yarn may add the little that it stretches, and it falls by more than
// nothing; it is the state of least energy of those found.
func TestHang(t *testing.T) {
	r, err := Hang(context.Background(), hungCloth, HangSetup{Width: 0.3, Spacing: 0.015, Placings: 2})
	if err != nil || r.Status != sim.Settled || len(r.Each) != 2 {
		t.Fatalf("Hang = %+v, %v", r, err)
	}
	t.Logf("drop %.1f mm (%.1f, %.1f), energy %.3f mJ, %d steps, %.1f s", r.Drop*1000, r.Curve*1000, r.V*1000,
		r.Energy*1000, r.Steps, r.Seconds)
	if !(r.Drop > 0 && r.Drop < r.V*1.01) {
		t.Errorf("Hang: drop %.1f mm, want 0–%.1f", r.Drop*1000, r.V*1000)
	}
	if !(r.Energy < 0 && r.Stored > 0) {
		t.Errorf("Hang: energy %g J, stored %g J, want less than the flat sheet has, and some stored", r.Energy, r.Stored)
	}
	for _, e := range r.Each {
		if e.Energy < r.Energy-1e-6 {
			t.Errorf("Hang: placing %q has %g J, less than the %g J told", e.Name, e.Energy, r.Energy)
		}
	}
}

// Shakes can only find less energy, and finer lattices carry on from there: the
// energies told are those of the lattices, coarse to fine.
func TestHangShakes(t *testing.T) {
	if testing.Short() {
		t.Skip("two lattices")
	}
	h := HangSetup{Width: 0.3, Height: 0.075, Spacing: 0.00625, Placings: 2}
	still, err := Hang(context.Background(), hungCloth, h)
	if err != nil || still.Status != sim.Settled {
		t.Fatalf("Hang = %+v, %v", still.Run, err)
	}
	h.Shakes = 4
	shaken, err := Hang(context.Background(), hungCloth, h)
	if err != nil || shaken.Status != sim.Settled || len(shaken.Each) != 6 || len(shaken.Least) != 2 {
		t.Fatalf("Hang = %+v, %v, want 6 states and 2 lattices", shaken.Run, err)
	}
	t.Logf("still %+v, shaken %+v", still.Least, shaken.Least)
	if a, b := still.Least[0].Energy, shaken.Least[0].Energy; b > a+1e-6 {
		t.Errorf("least energy %g J after shakes, %g J before", b, a)
	}
	if l := shaken.Least; l[0].Spacing != 0.0125 || l[1].Spacing != 0.00625 || l[1].Energy != shaken.Energy ||
		l[1].Nodes != shaken.Nodes {
		t.Errorf("lattices %+v, want 12.5 and 6.25 mm, the last with the energy told, %g J", l, shaken.Energy)
	}
}

// A strip of no shear stiffness to speak of and little bending hangs in the
// curve of a chain.
func TestHangStrip(t *testing.T) {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 500, TensileWeft: 500, Shear: 50, BendWarp: 2e-7, BendWeft: 2e-7,
		Twist: 1e-7}
	r, err := Hang(context.Background(), s, HangSetup{Width: 0.3, Height: 0.05, Span: 0.2, Spacing: 0.0125, Placings: 2})
	if err != nil || r.Status != sim.Settled {
		t.Fatalf("Hang = %+v, %v", r, err)
	}
	t.Logf("drop %.2f mm, forward %.1f, curve %.2f, V %.2f, %d steps, %.1f s", r.Drop*1000, r.Forward*1000, r.Curve*1000,
		r.V*1000, r.Steps, r.Seconds)
	if r.Drop < 0.9*r.Curve || r.Drop > r.V {
		t.Errorf("Hang(strip): drop %.2f mm, want %.2f less a tenth to %.2f", r.Drop*1000, r.Curve*1000, r.V*1000)
	}
}

func TestHangRefuses(t *testing.T) {
	for _, h := range []HangSetup{{Width: 5}, {Span: 0.7}, {Spacing: 0.2}, {Placings: 13}, {Shakes: -1}, {Gap: 0.1}} {
		if _, err := Hang(context.Background(), hungCloth, h); err == nil {
			t.Errorf("Hang(%+v): no error", h)
		}
	}
}
