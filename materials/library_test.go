package materials

import (
	"math"
	"slices"
	"strings"
	"testing"

	"cowl/materials/look"
)

func TestLibraryIsSound(t *testing.T) {
	all := Library()
	complete, last := 0, ""
	for _, f := range all {
		if err := f.Validate(); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
		for _, v := range []struct{ what, text string }{
			{"title", f.Title}, {"fibre", f.Fibre}, {"weave", f.Weave},
			{"source", f.Source}, {"licence", f.Licence}, {"confidence", string(f.Confidence)}, {"note", f.Note},
		} {
			if v.text == "" {
				t.Errorf("%s has no %s", f.Name, v.what)
			}
		}
		for _, q := range Fields() {
			if f.Basis[q].How == "" || strings.Contains(f.Basis[q].How, "as given") {
				t.Errorf("%s: %s has basis %q, want one that says where from", f.Name, q.Key(), f.Basis[q])
			}
		}
		if f.Name <= last {
			t.Errorf("Library out of order: %s after %s", f.Name, last)
		}
		last = f.Name
		if f.Complete() {
			complete++
		}
		if memory := f.Basis[Weight].Kind == Memory; memory != strings.HasSuffix(f.Name, "-memory") || memory &&
			f.Confidence != Low {
			t.Errorf("%s: weight is %v and confidence %s, want -memory in the name and low just where values are recalled",
				f.Name, f.Basis[Weight].Kind, f.Confidence)
		}
	}
	if len(all) != 26 || complete != 4 {
		t.Errorf("library has %d fabrics, %d complete, want 26 and 4", len(all), complete)
	}
}

// Bending lengths as tabulated beside the rigidities; computed elsewhere from
// the tables of Petrak et al. 2025 and Matsudaira et al. 2015, in cm, to 0.01.
func TestLibraryBendingLengths(t *testing.T) {
	for _, c := range []struct {
		name       string
		warp, weft float64
	}{
		{"polyester-twill", 1.14, 0.77},
		{"wool-stretch-twill", 1.07, 1.05},
		{"polyester-viscose-twill", 1.02, 0.95},
		{"cotton-polyester-twill", 1.44, 1.14},
		{"cotton-broad", 2.12, 2.12},
		{"wool-tropical", 1.60, 1.60},
		{"polyester-faille", 1.22, 1.22},
	} {
		f, err := Find(c.name)
		if err != nil {
			t.Error(err)
			continue
		}
		warp, weft := 100*BendingLength(f.BendWarp, f.Weight), 100*BendingLength(f.BendWeft, f.Weight)
		if math.Abs(warp-c.warp) > 0.006 || math.Abs(weft-c.weft) > 0.006 {
			t.Errorf("%s: bending lengths %.3f × %.3f cm, want %.2f × %.2f", c.name, warp, weft, c.warp, c.weft)
		}
	}
}

// The pulls in the files are what PullAtDrape makes of the strains at
// 490.3 N/m of Petrak et al. 2025.
func TestLibraryPulls(t *testing.T) {
	for _, c := range []struct {
		name       string
		warp, weft float64 // %
	}{
		{"polyester-twill", 2.68, 6.47},
		{"wool-stretch-twill", 8.3, 10.31},
		{"polyester-viscose-twill", 17.72, 18.07},
		{"cotton-polyester-twill", 3.36, 17.46},
	} {
		f, err := Find(c.name)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, d := range []struct {
			q   Field
			emt float64
		}{{TensileWarp, c.warp}, {TensileWeft, c.weft}} {
			want := pullAtDrape(d.emt/100, TypicalLinearity)
			if got := d.q.Value(f); math.Abs(got-want) > 0.5 {
				t.Errorf("%s: %s = %g, want %.1f N/m", c.name, d.q.Key(), got, want)
			}
		}
	}
}

// DefaultDensity is the median of the measured thicknesses, and DefaultPull
// lies within the pulls that come from a published test.
func TestDefaultsFromLibrary(t *testing.T) {
	var density, pull []float64
	for _, f := range Library() {
		if f.Basis[Thickness].Kind == Measured {
			density = append(density, f.Weight/f.Thickness)
		}
		if f.Basis[TensileWarp].Kind == Derived {
			pull = append(pull, f.TensileWarp, f.TensileWeft)
		}
	}
	slices.Sort(density)
	if n := len(density); n != 7 || math.Abs(density[n/2]-DefaultDensity) > 0.5 {
		t.Errorf("median of %d densities %.0f is %.1f kg/m³, want 7 and DefaultDensity %g", n, density, density[n/2],
			DefaultDensity)
	}
	if len(pull) != 8 || slices.Min(pull) > DefaultTensile || slices.Max(pull) < DefaultTensile {
		t.Errorf("DefaultPull %g outside published %.0f", DefaultTensile, pull)
	}
}

func TestFind(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"polyester-twil", "near: polyester-twill"},
		{"satin", "near: silk-satin-memory"},
		{"georgete", ""},
		{"silk-charmeuse", "silk-satin-memory"},
		{"zzzzzzzzzzzzzzzzzzzz", "want one of acetate-satin-memory, cotton-broad, "},
		{"", "want one of acetate-satin-memory, cotton-broad, "},
	} {
		_, err := Find(c.name)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Find(%q): error %v, want it to say %q", c.name, err, c.want)
		}
	}
	for _, f := range Library() {
		if got, err := Find(f.Name); err != nil || got.Title != f.Title {
			t.Errorf("Find(%q) = %q, %v", f.Name, got.Title, err)
		}
	}
}

func TestDefault(t *testing.T) {
	f := Default()
	if !f.Complete() {
		t.Errorf("Default %s is not complete", f.Name)
	}
	for _, g := range Library() {
		if g.Complete() && g.GravityLength() < f.GravityLength()-0.1e-3 {
			t.Errorf("Default %s falls over %.2f mm, %s over %.2f: want the limpest", f.Name, 1e3*f.GravityLength(), g.Name,
				1e3*g.GravityLength())
		}
	}
}

// A caller may change what it was given.
func TestLibraryIsACopy(t *testing.T) {
	a := Library()
	for i := range a {
		a[i].Weight = 0
		if a[i].Drape != nil {
			a[i].Drape.Coefficient = -1
		}
	}
	f := Default()
	f.Drape.Coefficient = -2
	for _, f := range append(Library(), Default()) {
		if err := f.Validate(); err != nil {
			t.Errorf("after the caller's changes: %v", err)
		}
	}
}

// Every fabric of the library has a look, and those that are alike in name are
// not alike in colour.
func TestLibraryLooks(t *testing.T) {
	seen := map[look.Colour]string{}
	for _, f := range Library() {
		if !f.Look.Known() {
			t.Errorf("%s has no look", f.Name)
		}
		if other, ok := seen[f.Look.Colour]; ok {
			t.Errorf("%s has the colour of %s", f.Name, other)
		}
		seen[f.Look.Colour] = f.Name
	}
	if len(seen) == 0 {
		t.Error("the library is empty")
	}
}

func TestParseLook(t *testing.T) {
	const head = "name: a\nweight_gsm: 100\nbend_mean_uNm: 2\n"
	for _, c := range []struct{ text, want string }{
		{"look: {colour: \"#C8B08C\", face: twill, float: warp, sheen: 0.4}\n", ""},
		{"look: {colour: \"#C8B08C\", sheeen: 0.4}\n", "unknown key \"sheeen\" (near: sheen"},
		{"look: {colour: beige}\n", "want a colour like"},
		{"look: {sheen: 0.4}\n", "colour is missing"},
		{"look: beige\n", "look is String, want keys and values"},
	} {
		f, err := Parse("a.yaml", []byte(head+c.text))
		if (err == nil) != (c.want == "") || err != nil && (!strings.Contains(err.Error(), c.want) ||
			!strings.Contains(err.Error(), "a.yaml:4")) {
			t.Errorf("Parse(%q) = %v, want an error with %q and the line", c.text, err, c.want)
		}
		if err == nil {
			again, err := Parse("b.yaml", f.YAML())
			if err != nil || again.Look != f.Look || !f.Look.Known() {
				t.Errorf("the look %+v is read again as %+v, %v", f.Look, again.Look, err)
			}
		}
	}
}
