package materials

import (
	"math"
	"slices"
	"testing"
)

func TestQuery(t *testing.T) {
	for _, c := range []struct {
		what string
		q    Query
		has  []string
		not  []string
	}{
		{"words in title and name", Query{Words: "Charmeuse silk"}, []string{"silk-satin-memory"},
			[]string{"silk-taffeta-memory"}},
		{"fibre", Query{Words: "viscose"}, []string{"viscose-satin-memory", "polyester-viscose-twill"},
			[]string{"linen-memory"}},
		{"weight by the ends of a range", Query{Weight: Interval{0.081, 0.090}},
			[]string{"silk-satin-memory", "silk-taffeta-memory"}, []string{"polyester-faille"}},
		{"weight at a value", Query{Weight: Interval{0.1043, math.Inf(1)}}, []string{"polyester-faille", "denim-memory"},
			[]string{"silk-chiffon-memory"}},
		{"limp", Query{Length: Interval{0, 0.010}}, []string{"polyester-twill", "polyester-viscose-twill"},
			[]string{"wool-stretch-twill"}},
	} {
		var names []string
		for _, f := range c.q.Pick(Library()) {
			names = append(names, f.Name)
		}
		for _, n := range c.has {
			if !slices.Contains(names, n) {
				t.Errorf("%s: Pick = %v, want %s in it", c.what, names, n)
			}
		}
		for _, n := range c.not {
			if slices.Contains(names, n) {
				t.Errorf("%s: Pick = %v, want no %s", c.what, names, n)
			}
		}
	}
	if got := (Query{}).Pick(Library()); len(got) != len(Library()) {
		t.Errorf("zero Query picks %d of %d", len(got), len(Library()))
	}
	last := 0.0
	for _, f := range (Query{Limp: true}).Pick(Library()) {
		if f.GravityLength() < last {
			t.Errorf("Limp: %s falls over %g m after %g", f.Name, f.GravityLength(), last)
		}
		last = f.GravityLength()
	}
}

// What is recalled as a range is kept as one, with the value in its middle.
func TestLibraryRanges(t *testing.T) {
	n := 0
	for _, f := range Library() {
		for _, q := range []Field{Weight, BendWarp, BendWeft, Shear, Thickness} {
			i := f.Range[q]
			if !i.Known() || f.Basis[q].Kind == Measured {
				continue
			}
			n++
			if f.Basis[q].Kind != Memory || math.Abs((i.Low+i.High)/2-q.Value(f)) > 1e-9*i.High {
				t.Errorf("%s: %s %g of range %v (%v), want the middle, from memory", f.Name, q.Key(), q.Value(f), i, f.Basis[q])
			}
		}
	}
	if n != 17*5-1 { // 17 kinds of cloth; habutae has one weight
		t.Errorf("%d ranges, want 84", n)
	}
}

// Where the unit of a measured shear is unread, both readings are its range: what is
// stored, /1e5, in cN/(cm·deg), 57.3 N/m each; and as it stands, mN/m.
func TestLibraryReadings(t *testing.T) {
	for name, stored := range map[string]float64{"polyester-twill": 41000, "wool-stretch-twill": 50000,
		"polyester-viscose-twill": 61000, "cotton-polyester-twill": 126000} {
		f, err := Find(name)
		if err != nil {
			t.Fatal(err)
		}
		i, low, high := f.Range[Shear], stored/1e5*180/math.Pi, stored/1e3
		if math.Abs(i.Low-low) > 0.06 || math.Abs(i.High-high) > 1e-9 || f.Shear != i.Low || f.Basis[Shear].Kind != Measured {
			t.Errorf("%s: shear %g of %v, want %.1f of %.1f to %.0f N/m", name, f.Shear, i, low, low, high)
		}
	}
}

// The fabrics whose paper gives B of KES and no loop carry the loop of suitings.
func TestLibraryAssumedLoops(t *testing.T) {
	for _, name := range []string{"polyester-twill", "wool-stretch-twill", "polyester-viscose-twill",
		"cotton-polyester-twill"} {
		f, err := Find(name)
		if want := LoopOverBend * (f.BendWarp + f.BendWeft) / 2; err != nil || math.Abs(2*f.BendFriction/want-1) > 5e-3 ||
			f.Basis[BendFriction].Kind != Assumed {
			t.Errorf("%s: 2HB = %g mN (%v), want %g, assumed", name, 2e3*f.BendFriction, f.Basis[BendFriction], 1e3*want)
		}
	}
}

// Loops of the bending test in mN, computed elsewhere from the gf·cm/cm of
// Matsudaira et al. 2015, Table 1.
func TestLibraryLoops(t *testing.T) {
	for name, want := range map[string]float64{"cotton-broad": 1.216, "wool-tropical": 0.324, "polyester-faille": 0.069} {
		f, err := Find(name)
		if err != nil || math.Abs(2e3*f.BendFriction-want) > 6e-4 || f.Basis[BendFriction].Kind != Measured {
			t.Errorf("%s: 2HB = %g mN (%v), want %g", name, 2e3*f.BendFriction, f.Basis[BendFriction], want)
		}
	}
}
