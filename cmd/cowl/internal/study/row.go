package study

import (
	"fmt"
	"math"
	"reflect"
	"slices"

	"cowl/sim"
	"cowl/sim/drape"
)

// Row is what is kept of one placing.
type Row struct {
	Outcome drape.Outcome `json:"outcome"`
	Section [][2]float64  `json:"section_mm,omitempty"` // of the drawn placing: forward, up
	Form    [][2]float64  `json:"form_mm,omitempty"`    // the form in the same plane
	Missing string        `json:"picture_missing,omitempty"`
}

// What a figure of a row may be. No drape has others, and a chart of them would be
// none.
const (
	mostFigure = 1e6  // of any, in its SI unit
	mostLength = 10   // m, either way, of the figures named in inMetres
	mostSpot   = 1e4  // mm, of a point of a section, the same
	mostPoints = 1e5  // of a section
	mostWhole  = 1e10 // nodes, steps, seeds
)

// inMetres are the figures in metres that charts and tables are made of.
var inMetres = []string{"EdgeDrop", "EdgeBelowNeck", "StandOff", "Forward", "Twist", "Drift", "FoldRadius", "PinSlip",
	"Inside", "Spacing", "Extension", "HalfEdge", "CowlPoint", "Facing", "Taken", "Depth"}

// Check tells whether the figures of a row can be those of a drape.
func (r *Row) Check() error {
	if s := r.Outcome.Status; !slices.Contains([]sim.Status{sim.Settled, sim.StepLimit, sim.Diverged}, s) {
		return fmt.Errorf("figures out of range: status %.20q", s)
	}
	for _, line := range [][][2]float64{r.Section, r.Form} {
		if len(line) > mostPoints {
			return fmt.Errorf("figures out of range: a section of %d points", len(line))
		}
		for _, p := range line {
			if !within(p[0], mostSpot) || !within(p[1], mostSpot) {
				return fmt.Errorf("figures out of range: point (%g, %g) mm of a section", p[0], p[1])
			}
		}
	}
	return checkFigures("", reflect.ValueOf(r.Outcome))
}

// within reports whether v is a number of up to most either way.
func within(v, most float64) bool { return math.Abs(v) <= most }

// checkFigures checks every number in v, which is called name.
func checkFigures(name string, v reflect.Value) error {
	switch v.Kind() {
	case reflect.Float64:
		most := mostFigure
		if slices.Contains(inMetres, name) {
			most = mostLength
		}
		if !within(v.Float(), most) {
			return fmt.Errorf("figures out of range: %s %g, want at most %g", name, v.Float(), most)
		}
	case reflect.Int:
		if !within(float64(v.Int()), mostWhole) {
			return fmt.Errorf("figures out of range: %s %d", name, v.Int())
		}
	case reflect.Slice:
		for i := range v.Len() {
			if err := checkFigures(name, v.Index(i)); err != nil {
				return err
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if err := checkFigures(v.Type().Field(i).Name, v.Field(i)); err != nil {
				return err
			}
		}
	}
	return nil
}
