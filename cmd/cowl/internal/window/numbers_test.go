//go:build cgo

package window

import (
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// With pleats little shoulder is left to lower the edge on: the slider ends
// where the draft does, and a typed value beyond is refused in the units of
// the window.
func TestSliderEnds(t *testing.T) {
	s := style.Default()
	s.Cut.Pleats = 1
	a := newApp(Options{Style: s}, Settings{Units: Inches})
	a.units = Inches
	c := a.slider(a.pane().limits("lower"), control{name: "lower", label: "Edge lower by"})
	for v, ok := range map[float64]bool{c.Min: true, c.Max: true, c.Max + 0.001: false} {
		s := s.Clone()
		if err := s.Set("lower", v, ""); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Cowl(); (err == nil) != ok {
			t.Errorf("lowered by %.4f m: error %v, want none %t", v, err, ok)
		}
	}
	if c.Max <= 0.001 || c.Max > 0.03 {
		t.Errorf("the slider ends at %.4f m, want the few millimetres before the pleat", c.Max)
	}
	if _, err := c.Parse("5"); err == nil || !strings.HasPrefix(err.Error(), "lower 5.00 in, want 0.00–") {
		t.Errorf("5 in typed: error %v, want one in inches", err)
	}
}
