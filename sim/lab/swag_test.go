package lab

import (
	"context"
	"math"
	"strings"
	"testing"

	"cowl/sim"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// The piece is drafted for its folds: laid in them, yarns at 45° keep their
// length: within half a per cent down the middle, where chains lean a little, and
// within 5 % everywhere. Lengths are taken
// between places half a millimetre apart, on the piece and in space.
func TestSwagLaidUnstrained(t *testing.T) {
	n := 0
	for _, pleats := range []int{3, 4, 5} {
		w := SwagSetup{Pleats: pleats}
		w.defaults()
		d := w.draft()
		for leg := range d.legs {
			for _, share := range []float64{0, 0.3, 0.6, 0.9, -0.9} {
				near := 0.05
				if share == 0 {
					near = 0.005
				}
				for _, turn := range []float64{math.Pi / 4, -math.Pi / 4} {
					if got := d.strain((d.fold(leg)+d.fold(leg+1))/2, share, turn); math.Abs(got) > near {
						t.Errorf("%d pleats, leg %d at share %g: a yarn at %.0f° is strained by %.3f, want %g at most", pleats, leg,
							share, inDeg(turn), got, near)
					}
					n++
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("%d places, want 100 or more", n)
	}
}

func inDeg(rad float64) float64 { return rad * 180 / math.Pi }

// strain returns the strain of a yarn that lies on the piece at an angle from the upright.
func (d swagDraft) strain(down, share, turn float64) float64 {
	const e = 1e-4
	q, p := d.at(down, share), d.laid(down, share)
	a, b := r2.Sub(d.at(down+e, share), q), r2.Sub(d.at(down, share+e), q)
	yarn := r2.Vec{X: 5e-4 * math.Sin(turn), Y: 5e-4 * math.Cos(turn)}
	det := a.X*b.Y - a.Y*b.X
	u, v := (yarn.X*b.Y-yarn.Y*b.X)/det, (a.X*yarn.Y-a.Y*yarn.X)/det
	in := r3.Add(r3.Scale(u, r3.Sub(d.laid(down+e, share), p)), r3.Scale(v, r3.Sub(d.laid(down, share+e), p)))
	return r3.Norm(in)/r2.Norm(yarn) - 1
}

// A chain drawn with its heights shared out keeps its length; a metre of chain
// over 0.6 m hangs 0.363 m deep (D. Clyde et al., SCA 2017, by hand).
func TestChain(t *testing.T) {
	c := newChain(0.6, 0.363)
	if math.Abs(2*c.half-1) > 1e-3 {
		t.Errorf("newChain(0.6, 0.363) is %.4f m long, want 1", 2*c.half)
	}
	for _, slant := range []float64{0, 0.5, 1} {
		const parts = 2000
		long, last := 0.0, r2.Vec{Y: c.drop * slant}
		for i := 1; i <= parts; i++ {
			x, drop := c.at(float64(i) / parts)
			next := r2.Vec{X: c.unrolled(x, slant), Y: drop * slant}
			long += r2.Norm(r2.Sub(next, last))
			last = next
		}
		if math.Abs(long-c.half) > 2e-4 {
			t.Errorf("a chain unrolled with %g of its heights is %.5f m long, want %.5f", slant, long, c.half)
		}
	}
}

// A small swag comes to rest unpierced; its upper edge stays on the board, and its
// lower edge is about as long as it was cut and hangs no deeper than a V.
func TestSwag(t *testing.T) {
	r, err := Swag(context.Background(), hungCloth, SwagSetup{Width: 0.4, Pleats: 2, Grain: math.Pi / 4, Spacing: 0.012,
		Gap: 0.0025})
	if err != nil || r.Status != sim.Settled || r.Residual > 1e-3 || r.Pierced != 0 {
		t.Fatalf("Swag = %+v, pierced %d, %v, want it settled and nothing pierced", r.Run, r.Pierced, err)
	}
	t.Logf("sag %.1f mm (%.1f), %d steps, %.1f s", r.Sag*1000, r.Curve*1000, r.Steps, r.Seconds)
	cut := 2 * newChain(0.4, 0.18).half
	if math.Abs(r.Long/cut-1) > 0.03 {
		t.Errorf("lower edge %.1f mm long, want %.1f ± 3 %%", r.Long*1000, cut*1000)
	}
	if _, v := HangingDrop(r.Long, 0.4); !(r.Sag > 0 && r.Sag < v) {
		t.Errorf("sag %.1f mm, want 0–%.1f", r.Sag*1000, v*1000)
	}
	n := 0
	for i, q := range r.Sheet.Flat {
		if math.Abs(q.Y) < 1e-9 {
			n++
			if p := r.Sheet.Pos[i]; math.Abs(p.Y) > 0.005 {
				t.Errorf("the upper edge lies %.1f mm off the board at %.0f mm", p.Y*1000, q.X*1000)
			}
		}
	}
	if n == 0 {
		t.Error("no vertex on the upper edge")
	}
}

// What is out of range is refused by name.
func TestSwagRefuses(t *testing.T) {
	for _, c := range []struct {
		field string
		set   SwagSetup
	}{
		{"width", SwagSetup{Width: 3}}, {"depth", SwagSetup{Depth: 2}}, {"stack", SwagSetup{Stack: 0.5}},
		{"pleats", SwagSetup{Pleats: 9}}, {"spacing", SwagSetup{Spacing: 0.1}}, {"gap", SwagSetup{Gap: 1}},
		{"flat", SwagSetup{Flat: 9}},
	} {
		if _, err := Swag(context.Background(), hungCloth, c.set); err == nil || !strings.Contains(err.Error(), c.field) {
			t.Errorf("Swag(%+v): %v, want %s refused", c.set, err, c.field)
		}
	}
}
