package flags

import "cowl/cmd/cowl/internal/style"

// Length is a length on the command line, m.
type Length float64

// UnmarshalText reads a length with its unit.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := style.ParseLength(string(text))
	*l = Length(v)
	return err
}

// Degrees is an angle on the command line, rad.
type Degrees float64

// UnmarshalText reads degrees, bare or with deg.
func (d *Degrees) UnmarshalText(text []byte) error {
	v, err := style.ParseAngle(string(text))
	*d = Degrees(v)
	return err
}
