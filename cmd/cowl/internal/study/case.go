package study

import (
	"fmt"
	"regexp"
	"strings"

	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials/look"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// oneCase is one cut in one cloth, hung by one or more hands.
type oneCase struct {
	Name   string
	Group  string    // the line of a chart it belongs to; empty: the only one
	Values []float64 // of what is varied, in the units of the sheet
	style  style.Style
	cowl   draft.Cowl
	wrong  error // it cannot be cut or hung; nothing is
	hide   bool  // no picture
	lined  bool  // its picture shows grain lines instead of the look of the fabric
	steady bool  // where no number of folds is asked for none is tried: the usual one is laid, see drape.Job.AutoFolds

	first *drape.Outcome // what the first hand has found, see finds; nil: nothing
}

// newCase cuts the style. What keeps it from being cut or hung is noted, not returned:
// the other cases go on.
func newCase(name string, s style.Style) oneCase {
	c := oneCase{Name: name, style: s}
	if c.cowl, c.wrong = s.Cowl(); c.wrong == nil {
		c.wrong = s.Check()
	}
	return c
}

// bounds returns the drop of the edge alone in an upright plane, mm.
func (c oneCase) bounds() (curve, v float64) {
	curve, v = drafted.Bounds(c.cowl)
	return curve * 1000, v * 1000
}

// seed returns the seed of the k-th hand.
func (c oneCase) seed(k int) uint64 { return c.style.Hang.Seed + uint64(k) }

// finds reports whether the first hand of the case finds out what the others then do
// alike: how many folds the cloth keeps, or how much of it is to be taken up.
func (c oneCase) finds() bool {
	return c.style.Hang.Folds == drape.Auto && !c.steady || c.style.Hang.EdgeDepth != draft.Auto
}

// follows reports whether the k-th hand does as the first has found.
func (c oneCase) follows(k int) bool { return k > 0 && c.finds() }

// key hashes all that the k-th placing depends on, and whether it is drawn.
func (c oneCase) key(k int) string {
	s := c.style
	s.Name, s.Hang.Seed, s.Hang.Placings = "", c.seed(k), 1
	s.Fabric.Look, s.Closure, s.Strap = look.Look{}, draft.NoClosure, style.Default().Strap // decide no figure
	inputs := []string{"cowl row 1", rows.Physics(), string(s.YAML()), string(s.Fabric.YAML()), fmt.Sprint(c.drawn(k))}
	if c.steady {
		inputs = append(inputs, "steady")
	}
	if c.lined && c.drawn(k) {
		inputs = append(inputs, "grain lines")
	}
	if c.follows(k) {
		inputs = append(inputs, c.key(0))
	}
	return rows.KeyOf(inputs...)
}

// drawn reports whether a picture is made of the k-th placing: the first, never
// chosen for what it shows.
func (c oneCase) drawn(k int) bool { return k == 0 && !c.hide }

// rows lists the placings of all cases that can be cut, case by case.
func rowsOf(cases []oneCase) (list []rows.Row, at []rowAt) {
	for i, c := range cases {
		if c.wrong != nil {
			continue
		}
		for k := range c.style.Hang.Placings {
			list = append(list, rows.Row{Key: c.key(k), Name: fmt.Sprintf("%s, seed %d", c.Name, c.seed(k))})
			at = append(at, rowAt{i, k})
		}
	}
	return list, at
}

// rowAt says which placing of which case a row is.
type rowAt struct{ of, placing int }

var unfit = regexp.MustCompile(`[^a-z0-9.]+`)

// fileName makes a name for the files of the i-th case: "03-wool-tropical".
func (c oneCase) fileName(i int) string {
	text := strings.ToLower(c.Name)
	if c.Group != "" {
		text = strings.ToLower(c.Group + " " + c.Name)
	}
	return fmt.Sprintf("%02d-%s", i+1, strings.Trim(unfit.ReplaceAllString(text, "-"), "-."))
}
