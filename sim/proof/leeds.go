package proof

import (
	"context"
	"errors"
	"fmt"
	"math"
	"sync"

	"cowl/materials"
	"cowl/sim"
	"cowl/sim/lab"
)

const gong = "H. Gong, T. Mao, H. Wang, \"Bayesian differentiable physics for cloth digitalization\", CVPR (2024), " +
	"arXiv 2402.17664: 30/18 cm drapes of the University of Leeds, 5–48 a fabric; coefficients from the released " +
	"meshes, nodes counted on the released outlines, peaks of 4 mm or more"

// leeds is the mean number of nodes over the drape coefficient (%) of those
// fabrics, means of the fabrics that lie near each other.
var leeds = []struct{ dc, nodes float64 }{
	{15.0, 11.7}, {18.9, 10.4}, {23.1, 9.8}, {29.0, 8.4}, // one fabric each
	{45.4, 8.1}, // three of 43.2–47.3
	{55.5, 7.3}, // some of 53–58
	{62.0, 8.1}, // two of 61.6–62.3
	{68.5, 7.5}, // five of 65.1–72.1
	{74.2, 7.1}, // two of 73.4–75.1
	{77.6, 6.4}, // three of 76.6–78.9
	{81.6, 3.9}, // one
	{90.8, 3.1}, // two of 90.4–91.1
}

// leedsNodes reads the nodes between the points of leeds, at their ends beyond.
func leedsNodes(dc float64) float64 {
	last := leeds[0]
	for _, p := range leeds {
		if dc <= p.dc {
			if p == last {
				return p.nodes
			}
			return last.nodes + (dc-last.dc)/(p.dc-last.dc)*(p.nodes-last.nodes)
		}
		last = p
	}
	return last.nodes
}

// sweep is one cloth draped at several bending lengths.
type sweep struct {
	once sync.Once
	all  []lab.DiscResult
	err  error
}

// lengthsSwept are the bending lengths, m, from a georgette to a denim.
var lengthsSwept = []float64{0.009, 0.011, 0.013, 0.016, 0.020, 0.025, 0.030, 0.036}

// swept is a cloth of 150 g/m² with the bending length c (m) in the mean of warp
// and weft: bending 1.48 times as stiff along the warp as along the weft and on
// the bias 0.96 of their geometric mean, the medians of the cantilever data of
// 251 fabrics (Feng, Huang, Xu, Wang, ACM Trans. Graph. 41(6), 2022); shear 30
// and pull 2000 N/m, which the lab takes where none is given. A cantilever feels
// the friction of bending with the rest, so none is added.
func swept(c float64) sim.Stiffness {
	const weight, ratio, bias = 0.15, 1.48, 0.96
	mean := materials.BendFromLength(c, weight)
	weft := 2 * mean / (1 + ratio)
	warp := ratio * weft
	return sim.Stiffness{Weight: weight, TensileWarp: 2000, TensileWeft: 2000, Shear: 30,
		BendWarp: warp, BendWeft: weft, Twist: bias*math.Sqrt(warp*weft) - mean/2}
}

// drape runs the meter at all lengths once.
func (s *sweep) drape(ctx context.Context) ([]lab.DiscResult, error) {
	s.once.Do(func() {
		for _, c := range lengthsSwept {
			r, err := lab.Disc(ctx, swept(c), lab.DiscSetup{Friction: 0.3})
			if s.err = errors.Join(err, ctx.Err()); s.err != nil {
				return
			}
			s.all = append(s.all, r)
		}
	})
	return s.all, s.err
}

// nodesOf is the mean number of nodes over the placings.
func nodesOf(r lab.DiscResult) float64 {
	var sum float64
	for _, e := range r.Each {
		sum += float64(len(e.Nodes)) / float64(len(r.Each))
	}
	return sum
}

// relations compare the nodes at each bending length with those of the
// published fabrics that drape alike, and look whether they fall throughout.
func relations() []Pending {
	s := &sweep{}
	var out []Pending
	for k, c := range lengthsSwept {
		row := Check{Name: fmt.Sprintf("drape meter, bending length %g mm: nodes less those published at its coefficient",
			c*1000), Tolerance: 1, Source: gong}
		out = append(out, Pending{row, func(ctx context.Context) (float64, string, error) {
			all, err := s.drape(ctx)
			if err != nil {
				return 0, "", err
			}
			dc, n := all[k].Coefficient*100, nodesOf(all[k])
			return n - leedsNodes(dc), fmt.Sprintf("%.1f nodes at a coefficient of %.1f %%, published %.1f", n, dc,
				leedsNodes(dc)), nil
		}})
	}
	fall := Check{Name: "drape meter, all bending lengths: steps to stiffer cloth at which the nodes do not fall or " +
		"the coefficient does not rise", Tolerance: 0.5, Source: gong}
	return append(out, figure(fall, func(ctx context.Context) (float64, error) {
		all, err := s.drape(ctx)
		n := 0.0
		for k := 1; k < len(all); k++ {
			if nodesOf(all[k]) >= nodesOf(all[k-1]) || all[k].Coefficient <= all[k-1].Coefficient {
				n++
			}
		}
		return n, err
	}))
}
