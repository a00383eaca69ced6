package draft

import (
	"errors"
	"slices"
	"strings"

	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// PointNames returns the names FromPoints reads, in the order of the outline.
func PointNames() []string {
	return []string{"cf neck", "neck", "shoulder tip", "armhole", "underarm",
		"side waist", "dart outer", "apex", "dart inner", "cf waist"}
}

// armholeKnots is up to how many armhole points are taken as knots of a curve;
// more are taken to be the curve itself.
const armholeKnots = 4

// FromPoints returns the block with the given points (m; X from CF to the
// side, Y up), one for each of PointNames; only "armhole" may hold any number,
// from none to 200, in order from shoulder tip to underarm. Up to four armhole
// points are joined by a smooth curve, more are joined by straight lines as
// they stand. For a block without a dart give "dart outer" and "dart inner"
// the same place.
//
// A missing or unknown name, a wrong number of points, a point that is not
// finite or further than 2 m away, CF points off X = 0, dart legs of different
// length and an outline that crosses itself are errors.
func FromPoints(points map[string][]r2.Vec) (Block, error) {
	if err := checkNames(points); err != nil {
		return Block{}, err
	}
	one := func(name string) r2.Vec { return points[name][0] }
	b := Block{
		Neck: one("neck"), CFNeck: one("cf neck"), Apex: one("apex"),
		ShoulderTip: one("shoulder tip"), Underarm: one("underarm"),
		SideWaist: one("side waist"), DartOuter: one("dart outer"),
		DartInner: one("dart inner"), CFWaist: one("cf waist"),
		Armhole: slices.Clone(points["armhole"]),
	}
	if err := b.check(); err != nil {
		return Block{}, err
	}
	if n := len(b.Armhole); n > 0 && n <= armholeKnots {
		curve := smooth(b.armhole(), r2.Vec{})
		b.Armhole = curve[1 : len(curve)-1]
		if err := b.check(); err != nil {
			return Block{}, limit.Errorf("armhole", "the curve through the armhole points: %v", err)
		}
	}
	return b, nil
}

// checkNames says which names are missing, unknown or hold too many points.
func checkNames(points map[string][]r2.Vec) error {
	var errs []error
	names := PointNames()
	for _, name := range names {
		n := len(points[name])
		switch {
		case name == "armhole" && n > 200:
			errs = append(errs, limit.Errorf(name, "armhole has %d points, want 0–200: thin them out", n))
		case name != "armhole" && n != 1:
			errs = append(errs, limit.Errorf(name, "%s has %d points, want 1", name, n))
		}
	}
	var unknown []string
	for name := range points {
		if !slices.Contains(names, name) {
			unknown = append(unknown, name)
		}
	}
	slices.Sort(unknown)
	for _, name := range unknown {
		errs = append(errs, limit.Errorf(name, "unknown point %q, want one of: %s", name, strings.Join(names, ", ")))
	}
	return errors.Join(errs...)
}
