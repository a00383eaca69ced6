package materials

import "math"

// Loads of the pull tests and of a hanging cloth, N per m of width.
const (
	KESTensileLoad = 500 * GramForcePerCm // top of the KES-FB1 pull, 490.3 N/m
	DrapeLoad      = 5.0                  // a cowl hangs at 0.5–5 N/m
)

// TypicalLinearity is the KES linearity LT taken where none was published.
// From memory of KES tables 0.6–0.75 for wovens; six denims give 0.655–0.780
// (A. Kumari, K. Khurana, J. Textiles 2016, 4614168, Table 5). Between 0.6 and
// 0.75 the slope at drape loads moves by −12 to +38 %.
const TypicalLinearity = 0.65

// powerOf returns the power p of the pull curve with linearity LT.
func powerOf(linearity float64) float64 { return 2/linearity - 1 }

// slopeAtDrape returns the slope dT/de in N/m at DrapeLoad of the pull curve that passes
// through a load, N/m, at a strain.
//
// The curve is taken as T = Fm (e/em)^p. LT is the area under it over the area
// of the triangle (S. Kawabata, "The Standardization and Analysis of Hand
// Evaluation", 1980), so LT = 2/(p+1), p = 2/LT − 1, and
// dT/de = p T / (em (T/Fm)^(1/p)). LT = 1 gives the secant Fm/em.
func slopeAtDrape(load, strain, p float64) float64 {
	return p * DrapeLoad / (strain * math.Pow(DrapeLoad/load, 1/p))
}
