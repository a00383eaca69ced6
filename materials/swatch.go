package materials

import (
	"errors"
	"fmt"
)

// Swatch holds what a ruler and a kitchen scale tell about a cloth.
//
// Overhang is the length of a strip pushed over a table edge until the chord
// from edge to tip dips 41.5° (ISO 9073-7). Stretch is the strain of a strip
// cut on the bias under 4.9 N per m of width: 5 grams on each cm.
type Swatch struct {
	Name         string
	Weight       float64 // kg/m²
	OverhangWarp float64 // m
	OverhangWeft float64 // m
	OverhangBias float64 // m; 0 not tested
	BiasStretch  float64 // fraction; 0 not tested
}

// Fabric returns the cloth with what was not tested at its default, flagged
// Assumed. The error says which test is missing or out of range.
func (s Swatch) Fabric() (Fabric, error) {
	f := Fabric{Name: s.Name, Weight: s.Weight, Source: "swatch test"}
	f.Basis[Weight] = Evidence{Measured, "weighed"}
	for _, o := range []struct {
		q      Field
		length float64
		option bool
	}{{BendWarp, s.OverhangWarp, false}, {BendWeft, s.OverhangWeft, false}, {BendBias, s.OverhangBias, true}} {
		if o.length == 0 && o.option {
			continue
		}
		if err := checkOverhang(o.q, o.length); err != nil {
			return Fabric{}, err
		}
		*quantities[o.q].at(&f) = BendFromLength(o.length/2, s.Weight)
		f.Basis[o.q] = Evidence{Measured, fmt.Sprintf("strip test, overhang %s mm at 41.5°", figures(1e3*o.length))}
	}
	if s.BiasStretch < 0 {
		return Fabric{}, errors.New("materials: swatch: bias stretch below 0 %")
	}
	if s.BiasStretch > 0 {
		f.Shear = ShearFromBiasStretch(s.BiasStretch)
		f.Basis[Shear] = Evidence{Derived, fmt.Sprintf("123 over the bias stretch of %s %% at 4.9 N/m", figures(100*s.BiasStretch))}
	}
	fillDefaults(&f)
	return f, f.Validate()
}

func checkOverhang(q Field, length float64) error {
	if length >= 5e-3 && length <= 0.2 {
		return nil
	}
	return fmt.Errorf("materials: swatch: overhang for %s %s, want 5–200 mm", q.Key(), withUnit(1e3*length, "mm"))
}
