package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// record is one entity: its kind and what of its groups is of use. A group
// that comes more than once keeps its last value, but for the vertices of a
// light polyline, which are gathered.
type record struct {
	kind   string
	line   int // in the file, where it begins
	text   map[int]string
	number map[int]float64
	many   []pair // groups 10, 20 and 42 in their order
}

type pair struct {
	code  int
	value float64
}

// records splits a file into its entities and hands each to do. Groups before
// the first entity are passed over. The record is valid until do returns.
func records(data []byte, do func(record) error) error {
	r := record{text: map[int]string{}, number: map[int]float64{}}
	begun := false
	n, entities := 0, 0
	for len(data) > 0 {
		var code, value string
		code, data = cutLine(data)
		n++
		if code == "" && len(bytes.TrimSpace(data)) == 0 {
			break // blank lines at the end
		}
		if len(data) == 0 {
			return fmt.Errorf("line %d: the file ends after a group code: it was cut off", n)
		}
		value, data = cutLine(data)
		n++
		group, err := strconv.Atoi(code)
		if err != nil {
			return fmt.Errorf("line %d: %.20q, want a group code: is this a DXF text file?", n-1, code)
		}
		if group != 0 {
			if begun {
				if err := r.add(group, value, n); err != nil {
					return err
				}
			}
			continue
		}
		if entities++; entities > mostEntities {
			return fmt.Errorf("more than %d entities, want one pattern of one size", mostEntities)
		}
		if begun {
			if err := do(r); err != nil {
				return fmt.Errorf("line %d: %w", r.line, err)
			}
		}
		clear(r.text)
		clear(r.number)
		r.kind, r.line, r.many, begun = value, n, r.many[:0], true
		if value == "EOF" {
			return nil
		}
	}
	if !begun {
		return errors.New("empty file, want DXF as text")
	}
	return errors.New("no EOF at the end: the file was cut off")
}

// cutLine returns the next line without blanks around it, and what follows.
func cutLine(data []byte) (string, []byte) {
	line, rest, _ := bytes.Cut(data, []byte("\n"))
	return strings.TrimSpace(string(line)), rest
}

// insUnits is the key under which a header keeps the unit of the drawing: all
// its variables are groups of one record.
const insUnits = -1

// mostEntities is how many entities a file may hold.
const mostEntities = 300000

// mostGroups is how many groups one entity may carry: a light polyline of many
// points has the most.
const mostGroups = 200000

// add keeps a group of the entity.
func (r *record) add(code int, value string, line int) error {
	switch {
	case code <= 9: // words
		r.text[code] = value
		return nil
	case code >= 10 && code <= 59, code >= 60 && code <= 79:
	default:
		return nil
	}
	v, err := strconv.ParseFloat(value, 64)
	if err != nil {
		return fmt.Errorf("line %d: %.20q, want a number for group %d", line, value, code)
	}
	r.number[code] = v
	if code == 70 && r.text[9] == "$INSUNITS" {
		r.number[insUnits] = v
	}
	if code == 10 || code == 20 || code == 42 {
		if r.many = append(r.many, pair{code, v}); len(r.many) > mostGroups {
			return fmt.Errorf("line %d: an entity of more than %d groups: thin out the curves", line, mostGroups)
		}
	}
	return nil
}
