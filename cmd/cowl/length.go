package main

import (
	"fmt"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// cloth is a length on the command line, m.
type cloth float64

// UnmarshalText reads a length with its unit.
func (l *cloth) UnmarshalText(text []byte) error {
	v, err := style.ParseLength(string(text))
	*l = cloth(v)
	return err
}

// autoCloth is a length or the word auto.
type autoCloth float64

// UnmarshalText reads a length with its unit, or auto.
func (l *autoCloth) UnmarshalText(text []byte) error {
	if string(text) == "auto" {
		*l = draft.Auto
		return nil
	}
	v, err := style.ParseLength(string(text))
	if err == nil && v < 0 {
		err = fmt.Errorf("%s, want 0–40 cm, or auto: cloth can only be added", text)
	}
	*l = autoCloth(v)
	return err
}

// autoShare is a share from 0 to 1 or the word auto.
type autoShare float64

// UnmarshalText reads a number or auto.
func (s *autoShare) UnmarshalText(text []byte) error {
	if string(text) == "auto" {
		*s = draft.Auto
		return nil
	}
	v, err := strconv.ParseFloat(string(text), 64)
	if err != nil || !(v >= 0 && v <= 1) {
		return fmt.Errorf("dart share %s, want 0–1, or auto: 0 leaves the dart open, 1 closes it", text)
	}
	*s = autoShare(v)
	return nil
}

// degrees is an angle on the command line, rad.
type degrees float64

// UnmarshalText reads degrees, bare or with deg.
func (d *degrees) UnmarshalText(text []byte) error {
	v, err := style.ParseAngle(string(text))
	*d = degrees(v)
	return err
}

// grams is a mass on the command line, kg.
type grams float64

// UnmarshalText reads grams with their unit.
func (g *grams) UnmarshalText(text []byte) error {
	digits, ok := strings.CutSuffix(string(text), "g")
	v, err := strconv.ParseFloat(digits, 64)
	if !ok || err != nil {
		return fmt.Errorf("%q, want grams with their unit, such as 10g", text)
	}
	*g = grams(v / 1000)
	return nil
}
