// Package materials holds woven fabrics as measured values, each with its
// source and how far to trust it. Values are SI inside (kg/m², N·m, N/m, m);
// files and messages use the units of the trade and say them in the key
// (weight_gsm, bend_warp_uNm, shear_N_per_m).
//
// A fabric comes from the built-in library (Find, Library, Default), from a
// user's YAML file (FromFile, Parse) or from strips tested at home (Swatch).
// Adding a fabric to the library is adding a file to materials/library.
// Start at Fabric.
package materials

import "cowl/materials/look"

// Gravity is standard gravity in m/s², exact by definition (CGPM 1901).
const Gravity = 9.80665

// Fabric is one woven cloth, per unit width and SI. Warp runs along the grain.
// Every number has an Evidence in Basis that says how it is known.
type Fabric struct {
	Name   string // short lower-case id, usable on a command line
	Title  string
	Fibre  string
	Weave  string
	Weight float64 // areal mass, kg/m²

	BendWarp    float64 // bending rigidity along the warp, N·m (N·m² per m width)
	BendWeft    float64 // along the weft, N·m
	BendBias    float64 // at 45° to both, N·m
	Shear       float64 // shear rigidity G, N/m per rad
	TensileWarp float64 // slope of tension over strain at drape loads, N/m
	TensileWeft float64 // as PullWarp, along the weft

	Thickness     float64 // m, under a light presser foot
	Friction      float64 // Coulomb coefficient, cloth on dress form
	FrictionCloth float64 // the same, cloth on cloth

	// What the yarns hold by rubbing on each other, half the width of the loop
	// of the test there and back; 0 and Assumed where it was not measured.
	BendFriction  float64 // moment per width, N: half of the KES 2HB
	ShearFriction float64 // force per width, N/m: half of the KES 2HG at 0.5°

	// Where the curves of the tests bend; 0 and Assumed where they are taken as straight.
	BendSoftening float64 // m, −B1/B0 of the moment M = B0·κ + B1·κ²
	ShearLock     float64 // rad, shear angle from which the yarns jam

	Drape      *DrapeMeter // published drape test, nil if there is none
	Basis      Basis       // one Evidence a Field
	Range      Ranges      // where a source gives a range, one Interval a Field
	Spread     Spreads     // where it was tested, one standard uncertainty a Field
	Source     string      // author, title, year, table
	Licence    string      // of the source
	Confidence Confidence  // of the fabric as a whole
	Note       string      // caveats: units, conversions, ranges
	Look       look.Look   // for pictures: invented, never measured; decides no figure
}

// DrapeMeter is a published drape test of a fabric: a disc of cloth hung over
// a smaller round support. Coefficients from different rigs do not compare.
type DrapeMeter struct {
	Coefficient float64 // hanging shadow over flat ring, fraction 0–1
	Disc        float64 // diameter of the support, m; 0 unknown
	Specimen    float64 // diameter of the cloth, m; 0 unknown
	Nodes       float64 // mean count of folds; 0 unknown
	Note        string
}

// Complete reports whether weight, warp and weft bending and shear all come
// from measurements, so that no value that decides the drape is a guess.
func (f Fabric) Complete() bool {
	for _, q := range []Field{Weight, BendWarp, BendWeft, Shear} {
		if k := f.Basis[q].Kind; k != Measured && k != Derived {
			return false
		}
	}
	return true
}

// String returns the name and the values that decide the drape, on one line.
func (f Fabric) String() string {
	return f.Name + ": " + Weight.Format(f) + ", bend " + BendWarp.Format(f) + " × " +
		BendWeft.Format(f) + ", shear " + Shear.Format(f)
}
