//go:build cgo

package window

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/mesh/limit"
)

// control is a slider for a number of the style.
type control struct {
	name        string // in the style
	what        string // as undo speaks of it
	label, help string
}

// limits returns what a number of the style may be on the front of p.
func (p *Pane) limits(name string) limit.Range {
	if p.ranges == nil {
		p.ranges = p.Style.Ranges()
	}
	field := strings.ReplaceAll(name, "_", " ")
	for _, r := range p.ranges {
		if r.Field == field {
			return r
		}
	}
	return limit.Range{Field: field, Unit: limit.Length} // of the stand, where the front cannot be cut
}

// numberSlider is the slider of a number of the style that stands at v.
func (a *App) numberSlider(c *panel.Column, k control, v float64) { a.numberSliderIf(true, c, k, v) }

// numberSliderIf is a slider that keeps its place, dull, where there is nothing to set.
func (a *App) numberSliderIf(can bool, c *panel.Column, k control, v float64) {
	r := a.pane().limits(k.name)
	s := a.slider(r, k)
	s.Off = !can
	v, ch := a.ui.Slide(s, c.Next(sliderRoom), v)
	if ch == panel.Same {
		return
	}
	if r.None && v < r.Lo {
		v = math.Round(v/r.Lo) * r.Lo // either none, or the least
	}
	a.setNumber(k.name, v, k.what, k.name)
	a.sealIf(ch)
}

// slider is one for what r allows, in SI.
func (a *App) slider(r limit.Range, k control) panel.Slider {
	s := panel.Slider{ID: k.name, Label: a.says(k.label), Help: a.says(k.help), Min: r.Lo, Max: r.Hi}
	if r.None {
		s.Min = 0
	}
	parse := a.units.Parse
	switch r.Unit {
	case limit.Small:
		s.Step, s.Format, parse = 0.001, plain("%.1f mm", 1000), number("mm", 1000)
		if a.units == Inches {
			s.Step, s.Format, parse = inch/32, a.units.Small, a.units.Parse
		}
	case limit.Angle:
		s.Step, s.Format, parse = 5*degree, plain("%.0f°", 1/degree), number("°", 1/degree)
	case limit.Mass:
		s.Step, s.Format, parse = 0.001, plain("%.0f g", 1000), number("g", 1000)
	case limit.Share:
		s.Step, s.Format, parse = 0.05, plain("%.0f %%", 100), number("%", 100)
	default:
		s.Step, s.Format = a.units.Step(), a.units.Length
	}
	s.Parse = func(text string) (float64, error) {
		v, err := parse(text)
		if err != nil {
			return v, err
		}
		r.Value = v
		if err := r.Check(); err != nil {
			return v, errors.New(a.says(a.units.Words(err)))
		}
		return v, nil
	}
	return s
}

// plain writes a value of which per make one SI unit.
func plain(format string, per float64) func(float64) string {
	return func(v float64) string { return noMinus(fmt.Sprintf(format, v*per)) }
}

// number reads a number with or without its unit, of which per make one SI unit.
func number(unit string, per float64) func(string) (float64, error) {
	return func(text string) (float64, error) {
		t := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), unit))
		v, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64)
		if err != nil {
			return 0, fmt.Errorf("%q is no number, want one in %s", text, unit)
		}
		return v / per, nil
	}
}

// sliderRoom is the height of a slider with the gap below it, units.
const sliderRoom = panel.SliderHeight + 10

// sealIf ends a change that is done.
func (a *App) sealIf(ch panel.Change) {
	if ch == panel.Set {
		a.past.Seal()
	}
}
