package materials

import (
	"math"

	"cowl/mesh/limit"
)

// Field names a number of a Fabric. It indexes Basis.
type Field int

// The numeric fields of a Fabric, in the order of files and tables.
const (
	Weight Field = iota
	BendWarp
	BendWeft
	BendBias
	Shear
	TensileWarp
	TensileWeft
	Thickness
	Friction
	FrictionCloth
	BendFriction
	ShearFriction
	BendSoftening
	ShearLock
	numFields
)

// Fields returns all numeric fields in the order of files and tables.
func Fields() []Field {
	out := make([]Field, numFields)
	for i := range out {
		out[i] = Field(i)
	}
	return out
}

var quantities = [numFields]quantity{
	Weight: {key: "weight_gsm", of: weights, unit: "g/m²", scale: 1e-3, low: 10, high: 1500,
		why: "the sheerest gauze to the heaviest coating",
		at:  func(f *Fabric) *float64 { return &f.Weight }},
	BendWarp: {key: "bend_warp_uNm", of: rigidities, unit: "µN·m", scale: 1e-6, low: 0.05, high: 2000, why: bendWhy,
		at: func(f *Fabric) *float64 { return &f.BendWarp }},
	BendWeft: {key: "bend_weft_uNm", of: rigidities, unit: "µN·m", scale: 1e-6, low: 0.05, high: 2000, why: bendWhy,
		at: func(f *Fabric) *float64 { return &f.BendWeft }},
	BendBias: {key: "bend_bias_uNm", of: rigidities, unit: "µN·m", scale: 1e-6, low: 0.05, high: 2000, why: bendWhy,
		at: func(f *Fabric) *float64 { return &f.BendBias }},
	Shear: {key: "shear_N_per_m", of: shears, unit: "N/m", scale: 1, low: 2, high: 1000,
		why: "open gauze to coated cloth; 1 gf/(cm·deg) is 56.2 N/m",
		at:  func(f *Fabric) *float64 { return &f.Shear }},
	TensileWarp: {key: "pull_warp_N_per_m", of: loads, unit: "N/m", scale: 1, low: 50, high: 200000, why: tensileWhy,
		at: func(f *Fabric) *float64 { return &f.TensileWarp }},
	TensileWeft: {key: "pull_weft_N_per_m", of: loads, unit: "N/m", scale: 1, low: 50, high: 200000, why: tensileWhy,
		at: func(f *Fabric) *float64 { return &f.TensileWeft }},
	Thickness: {key: "thickness_mm", of: lengths, unit: "mm", scale: 1e-3, low: 0.02, high: 6, why: "organza to blanket",
		at: func(f *Fabric) *float64 { return &f.Thickness }},
	Friction: {key: "friction", of: numbers, scale: 1, low: 0, high: 1.5, why: "frictionless to rubbery",
		at: func(f *Fabric) *float64 { return &f.Friction }},
	FrictionCloth: {key: "friction_cloth", of: numbers, scale: 1, low: 0, high: 1.5, why: "frictionless to rubbery",
		at: func(f *Fabric) *float64 { return &f.FrictionCloth }},
	BendFriction: {key: "bend_friction_mN", of: moments, unit: "mN", scale: 1e-3, low: 0, high: 50,
		why: "half of the loop 2HB; 2HB of 1 gf·cm/cm is 4.903 mN here",
		at:  func(f *Fabric) *float64 { return &f.BendFriction }},
	ShearFriction: {key: "shear_friction_N_per_m", of: loads, unit: "N/m", scale: 1, low: 0, high: 100,
		why: "half of the loop 2HG; 2HG of 1 gf/cm is 0.4903 N/m here",
		at:  func(f *Fabric) *float64 { return &f.ShearFriction }},
	BendSoftening: {key: "bend_softening_mm", of: lengths, unit: "mm", scale: 1e-3, low: 0, high: 10,
		why: "−B1/B0 of a measured M = B0·κ + B1·κ²; 0 is a straight line",
		at:  func(f *Fabric) *float64 { return &f.BendSoftening }},
	ShearLock: {key: "shear_lock_deg", of: angles, unit: "°", scale: math.Pi / 180, low: 0, high: 75,
		why: "shear angle from which the yarns jam; 0 is never",
		at:  func(f *Fabric) *float64 { return &f.ShearLock }},
}

const (
	bendWhy    = "the limpest gauze to canvas; 1 gf·cm²/cm is 98.07 µN·m"
	tensileWhy = "stretch woven to glass cloth, slope at 0.5–5 N/m tension"
)

// fieldNames are the names of fields for people.
var fieldNames = [numFields]string{
	"weight", "bending along the warp", "bending along the weft", "bending on the bias", "shear",
	"pull along the warp", "pull along the weft", "thickness", "friction on the form", "friction of cloth on cloth",
	"bending friction", "shear friction",
	"softening of bending", "locking angle",
}

// String returns the name of the field for people.
func (q Field) String() string { return fieldNames[q] }

// Key returns the name of the field in fabric files; it ends in the unit.
func (q Field) Key() string { return quantities[q].key }

// Unit returns the unit people read the field in; empty if it has none.
func (q Field) Unit() string { return quantities[q].unit }

// In returns where f holds the field, SI, to change it.
func (q Field) In(f *Fabric) *float64 { return quantities[q].at(f) }

// Limits returns the field of f with what it may be by itself.
func (q Field) Limits(f Fabric) limit.Range { return quantities[q].limits(q.InUnits(f)) }

// Parse reads the field with its unit, like 135gsm, 4oz/yd² or 16momme, and
// returns it in SI. A bare number is refused, but for degrees.
func (q Field) Parse(text string) (float64, error) {
	bare := ""
	if q == ShearLock {
		bare = "deg"
	}
	a, err := quantities[q].of.parse(text, bare)
	return a.si, err
}

// Value returns the field of f in SI units.
func (q Field) Value(f Fabric) float64 { return *quantities[q].at(&f) }

// InUnits returns the field of f in Unit, rounded to 12 figures so that the
// SI conversion leaves no 1.9500000000000002.
func (q Field) InUnits(f Fabric) float64 { return quantities[q].inUnits(&f) }

// Format returns the field of f with its unit, to four figures.
func (q Field) Format(f Fabric) string { return withUnit(q.InUnits(f), q.Unit()) }
