package proof

import (
	"context"
	"fmt"
	"math"

	"cowl/materials"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/lab"
)

const (
	peirce  = `closed form: heavy elastica; test of F. T. Peirce, "The 'handle' of cloth as a measurable quantity", J. Textile Institute 21 (1930) T377`
	kilby   = `W. F. Kilby, "Planar stress-strain relationships in woven fabrics", J. Textile Institute 54 (1963) T9, with Poisson's ratio 0`
	trellis = `pin-jointed net; zones of M. Dridi, "Bias-extension of woven fabrics", IntechOpen (2012), doi 10.5772/46161; formula from memory`
)

// isotropic is a cloth that is alike in all directions: C11 = C22 = 2G, and a
// twist of half the bending.
func isotropic(weight, bend, shear float64) sim.Stiffness {
	return sim.Stiffness{Weight: weight, TensileWarp: 2 * shear, TensileWeft: 2 * shear, Shear: shear, BendWarp: bend,
		BendWeft: bend, Twist: bend / 2}
}

// bends are cantilevers: the heavy elastica at four loads in three directions,
// the overhang of the standard test, and the loop of a published fabric.
func bends() []Pending {
	var out []Pending
	const length, weight = 0.05, 0.15
	for _, row := range []struct{ load, chord float64 }{{6, 34.57}, {7, 38.26}, {8, 41.49}, {9, 44.33}} {
		for _, grain := range []float64{0, 90, 45} {
			if grain != 0 && row.load != 8 {
				continue
			}
			s := isotropic(weight, weight*sim.Gravity*math.Pow(length, 3)/row.load, 100)
			out = append(out, figure(
				Check{Name: fmt.Sprintf("overhang at w·L³/B = %g, grain %g°: chord", row.load, grain), Want: row.chord,
					Tolerance: 0.3, Unit: "°", Source: peirce},
				func(ctx context.Context) (float64, error) {
					r, err := lab.Bend(ctx, s, lab.BendSetup{Length: length, Grain: rad(grain)})
					return deg(r.Chord), err
				}))
		}
	}
	out = append(out, figure(
		Check{Name: "overhang of 50 mm, 150 g/m², 10 µN·m: chord", Want: 60.19, Tolerance: 0.1, Unit: "°", Source: peirce},
		func(ctx context.Context) (float64, error) {
			r, err := lab.Bend(ctx, isotropic(weight, 10e-6, 100), lab.BendSetup{Length: length, Spacing: 0.0017})
			return deg(r.Chord), err
		}))
	return append(out, bendingLength(), fastRigidity())
}

// bendingLength hangs a published fabric at 41.5° and reads its bending length.
func bendingLength() Pending {
	return figure(
		Check{Name: "polyester-twill along the warp: bending length at 41.5°", Want: 11.4, Tolerance: 0.2, Unit: "mm",
			Source: "S. Petrak et al., Sustainability 17 (2025) 1388, tables 1 and 2: c = (B/w)^⅓ of 1.95 µN·m and 135.17 g/m²"},
		func(ctx context.Context) (float64, error) {
			f, err := materials.Find("polyester-twill")
			if err != nil {
				return 0, err
			}
			s := drape.Stiffness(f)
			s.BendFriction = 0 // c = (B/w)^⅓ is of elastic cloth
			r, err := lab.Bend(ctx, s, lab.BendSetup{})
			return r.BendingLength * 1000, err
		})
}

// fastRigidity turns a printed FAST bending length into its printed rigidity.
func fastRigidity() Pending {
	return figure(
		Check{Name: "168 g/m² with a bending length of 15.0 mm: rigidity", Want: 5.56, Tolerance: 0.01, Unit: "µN·m",
			Source: "a printed FAST sheet, read in a student laboratory report; B = 9.81e-6·W·c³"},
		func(context.Context) (float64, error) { return materials.BendFromLength(0.015, 0.168) * 1e6, nil })
}

// strips are strips under load: off-axis modulus, self-weight, trellis shear.
func strips() []Pending {
	var out []Pending
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 2000, TensileWeft: 1200, Shear: 40, BendWarp: 5e-6, BendWeft: 5e-6,
		Twist: 2e-6}
	for _, a := range []float64{0, 15, 30, 45, 60, 75, 90} {
		c, sn := math.Cos(rad(a)), math.Sin(rad(a))
		want := 1 / (math.Pow(c, 4)/s.TensileWarp + c*c*sn*sn/s.Shear + math.Pow(sn, 4)/s.TensileWeft)
		out = append(out, figure(
			Check{Name: fmt.Sprintf("strip pulled at %g° to the warp: modulus", a), Want: want, Tolerance: 0.02 * want,
				Unit: "N/m", Source: kilby},
			func(ctx context.Context) (float64, error) {
				r, err := lab.Tensile(ctx, s, lab.TensileSetup{Grain: rad(a), Load: 0.2, Free: true})
				return r.Modulus, err
			}))
	}
	for _, load := range []float64{1, 4, 8, 14} {
		out = append(out, trellisShear(load))
	}
	return out
}

// trellisShear pulls a bias strip of stiff yarns and compares the shear in its
// middle with that of a pin-jointed net of the same stretch. A net has no shear
// stiffness and no stretch; here they are as 1 to 2000.
func trellisShear(load float64) Pending {
	s := sim.Stiffness{Weight: 0.15, TensileWarp: 20000, TensileWeft: 20000, Shear: 10, BendWarp: 5e-6, BendWeft: 5e-6,
		Twist: 2e-6}
	const length, width = 0.3, 0.1
	c := Check{Name: fmt.Sprintf("bias strip 300 × 100 mm under %g N/m: shear in the middle less that of a net", load),
		Tolerance: 1.5, Unit: "°", Source: trellis}
	return Pending{c, func(ctx context.Context) (float64, string, error) {
		r, err := lab.Tensile(ctx, s, lab.TensileSetup{Length: length, Width: width, Grain: rad(45), Load: load})
		net := lab.TrellisShear(length, width, r.Extension*length)
		return deg(math.Abs(r.Shear) - net), fmt.Sprintf("sheared by %.1f°", deg(math.Abs(r.Shear))), err
	}}
}
