package proof

import (
	"context"
	"math"

	"cowl/materials"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/sim/lab"
)

const (
	chart = "W. Aldrich, Metric Pattern Cutting for Women's Wear, 6th ed., standard size chart, size 10 (as " +
		"reproduced on the web)"
	chain   = "closed form: catenary"
	clyde   = `closed form: catenary of the set-up of D. Clyde, J. Teran, R. Tamstorf, "Modeling and data-driven parameter estimation for woven fabrics", SCA (2017)`
	workers = "worked draft by the rules of a metric block, from memory"
)

// shapes check draft and form, which the drape stands on.
func shapes() []Pending {
	out := []Pending{
		figure(Check{Name: "chain of 1 m hung 0.6 m apart: sag", Want: 363, Tolerance: 1, Unit: "mm", Source: clyde},
			func(context.Context) (float64, error) { c, _ := lab.HangingDrop(1, 0.6); return c * 1000, nil }),
		figure(Check{Name: "half edge for a drop of 16 cm over 9 cm, hanging curve", Want: 19.5, Tolerance: 0.05, Unit: "cm",
			Source: chain},
			func(context.Context) (float64, error) { _, c := draft.EdgeForDrop(0.09, 0.16); return c * 100, nil }),
		figure(Check{Name: "G of a fabric that stretches 5 % on the bias under 5 gf/cm", Want: 24.6, Tolerance: 0.1,
			Unit: "N/m", Source: "FAST control chart: G = 123/EB5, read second-hand"},
			func(context.Context) (float64, error) { return materials.ShearFromBiasStretch(0.05), nil }),
	}
	for _, g := range []struct {
		name string
		want float64
		get  func(f *form.Form, b body.Body) float64
	}{
		{"bust girth of the form", 88, func(f *form.Form, _ body.Body) float64 { return f.Girth(f.Apex(1).Y) }},
		{"waist girth of the form", 72, func(f *form.Form, _ body.Body) float64 { return f.Girth(0) }},
		{"hip girth of the form", 96, func(f *form.Form, b body.Body) float64 { return f.Girth(-b.WaistToHip) }},
	} {
		out = append(out, figure(Check{Name: g.name, Want: g.want, Tolerance: 0.5, Unit: "cm", Source: chart},
			func(context.Context) (float64, error) {
				b, err := body.FromChart(10)
				if err != nil {
					return 0, err
				}
				f, err := form.FromBody(b)
				if err != nil {
					return 0, err
				}
				return g.get(f, b) * 100, nil
			}))
	}
	return append(out,
		figure(Check{Name: "dart angle of the one-dart front, size 10", Want: 27.38, Tolerance: 0.01, Unit: "°",
			Source: workers},
			func(context.Context) (float64, error) { b, err := block(); return deg(math.Abs(b.DartAngle())), err }),
		figure(Check{Name: "dart intake of the one-dart front, size 10", Want: 8.09, Tolerance: 0.01, Unit: "cm",
			Source: workers},
			func(context.Context) (float64, error) { b, err := block(); return b.DartIntake() * 100, err }))
}

// block is the one-dart front of size 10.
func block() (draft.Block, error) {
	b, err := body.FromChart(10)
	if err != nil {
		return draft.Block{}, err
	}
	return draft.FromBody(b)
}
