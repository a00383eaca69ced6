package measure

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"cowl/mesh/ruler"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// sample is an outcome with one placing of two.
func sample() *drape.Outcome {
	return &drape.Outcome{
		Status: sim.Settled, FoldCount: 1, CountShare: 0.5, FoldCounts: []int{1, 2},
		FoldCountAll: 3, Laid: 2, Kept: 1, Tried: []drape.Try{{Laid: 2, Kept: 1, Settled: true}}, SetEdge: true,
		EdgeDepth: 0.08, Taken: 0.012, ShakeA: 0.1,
		Folds: []drape.Fold{
			{Fold: fold.Fold{Depth: 0.042, CF: 0.080, Height: 0.27, Radius: 0.012, Zone: fold.AboveBust}, Kept: true,
				LaidCF: 0.075, Width: fold.Reach{Left: 0.125, Right: 0.125}, Survives: 0.4},
			{Fold: fold.Fold{Depth: 0.007, CF: 0.270, Height: 0.1, Radius: 0.020, Zone: fold.BelowBust},
				Survives: drape.NotShaken},
		},
		EdgeDrop: 0.128, EdgeDrops: []float64{0.128, 0.132}, EdgeBelowNeck: -0.012, StandOff: 0.003, Forward: 0.083,
		Twist: -0.004, Drift: -0.001, CFGrowth: -0.014, WrongSide: 20e-6, PinPull: 0.8, Residual: 9e-4,
		Nodes: 1203, Spacing: 0.015, Placings: 2, Seed: math.MaxUint64, Grain: math.Pi / 4, Fabric: "a & b",
	}
}

// Every row has one way to its value, a key of its own and words for one
// amount; the columns of studies are numbered, with Leading of them leading.
func TestTable(t *testing.T) {
	keys, columns := map[string]bool{}, map[int]bool{}
	for _, f := range All {
		ways := 0
		for _, there := range []bool{f.Of != nil, f.Each != nil, f.Raw != nil} {
			if there {
				ways++
			}
		}
		if ways != 1 || keys[f.Key] {
			t.Errorf("%s: %d ways to its value, known before %t, want one and no", f.Key, ways, keys[f.Key])
		}
		keys[f.Key] = true
		for _, w := range []string{f.Report.Says, f.Report.Below} {
			if w != "" && strings.Count(w, "%s") != 1 {
				t.Errorf("%s: the report says %q, want one %%s", f.Key, w)
			}
		}
		if f.Column > 0 && (columns[f.Column] || f.Name == "" || f.Of == nil) {
			t.Errorf("%s: column %d with name %q, want a column and a name of its own", f.Key, f.Column, f.Name)
		}
		columns[f.Column] = true
	}
	for n := 1; n <= len(Columns); n++ {
		if !columns[n] {
			t.Errorf("no figure in column %d of %d", n, len(Columns))
		}
	}
	if len(Columns) < Leading || len(All) < 40 {
		t.Errorf("%d columns of %d figures, want the table", len(Columns), len(All))
	}
}

// Files keep to the unit of the key, to the bit of one multiplication a power
// of the unit, people get that of the figure.
func TestUnits(t *testing.T) {
	for _, q := range []struct {
		key    string
		si     float64
		file   float64
		amount string
	}{
		{"edge_drop_mm", 0.12345, 0.12345 * 1000, "12.3 cm"},
		{"stand_off_mm", -0.0003, -0.0003 * 1000, "0 mm"},
		{"forward_mm", -0.03, -0.03 * 1000, "−3.0 cm"},
		{"wrong_side_mm2", 20e-6, 20e-6 * 1000 * 1000, "0.2 cm²"},
		{"max_strain_percent", 0.0625, 6.25, "6.2 %"},
		{"pin_pull_N", 0.980665, 0.980665, "100 g"},
		{"grain_deg", math.Pi / 4, 45, "45°"},
		{"energy_mJ", 0.012, 0.012 * 1000, "12 mJ"},
		{"residual", 0.0009, 0.0009, "0.09 %"},
		{"fold_count", 2, 2, "2.0"},
		{"fold_radius_mm", math.NaN(), math.NaN(), "– mm"},
	} {
		f := Named(q.key)
		if got := f.In(q.si); math.Float64bits(got) != math.Float64bits(q.file) && !math.IsNaN(q.file) {
			t.Errorf("%s of %g = %g in files, want %g", q.key, q.si, got, q.file)
		}
		if got := f.Amount(f.In(q.si)); got != q.amount {
			t.Errorf("%s of %g = %q for people, want %q", q.key, q.si, got, q.amount)
		}
	}
}

// result.json keeps its order, leaves an empty warning out and writes seeds
// whole; what follows the outcome follows it.
func TestJSON(t *testing.T) {
	b, err := JSON(sample(), struct {
		More int `json:"more"`
	}{7})
	if err != nil || !json.Valid(b) {
		t.Fatalf("JSON = %q, %v, want an object", b, err)
	}
	for _, part := range []string{
		`{"status":"settled","fold_count":1,"count_share":0.5,"fold_counts":[1,2],"fold_count_all":3,"laid":2,"kept":1,"extra":0,"tried":[{"laid":2,"kept":1,"extra":0,"settled":true}],"edge_depth_set_mm":80,"taken_up_mm":12,"shake_a":0.1,"folds":[{"depth_mm":42,"cf_mm":80,"height_mm":270,"radius_mm":12,"zone":"above bust","kept":true,"width_mm":250,"laid_cf_mm":75,"survives_a":0.4},{"depth_mm":7,"cf_mm":270,"height_mm":100,"radius_mm":20,"zone":"below bust","kept":false,"width_mm":0}],"edge_drop_mm":128,"edge_drop_mean_mm":130,`,
		`"edge_drops_mm":[128,132],`, `"twist_mm":-4,`, `"seed":18446744073709551615,`, `"fabric":"a \u0026 b",`,
		`"free":false,"more":7}`,
	} {
		if !strings.Contains(string(b), part) {
			t.Errorf("JSON = %s, want %s in it", b, part)
		}
	}
	if b, err := JSON(&drape.Outcome{Warning: "forces"}, nil); err != nil ||
		!strings.Contains(string(b), `"warning":"forces","fold_count":0,"count_share":0,"fold_counts":null,"fold_count_all":0,"laid":0,"kept":0,"extra":0,"taken_up_mm":0,"shake_a":0,"folds":[],`) {
		t.Errorf("JSON of no drape = %s, %v", b, err)
	}
}

// A row of a study comes back from its file to the bit.
func TestRoundTrip(t *testing.T) {
	o := sample()
	o.EdgeDrop = math.Nextafter(0.1, 1)
	b, err := json.Marshal(o)
	if err != nil {
		t.Fatal(err)
	}
	var back drape.Outcome
	if err := json.Unmarshal(b, &back); err != nil {
		t.Fatal(err)
	}
	was, _ := JSON(o, nil)
	is, _ := JSON(&back, nil)
	if string(was) != string(is) || math.Float64bits(back.EdgeDrop) != math.Float64bits(o.EdgeDrop) {
		t.Errorf("back from its file: %s, want %s", is, was)
	}
}

func TestWords(t *testing.T) {
	o := sample()
	lines := map[string]string{}
	for _, g := range InReport {
		lines[g.Title] = g.Line(o)
	}
	for title, want := range map[string]string{
		"Stand-off": "edge 3 mm off the form; the front reaches 8.3 cm ahead of the form",
		"Balance":   "left and right differ by 4.0 mm; the edge lies 1.0 mm to the wearer's right",
		"Cloth": "centre front hangs 1.4 % shorter than cut; yarns change length by 0.0 % at most; wrong side seen " +
			"0.2 cm²",
		"Seams": "edge hangs 0.0 % longer than cut, at its worst 0.0 % longer; shoulders 0.0 % longer, at worst 0.0 " +
			"% longer",
		"Softness": "sharp bends down the centre front: 0",
	} {
		if lines[title] != want {
			t.Errorf("%s: %q, want %q", title, lines[title], want)
		}
	}
	o.Free = true
	if got := InReport[0].Line(o); got != "" {
		t.Errorf("on a free hang %s is told: %q, want nothing", InReport[0].Title, got)
	}
	if got := Say(o, "{nodes} points {spacing_mm} apart"); got != "1203 points 15.0 mm apart" {
		t.Errorf("Say = %q", got)
	}
}

// In inches a length for people is a fraction as on a ruler, what stands in columns a
// decimal, and what is not a length, or the lattice's own, stays. 1 in = 25.4 mm exactly
// (NIST SP 811, appendix B.8).
func TestInches(t *testing.T) {
	ruler.Speak(ruler.Inches)
	defer ruler.Speak(ruler.Centimetres)
	for _, q := range []struct {
		key            string
		value          float64 // of the file
		amount, number string
	}{
		{"edge_drop_mm", 127, "5 in", "5.00"},
		{"edge_drop_mm", -127, "−5 in", "−5.00"},
		{"edge_drop_mm", 127 + 25.4/8, "5 1/8 in", "5.13"},
		{"deepest_fold_mm", 25.4 * 5 / 16, "5/16 in", "0.31"},
		{"deepest_fold_mm", math.NaN(), "– in", "–"},
		{"twist_mm", 2.54, "0.100 in", "0.100"},
		{"wrong_side_mm2", 645.16 * 2, "2.00 sq in", "2.00"},
		{"spacing_mm", 8, "8.0 mm", "8.0"},
		{"cf_growth_percent", 4, "4.0 %", "4.0"},
	} {
		f := Named(q.key)
		if a, n := f.Amount(q.value), f.Number(q.value); a != q.amount || n != q.number {
			t.Errorf("%s %g: Amount %q, Number %q, want %q and %q", q.key, q.value, a, n, q.amount, q.number)
		}
	}
	drop := Named("edge_drop_mm")
	if got := drop.Beside(127); got != "5 in" {
		t.Errorf("Beside(127 mm) = %q in inches, want 5 in as the amount beside it", got)
	}
	if got := drop.Spoken(254); math.Abs(got-10) > 1e-12 || drop.Axis() != drop.Name+", in" ||
		drop.Change(25.4) != "+1 in" {
		t.Errorf("edge drop 254 mm on a sheet = %g, axis %q, change %q, want 10, in and +1 in", got, drop.Axis(),
			drop.Change(25.4))
	}
}
