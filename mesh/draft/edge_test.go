package draft

import (
	"math"
	"testing"
)

// Half edges needed, cm, V / chain, worked out from the closed forms
// √(x² + D²) and a·sinh(x/a), D = a(cosh(x/a) − 1), to the millimetre.
func TestEdgeForDrop(t *testing.T) {
	drops := []float64{8, 12, 16, 20, 24, 30}
	rows := []struct {
		half float64
		want [6][2]float64
	}{
		{7, [6][2]float64{{10.6, 11.3}, {13.9, 14.8}, {17.5, 18.5}, {21.2, 22.3}, {25.0, 26.1}, {30.8, 32.0}}},
		{9, [6][2]float64{{12.0, 12.7}, {15.0, 15.9}, {18.4, 19.5}, {21.9, 23.2}, {25.6, 27.0}, {31.3, 32.8}}},
		{11, [6][2]float64{{13.6, 14.2}, {16.3, 17.3}, {19.4, 20.7}, {22.8, 24.2}, {26.4, 27.9}, {32.0, 33.6}}},
		{13, [6][2]float64{{15.3, 15.8}, {17.7, 18.7}, {20.6, 21.9}, {23.9, 25.4}, {27.3, 29.0}, {32.7, 34.6}}},
	}
	const tol = 0.0501 // cm, the rounding of the table
	for _, r := range rows {
		for i, d := range drops {
			v, chain := EdgeForDrop(r.half/100, d/100)
			if math.Abs(v*100-r.want[i][0]) > tol || math.Abs(chain*100-r.want[i][1]) > tol {
				t.Errorf("EdgeForDrop(%g, %g cm) = %.2f / %.2f, want %.1f / %.1f", r.half, d, v*100, chain*100, r.want[i][0],
					r.want[i][1])
			}
			backV, _ := DropForEdge(r.half/100, v)
			_, backChain := DropForEdge(r.half/100, chain)
			if math.Abs(backV*100-d) > 1e-6 || math.Abs(backChain*100-d) > 1e-6 {
				t.Errorf("DropForEdge of EdgeForDrop(%g, %g cm) = %.7f / %.7f", r.half, d, backV*100, backChain*100)
			}
		}
	}
}

func TestDropOfTautEdge(t *testing.T) {
	for _, edge := range []float64{0, 0.05, 0.1} {
		if v, chain := DropForEdge(0.1, edge); v != 0 || chain != 0 {
			t.Errorf("DropForEdge(0.1, %g) = %g, %g, want 0, 0", edge, v, chain)
		}
	}
	if v, chain := EdgeForDrop(0.1, 0); v != 0.1 || chain != 0.1 {
		t.Errorf("EdgeForDrop(0.1, 0) = %g, %g, want 0.1, 0.1", v, chain)
	}
}

// What closing a share of the dart gives on the worked block, worked out apart
// from this program: extension, depth of the edge below the front neck point
// (chain … V), flat CF from the edge to bust level, surplus; cm.
func TestDartShares(t *testing.T) {
	b := workedBlock(t)
	for _, q := range []struct{ share, edge, extension, chain, v, flat, surplus float64 }{
		{0, 10.5, 0, -6, -6, 24.4, 0},
		{0.25, 13.5, 2.9, 1.3, 2.2, 24.1, 7.1},
		{0.5, 16.3, 5.8, 5.1, 6.3, 23.5, 10.3},
		{0.75, 19.1, 8.5, 8.4, 9.8, 22.6, 12.7},
		{1, 21.7, 11.1, 11.4, 12.9, 21.3, 14.4},
	} {
		c := DefaultCut()
		c.DartShare, c.Extension = q.share, Auto
		p, err := Draft(b, c)
		if err != nil {
			t.Fatalf("share %g: %v", q.share, err)
		}
		r := p.Report()
		below := -b.CFNeck.Y + b.CowlPoint(c.CowlPoint).Y // front neck point below the cowl point
		for _, f := range []struct {
			name      string
			got, want float64
		}{
			{"half edge", r.HalfEdge, q.edge}, {"extension", r.Extension, q.extension},
			{"chain depth", r.DropChain - below, q.chain}, {"V depth", r.DropV - below, q.v},
			{"flat CF to bust", p.FoldY - p.Apex.Y, q.flat}, {"surplus", r.SurplusCF, q.surplus},
		} {
			if math.Abs(f.got*100-f.want) > 0.11 { // two figures rounded to the millimetre
				t.Errorf("share %g: %s %.2f cm, want %.1f", q.share, f.name, f.got*100, f.want)
			}
		}
	}
}
