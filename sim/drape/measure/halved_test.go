package measure

import (
	"encoding/json"
	"testing"

	"cowl/mesh/ruler"
)

// What halving moved is told beside what was there before; what it lost is said
// to count.
func TestHalved(t *testing.T) {
	o, c := sample(), sample()
	if got := Halved(o); got != "" {
		t.Errorf("Halved of a drape on one lattice = %q, want nothing", got)
	}
	c.Spacing, c.EdgeDrop, c.Folds = 0.030, 0.119, c.Folds[:1]
	c.Folds[0].Depth = 0.037
	o.Coarser = c
	if got, want := Halved(o), "30.0 mm → 15.0 mm: edge drop 11.9 → 12.8 cm; deepest fold 37 → 42 mm"; got != want {
		t.Errorf("Halved = %q, want %q", got, want)
	}
	if got, want := HalvedIn(ruler.Inches, o), "30.0 mm → 15.0 mm: edge drop 4 5/8 in → 5 in; deepest fold 1 1/2 in → "+
		"1 5/8 in"; got != want {
		t.Errorf("HalvedIn inches = %q, want %q", got, want)
	}
	c.Kept = 2
	if got, want := Halved(o), "30.0 mm → 15.0 mm: edge drop 11.9 → 12.8 cm; deepest fold 37 → 42 mm; laid folds kept "+
		"2 → 1, folds nobody laid 0 → 0: the finer counts"; got != want {
		t.Errorf("Halved = %q, want %q", got, want)
	}
	b, err := JSON(o, nil)
	var read struct {
		Coarser struct {
			Spacing float64 `json:"spacing_mm"`
			Drop    float64 `json:"edge_drop_mm"`
			Folds   []struct {
				Depth float64 `json:"depth_mm"`
			}
		}
	}
	if err != nil || json.Unmarshal(b, &read) != nil || read.Coarser.Spacing != 30 || read.Coarser.Drop != 119 ||
		read.Coarser.Folds[0].Depth != 37 {
		t.Errorf("JSON = %s, %v, want coarser with 30, 119 and 37 mm", b, err)
	}
}

// A radius under two spacings is never told bare.
func TestSharpness(t *testing.T) {
	o := sample()
	for _, q := range []struct {
		radius, spacing float64
		want            string
	}{
		{0, 0.008, ""},
		{0.020, 0.008, ""},
		{0.012, 0.008, "; under two spacings both follow the lattice, --fine says how far"},
	} {
		o.FoldRadius, o.Spacing = q.radius, q.spacing
		if got := Sharpness(o); got != q.want {
			t.Errorf("radius %g m on %g m: %q, want %q", q.radius, q.spacing, got, q.want)
		}
	}
	c := sample()
	c.FoldRadius, c.Kinks, c.Spacing = 0.0144, 5, 0.016
	o.Coarser = c
	if got, want := Sharpness(o), "; on 16.0 mm a radius of 14.4 mm and 5 sharp bends"; got != want {
		t.Errorf("Sharpness = %q, want %q", got, want)
	}
}
