package materials

import (
	"errors"
	"regexp"

	"cowl/mesh/limit"
)

const nameWanted = "want lower-case words joined by hyphens, like polyester-twill"

var nameForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// Validate returns an error that lists everything wrong with f: a value out of
// range, a value without evidence, a pull not above the shear, a bad name.
func (f Fabric) Validate() error {
	var errs []error
	if !nameForm.MatchString(f.Name) {
		errs = append(errs, limit.Errorf("name", "name %.120q, %s", f.Name, nameWanted))
	}
	for _, q := range Fields() {
		errs = append(errs, quantities[q].check(q.InUnits(f)))
		if k := f.Basis[q].Kind; k < Measured || k > Memory {
			errs = append(errs, limit.Errorf(q.Key(), "%s has no basis, want measured, derived, assumed or memory", q.Key()))
		}
	}
	errs = append(errs, f.checkTensile(TensileWarp), f.checkTensile(TensileWeft), f.checkDrape(), f.checkConfidence())
	errs = append(errs, f.checkRanges()...)
	return errors.Join(errs...)
}

func (f Fabric) checkConfidence() error {
	switch f.Confidence {
	case "", High, Medium, Low:
		return nil
	}
	return limit.Errorf("confidence", "confidence %.120q, want high, medium or low", f.Confidence)
}

// checkTensile demands that yarns pull harder than the cloth shears: the yarn
// springs of a lattice carry the pull less the shear and must stay positive.
func (f Fabric) checkTensile(q Field) error {
	if q.InUnits(f) > Shear.InUnits(f) {
		return nil
	}
	return limit.Errorf(q.Key(), "%s %s, want more than shear_N_per_m %s: a woven is stiffer along its yarns than in "+
		"shear",
		q.Key(), q.Format(f), Shear.Format(f))
}

// checkDrape returns what is wrong with a published drape test, if there is one.
func (f Fabric) checkDrape() error {
	if f.Drape == nil {
		return nil
	}
	var errs []error
	for _, q := range drapeQuantities {
		if err := q.check(q.inUnits(&f)); err != nil {
			errs = append(errs, limit.Errorf("drape", "drape: %v", err))
		}
	}
	if d := f.Drape; d.Specimen > 0 && d.Specimen <= d.Disc {
		errs = append(errs, limit.Errorf("drape", "drape: specimen_mm %s, want more than disc_mm %s",
			withUnit(1000*d.Specimen, "mm"), withUnit(1000*d.Disc, "mm")))
	}
	return errors.Join(errs...)
}
