package style

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cowl/mesh/draft"
)

// Flags returns the fields that have a flag, of sections or single ones by
// their names, in the order of the table.
func Flags(of ...string) []Field {
	var out []Field
	for _, f := range fields {
		if f.Help != "" && (slices.Contains(of, f.group) || slices.Contains(of, f.Name) && f.measure == nil) {
			out = append(out, f)
		}
	}
	return out
}

// Flag returns the field of a flag; an unknown one panics.
func Flag(name string) Field {
	return fieldThat(name, func(f Field) bool { return f.Flag() == name })
}

// Flag is the flag of f without its two hyphens.
func (f Field) Flag() string {
	if f.flag != "" {
		return f.flag
	}
	return strings.ReplaceAll(f.Name, "_", "-")
}

// Holder stands for the value in the help; empty: the flag has none.
func (f Field) Holder() string {
	return [...]string{length: "LEN", angle: "DEG", mass: "G", share: "0..1", count: "N", choice: "WAY", truth: ""}[f.kind]
}

// Parse reads the value of the flag, SI.
func (f Field) Parse(text string) (v float64, err error) {
	if f.auto && text == "auto" {
		return draft.Auto, nil
	}
	switch f.kind {
	case length:
		v, err = ParseLength(text)
	case angle:
		v, err = ParseAngle(text)
	case mass:
		v, err = parseGrams(text)
	case share:
		if v, err = strconv.ParseFloat(text, 64); err != nil {
			err = fmt.Errorf("%q is no number, want 0–1, or auto", text)
		}
	case count:
		var n int64
		if n, err = strconv.ParseInt(text, 10, 64); err != nil {
			err = fmt.Errorf("want a whole number, not %q", text)
			if f.auto {
				err = fmt.Errorf("want a whole number, or auto, not %q", text)
			}
		}
		v = float64(n)
	default:
		v, err = f.parse(text)
	}
	if err == nil {
		err = f.refuse(v)
	}
	return v, err
}

// parseGrams reads grams with their unit and returns kg.
func parseGrams(text string) (float64, error) {
	digits, ok := strings.CutSuffix(text, "g")
	v, err := strconv.ParseFloat(digits, 64)
	if !ok || err != nil {
		return 0, fmt.Errorf("%q, want grams with their unit, such as 10g", text)
	}
	return v / 1000, nil
}
