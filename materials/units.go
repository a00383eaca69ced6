package materials

import "math"

// Units of fabric tests in SI. Exact, from the gram-force of standard gravity,
// the international inch and the avoirdupois ounce, but for Momme.
const (
	GramForcePerCm       = Gravity * 1e-3 / 1e-2          // gf/cm in N/m
	GramForceCm2PerCm    = Gravity * 1e-3 * 1e-4 / 1e-2   // gf·cm²/cm in N·m: 98.0665 µN·m
	GramForceCmPerCm     = Gravity * 1e-3                 // gf·cm/cm in N: 9.80665 mN
	GramForcePerCmDegree = GramForcePerCm * 180 / math.Pi // gf/(cm·deg) in N/m per rad: 56.19
	MilligramPerCm2      = 1e-6 / 1e-4                    // mg/cm² in kg/m²: 10 g/m²
	OuncePerYard2        = 0.028349523125 / (0.9144 * 0.9144)
	Momme                = 4.340e-3              // kg/m², recalled; trade tables give 4.31–4.34
	MilligramCm          = 1e-6 * Gravity * 1e-2 // mg·cm, flexural rigidity of the strip test, in N·m
)

// ShearFromBiasStretch returns G in N/m from the FAST bias extension EB5, a
// fraction: G = 123/EB5[%] (A. De Boos and D. Tester, "SiroFAST", CSIRO report
// WT92.02, 1994). It is a quarter of the bias modulus at the load of 5 gf/cm.
func ShearFromBiasStretch(eb5 float64) float64 { return 1.23 / eb5 }
