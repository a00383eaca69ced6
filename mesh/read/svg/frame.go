package svg

import (
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

type vec = r2.Vec

// matrix maps x, y to a·x + c·y + e, b·x + d·y + f, as in SVG.
type matrix [6]float64

func (m matrix) times(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[2]*n[1], m[1]*n[0] + m[3]*n[1],
		m[0]*n[2] + m[2]*n[3], m[1]*n[2] + m[3]*n[3],
		m[0]*n[4] + m[2]*n[5] + m[4], m[1]*n[4] + m[3]*n[5] + m[5],
	}
}

func (m matrix) at(v vec) vec {
	return vec{X: m[0]*v.X + m[2]*v.Y + m[4], Y: m[1]*v.X + m[3]*v.Y + m[5]}
}

// frame returns the matrix from the coordinates of the picture to metres, Y
// up.
func frame(e xml.StartElement, said outline.Unit) (matrix, error) {
	box, err := numbers(attribute(e, "viewBox"))
	if err != nil || len(box) != 0 && (len(box) != 4 || !(box[2] > 0 && box[3] > 0)) {
		return matrix{}, fmt.Errorf("viewBox %.60q, want four numbers, the last two above 0", attribute(e, "viewBox"))
	}
	wide, unit, err := measure(attribute(e, "width"))
	if err != nil {
		return matrix{}, err
	}
	high, unitHigh, err := measure(attribute(e, "height"))
	if err != nil {
		return matrix{}, err
	}
	if unit == 0 || unitHigh == 0 { // pixels, per cent or nothing: how large they are is not said
		if said == 0 {
			return matrix{}, errors.New("the picture does not say its size in mm, cm or in, want width and height with a " +
				"unit, or the unit of its coordinates beside the file")
		}
		s := float64(said)
		return matrix{s, 0, 0, -s, 0, 0}, nil
	}
	if said != 0 && said != unit {
		return matrix{}, fmt.Errorf("unit %v, but the picture says %v: leave the unit out, or mend the file", said, unit)
	}
	wide, high = wide*float64(unit), high*float64(unitHigh)
	if len(box) == 0 { // coordinates are CSS pixels, 96 to the inch
		s := float64(outline.Inch) / 96
		return matrix{s, 0, 0, -s, 0, 0}, nil
	}
	sx, sy := wide/box[2], high/box[3]
	if math.Abs(sx/sy-1) > 0.001 {
		return matrix{}, fmt.Errorf("the picture is %.1f × %.1f mm for a viewBox of %g × %g: it is drawn out of shape",
			wide*1000, high*1000, box[2], box[3])
	}
	return matrix{sx, 0, 0, -sx, -box[0] * sx, box[1] * sx}, nil
}

// measure reads a width or height; unit 0: pixels, per cent or not there.
func measure(text string) (float64, outline.Unit, error) {
	text = strings.TrimSpace(text)
	number := strings.TrimRight(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ%")
	unit := strings.ToLower(text[len(number):])
	if unit == "" || unit == "px" || unit == "%" || unit == "em" {
		return 0, 0, nil
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if err != nil || !(v > 0 && v < 1e6) {
		return 0, 0, fmt.Errorf("size %.30q, want a number above 0 with mm, cm or in", text)
	}
	switch unit {
	case "pt":
		return v / 72, outline.Inch, nil
	case "pc":
		return v / 6, outline.Inch, nil
	}
	u, err := outline.ParseUnit(unit)
	if err != nil || u == outline.Metre {
		return 0, 0, fmt.Errorf("size %.30q, want mm, cm or in", text)
	}
	return v, u, nil
}

// mostTransforms is how many transforms one element may list.
const mostTransforms = 20

// transform reads a transform attribute.
func transform(text string) (matrix, error) {
	m := matrix{1, 0, 0, 1, 0, 0}
	rest := strings.TrimSpace(text)
	for n := 0; rest != ""; n++ {
		name, after, ok := strings.Cut(rest, "(")
		list, next, closed := strings.Cut(after, ")")
		if !ok || !closed || n == mostTransforms {
			return m, fmt.Errorf("transform %.60q, want at most %d of matrix, translate, scale, rotate", text, mostTransforms)
		}
		v, err := numbers(list)
		if err != nil {
			return m, fmt.Errorf("transform %.60q: %w", text, err)
		}
		one, err := simple(strings.Trim(name, " ,\t\r\n"), v)
		if err != nil {
			return m, err
		}
		m = m.times(one)
		rest = strings.Trim(next, " ,\t\r\n")
	}
	return m, nil
}

// simple returns the matrix of one transform.
func simple(name string, v []float64) (matrix, error) {
	get := func(i int, otherwise float64) float64 {
		if i < len(v) {
			return v[i]
		}
		return otherwise
	}
	switch {
	case name == "matrix" && len(v) == 6:
		return matrix(v), nil
	case name == "translate" && (len(v) == 1 || len(v) == 2):
		return matrix{1, 0, 0, 1, v[0], get(1, 0)}, nil
	case name == "scale" && (len(v) == 1 || len(v) == 2):
		return matrix{v[0], 0, 0, get(1, v[0]), 0, 0}, nil
	case name == "rotate" && (len(v) == 1 || len(v) == 3):
		sin, cos := math.Sincos(v[0] * math.Pi / 180)
		x, y := get(1, 0), get(2, 0)
		return matrix{cos, sin, -sin, cos, x - cos*x + sin*y, y - sin*x - cos*y}, nil
	}
	return matrix{}, fmt.Errorf("transform %.20q with %d numbers is not read: flatten it", name, len(v))
}

// numbers reads numbers parted by blanks and commas.
func numbers(text string) ([]float64, error) {
	if len(text) > mostLetters {
		return nil, fmt.Errorf("list of %d letters, want at most %d", len(text), mostLetters)
	}
	var out []float64
	for _, f := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,\t\r\n", r) }) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
			return nil, fmt.Errorf("%.20q, want a finite number", f)
		}
		out = append(out, v)
	}
	return out, nil
}
