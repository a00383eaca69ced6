package outline

import "fmt"

// Unit is a unit of length, as metres to the unit; 0: not known.
type Unit float64

// The units a pattern may be drawn in.
const (
	Millimetre Unit = 0.001
	Centimetre Unit = 0.01
	Metre      Unit = 1
	Inch       Unit = 0.0254
)

// ParseUnit reads mm, cm, m or in; "" is not known.
func ParseUnit(name string) (Unit, error) {
	switch name {
	case "":
		return 0, nil
	case "mm":
		return Millimetre, nil
	case "cm":
		return Centimetre, nil
	case "m":
		return Metre, nil
	case "in":
		return Inch, nil
	}
	return 0, fmt.Errorf("unit %q, want mm, cm, m or in", name)
}

// String returns the name ParseUnit reads.
func (u Unit) String() string {
	switch u {
	case Millimetre:
		return "mm"
	case Centimetre:
		return "cm"
	case Metre:
		return "m"
	case Inch:
		return "in"
	}
	return "unknown"
}

// Agree returns the unit of a file that states one, 0 if it does not, and of
// which the user says another, 0 if nothing is said.
func Agree(stated, said Unit) (Unit, error) {
	switch {
	case stated == 0 && said == 0:
		return 0, fmt.Errorf("the file does not say its unit, want it beside the file: unit mm, cm, m or in")
	case stated == 0:
		return said, nil
	case said != 0 && said != stated:
		return 0, fmt.Errorf("unit %v, but the file says %v: leave the unit out, or mend the file", said, stated)
	}
	return stated, nil
}
