package main

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"cowl/materials"
)

// unit is one way to write a quantity.
type unit struct {
	name  string
	scale float64 // SI value of one
}

var (
	bendUnits  = []unit{{"uNm", 1e-6}, {"µNm", 1e-6}, {"mNm", 1e-3}, {"gfcm2/cm", materials.GramForceCm2PerCm}}
	rubUnits   = []unit{{"mN", 1e-3}, {"gfcm/cm", materials.GramForceCmPerCm}}
	pullUnits  = []unit{{"N/m", 1}, {"gf/cm", materials.GramForcePerCm}}
	shearUnits = []unit{{"N/m", 1}, {"gf/cm/deg", materials.GramForcePerCmDegree}}
	massUnits  = []unit{{"gsm", 1e-3}, {"g/m2", 1e-3}, {"g/m²", 1e-3}, {"oz/yd2", materials.OuncePerYard2}, {"momme", materials.Momme}}
)

var measured = regexp.MustCompile(`^([+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+))\s*(\S*)$`)

// parseUnit reads a number with one of the units and returns its SI value.
func parseUnit(text, what string, units []unit) (float64, error) {
	var names []string
	for _, u := range units {
		names = append(names, u.name)
	}
	wanted := strings.Join(names, ", ")
	m := measured.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return 0, fmt.Errorf("%q is no %s, want a number and its unit: %s", text, what, wanted)
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is too large a number", text)
	}
	if m[2] == "" {
		return 0, fmt.Errorf("%q has no unit, want it with the number: %s%s", text, m[1], units[0].name)
	}
	for _, u := range units {
		if u.name == m[2] {
			return v * u.scale, nil
		}
	}
	return 0, fmt.Errorf("%q has unit %q, want one of %s", text, m[2], wanted)
}

// The quantities of a cloth on the command line, SI.
type (
	massFlag  float64 // kg/m²
	bendFlag  float64 // N·m
	rubFlag   float64 // N
	pullFlag  float64 // N/m
	shearFlag float64 // N/m per rad
)

// UnmarshalText reads a weight.
func (f *massFlag) UnmarshalText(text []byte) error {
	v, err := parseUnit(string(text), "weight", massUnits)
	*f = massFlag(v)
	return err
}

// UnmarshalText reads a bending rigidity.
func (f *bendFlag) UnmarshalText(text []byte) error {
	v, err := parseUnit(string(text), "bending rigidity", bendUnits)
	*f = bendFlag(v)
	return err
}

// UnmarshalText reads a friction moment per width.
func (f *rubFlag) UnmarshalText(text []byte) error {
	v, err := parseUnit(string(text), "bending friction", rubUnits)
	*f = rubFlag(v)
	return err
}

// UnmarshalText reads a force per width.
func (f *pullFlag) UnmarshalText(text []byte) error {
	v, err := parseUnit(string(text), "force per width", pullUnits)
	*f = pullFlag(v)
	return err
}

// UnmarshalText reads a shear rigidity.
func (f *shearFlag) UnmarshalText(text []byte) error {
	v, err := parseUnit(string(text), "shear rigidity", shearUnits)
	*f = shearFlag(v)
	return err
}
