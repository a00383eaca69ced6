package style

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// metres is how many of a unit of length make a metre.
var metres = map[string]float64{"mm": 1e3, "cm": 1e2, "m": 1, "in": 1 / 0.0254}

// toMetres turns v in a unit of length into metres, to 12 figures: the same
// length is the same number whatever unit it was written in.
func toMetres(v float64, unit string) float64 {
	m, _ := strconv.ParseFloat(figures(v/metres[unit]), 64)
	return m
}

// figures formats v to 12 figures.
func figures(v float64) string { return strconv.FormatFloat(v, 'g', 12, 64) }

var quantity = regexp.MustCompile(`^([+-]?(?:\d+\.?\d*|\.\d+))\s*([a-zA-Z°"″]*)$`)

// ParseLength reads a length with its unit, such as 8cm, 80mm, 0.08m or
// 3.25in, and returns metres. A bare number and an unknown unit are errors.
func ParseLength(text string) (float64, error) {
	m := quantity.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return 0, fmt.Errorf("%q is no length, want a number and its unit: 8cm, 80mm or 3.25in", text)
	}
	v, err := strconv.ParseFloat(m[1], 64)
	_, known := metres[m[2]]
	switch {
	case err != nil || math.IsInf(v, 0):
		return 0, fmt.Errorf("%q is too large a number", text)
	case m[2] == "":
		return 0, fmt.Errorf("%q has no unit, want it with the number: %scm, %smm or %sin", text, m[1], m[1], m[1])
	case !known:
		return 0, fmt.Errorf("%q has unit %q, want mm, cm, m or in", text, m[2])
	}
	return toMetres(v, m[2]), nil
}

// ParseAngle reads degrees, bare or with deg or °, and returns radians.
func ParseAngle(text string) (float64, error) {
	m := quantity.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil || m[2] != "" && m[2] != "deg" && m[2] != "°" {
		return 0, fmt.Errorf("%q is no angle, want degrees: 45 or 45deg", text)
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is too large a number", text)
	}
	return toRadians(v), nil
}

func toRadians(deg float64) float64 { return deg * math.Pi / 180 }

func toDegrees(rad float64) float64 { return rad * 180 / math.Pi }
