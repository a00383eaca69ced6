package main

import "cowl/cmd/cowl/internal/style"

// cloth is a length on the command line, m.
type cloth float64

// UnmarshalText reads a length with its unit.
func (l *cloth) UnmarshalText(text []byte) error {
	v, err := style.ParseLength(string(text))
	*l = cloth(v)
	return err
}

// degrees is an angle on the command line, rad.
type degrees float64

// UnmarshalText reads degrees, bare or with deg.
func (d *degrees) UnmarshalText(text []byte) error {
	v, err := style.ParseAngle(string(text))
	*d = degrees(v)
	return err
}
