// Package limit says what a number of the user's may be and what is wrong with
// one that is not. Values are SI; a message keeps its quantities as numbers
// until it is read, so that whoever shows it chooses the units, and carries
// the field it speaks of, so that nobody has to find that in its words.
// Start at Range and Error.
package limit

import (
	"errors"
	"math"
)

// Range is a number with what it may be, both ends included.
type Range struct {
	Field  string  // as it is spoken of: "cowl point"
	Value  float64 // SI
	Lo, Hi float64 // SI; an end that is infinite is none
	Unit   Unit
	Why    Words // what the ends stand for, or what to do
	None   bool  // zero is allowed too: there is none, or it was not taken
}

// slack lets a limit itself pass after its unit was converted, in units.
const slack = 1e-9

// Check returns an Error unless the value lies in the range.
func (r Range) Check() error {
	v := r.Unit.of(r.Value)
	if r.None && v == 0 || v >= r.Unit.of(r.Lo)-slack && v <= r.Unit.of(r.Hi)+slack {
		return nil
	}
	return Errorf(r.Field, "%s %v, want %v: %v", r.Field, Of(r.Value, r.Unit), r.Allowed(), r.Why)
}

// Allowed is what the value may be, to be written in a message.
func (r Range) Allowed() Words {
	switch {
	case math.IsInf(r.Lo, -1):
		return Say("at most %v", Of(r.Hi, r.Unit))
	case math.IsInf(r.Hi, 1):
		return Say("at least %v", Of(r.Lo, r.Unit))
	}
	return Say("%v", Between(r.Lo, r.Hi, r.Unit))
}

// Check returns one joined error of all that lie outside their range.
func Check(ranges []Range) error {
	var errs []error
	for _, r := range ranges {
		errs = append(errs, r.Check())
	}
	return errors.Join(errs...)
}
