package ruler

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Parse reads a length: a bare number in u, or with its own unit; inches may be
// a fraction: 3 1/8. It returns m.
func (u Units) Parse(text string) (float64, error) {
	t := strings.ToLower(strings.TrimSpace(strings.Replace(text, ",", ".", 1)))
	per := u.PerMetre()
	for _, unit := range []struct {
		name string
		per  float64
	}{{"cm", 100}, {"mm", 1000}, {"inches", 1 / Inch}, {"inch", 1 / Inch}, {"in", 1 / Inch}, {"\"", 1 / Inch},
		{"″", 1 / Inch}} {
		if rest, ok := strings.CutSuffix(t, unit.name); ok {
			t, per = strings.TrimSpace(rest), unit.per
			break
		}
	}
	v, err := fraction(t)
	if err != nil {
		return 0, fmt.Errorf("%q is no length: type a number in %s, or with its unit: 8cm, 80mm, 3 1/8in", text, u)
	}
	return v / per, nil
}

// fraction reads 3, 3.25, 1/8 or 3 1/8.
func fraction(t string) (float64, error) {
	whole, part, mixed := strings.Cut(t, " ")
	if !mixed && strings.Contains(t, "/") {
		whole, part = "0", t
	}
	v, err := strconv.ParseFloat(whole, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("no number")
	}
	if part == "" {
		return v, nil
	}
	a, b, _ := strings.Cut(strings.TrimSpace(part), "/")
	up, err1 := strconv.ParseUint(a, 10, 16)
	down, err2 := strconv.ParseUint(b, 10, 16)
	if err1 != nil || err2 != nil || down == 0 {
		return 0, fmt.Errorf("no fraction")
	}
	return v + math.Copysign(float64(up)/float64(down), v), nil
}
