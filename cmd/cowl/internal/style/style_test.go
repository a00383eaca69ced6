package style

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"

	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/mesh/proptest"
	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// TestMain fixes the random styles: 200 of them, the same each time.
func TestMain(m *testing.M) { proptest.Main(m, 200, 1) }

// By definition: the inch is 25.4 mm (1959).
func TestParseLength(t *testing.T) {
	for _, q := range []struct {
		text string
		want float64 // m
	}{
		{"8cm", 0.08}, {"80mm", 0.08}, {" 8 cm ", 0.08}, {"0.08m", 0.08}, {"3.25in", 0.08255}, {"-2.5cm", -0.025},
		{".5in", 0.0127}, {"1.cm", 0.01},
	} {
		if got, err := ParseLength(q.text); err != nil || math.Abs(got-q.want) > 1e-15 {
			t.Errorf("ParseLength(%q) = %.17g, %v, want %g", q.text, got, err, q.want)
		}
	}
	for _, q := range []struct{ text, want string }{
		{"8", "no unit"}, {"", "no length"}, {"cm", "no length"}, {"8 ft", `"ft"`}, {"3,25in", "no length"},
		{"NaNcm", "no length"},
		{"1e3cm", "no length"}, {"0x8cm", "x8cm"}, {"8CM", `"CM"`}, {"8cm8", "no length"},
		{strings.Repeat("9", 400) + "cm", "too large"},
	} {
		if got, err := ParseLength(q.text); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("ParseLength(%q) = %g, %v, want an error with %q", q.text, got, err, q.want)
		}
	}
}

func TestParseAngle(t *testing.T) {
	for _, q := range []struct {
		text string
		want float64 // of a half turn
	}{
		{"45", 0.25}, {"45deg", 0.25}, {"-90°", -0.5}, {"22.5 deg", 0.125},
	} {
		if got, err := ParseAngle(q.text); err != nil || math.Abs(got-q.want*math.Pi) > 1e-15 {
			t.Errorf("ParseAngle(%q) = %g, %v, want %g π", q.text, got, err, q.want)
		}
	}
	for _, text := range []string{"", "45cm", "45rad", "steep", "NaN"} {
		if got, err := ParseAngle(text); err == nil {
			t.Errorf("ParseAngle(%q) = %g, want an error", text, got)
		}
	}
}

// The three units of a length mean the same.
func TestUnitsOfKeys(t *testing.T) {
	want, err := Parse("cm", []byte("cut:\n  facing_cm: 10.16\nbody:\n  bust_cm: 88.9\n"))
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{"cut:\n  facing_mm: 101.6\nbody:\n  bust_mm: 889\n",
		"cut:\n  facing_in: 4\nbody:\n  bust_in: 35\n"} {
		got, err := Parse("f", []byte(text))
		if err != nil || math.Abs(got.Cut.Facing-want.Cut.Facing) > 1e-15 || math.Abs(got.Body.Bust-want.Body.Bust) > 1e-15 {
			t.Errorf("Parse(%q) = %+v, %v, want %+v", text, got.Cut, err, want.Cut)
		}
	}
}

func TestEmptyIsDefault(t *testing.T) {
	for _, text := range []string{"", "# nothing\n", "cut:\nbody:\n", "{}"} {
		s, err := Parse("f", []byte(text))
		d := Default()
		if err != nil || s.Cut != d.Cut || s.Size != d.Size || s.Hang != d.Hang {
			t.Errorf("Parse(%q) = %+v, %v, want the default", text, s, err)
		}
	}
}

// A style is the same however it is laid out: in one line, on an old Mac, with a
// mark of byte order; messages have the lines of that layout.
func TestLayouts(t *testing.T) {
	n := 0
	for _, text := range []string{
		`{"fabric": {"name": "mine", "title": "Crêpe", "weight_gsm": 120, "bend_mean_uNm": 4}, "name": "é", "cut": {"facing_cm": 4}}`,
		`{"name": "é", "cut": {"facing_cm": 4}, "fabric": {"name": "mine", "title": "Crêpe", "weight_gsm": 120, "bend_mean_uNm": 4}}`,
		"{name: é, fabric: {\n name: mine, title: Crêpe, weight_gsm: 120,\n bend_mean_uNm: 4}, cut: {facing_cm: 4}}",
		"name: é\nfabric:\n  name: mine\n  title: Crêpe\n  weight_gsm: 120\n  bend_mean_uNm: 4\ncut:\n  facing_cm: 4\n",
	} {
		for _, as := range []string{text, strings.ReplaceAll(text, "\n", "\r"), strings.ReplaceAll(text, "\n", "\r\n"),
			"\ufeff" + text} {
			n++
			s, err := Parse("f", []byte(as))
			if err != nil || s.Name != "é" || s.Fabric.Title != "Crêpe" || s.Fabric.Weight != 0.120 || s.Cut.Facing != 0.04 {
				t.Errorf("Parse(%q) = %q, %q %g, facing %g, %v, want é, Crêpe 0.12, 0.04", as, s.Name, s.Fabric.Title,
					s.Fabric.Weight, s.Cut.Facing, err)
			}
		}
	}
	if n != 16 {
		t.Errorf("%d layouts tried, want 16", n)
	}
	for text, want := range map[string]string{
		`{"fabric": {"name": "é", "weight_gsm": 5}, "name": "x"}`:        "f:1: weight_gsm 5 g/m²",
		"name: x\rfabric:\r  name: mine\r  weight_gsm: heavy\rcut: {}\r": "f:4: weight_gsm is heavy",
	} {
		if _, err := Parse("f", []byte(text)); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("Parse(%q): error %v, want one that begins %q", text, err, want)
		}
	}
}

// Trims and pleats that cannot be are refused with the line they stand in.
func TestTrimsRefused(t *testing.T) {
	for _, q := range []struct{ text, want string }{
		{"name: x\ntrims: 3\n", "f:2: trims is 3, want a list"},
		{"trims:\n  - line_mm: [[1, 2]]\n", "f:2: trims: line_mm is"},
		{"trims:\n  - line_m: [[1, 2], [3, 4]]\n", `f:2: trims: unknown key "line_m"`},
		{"trims:\n  - line_mm: [[1, 2], [3]]\n", "f:2: trims: point"},
		{"cut:\n  pleats_towards: back\n", `f:2: cut: pleats towards "back", want neck or armhole`},
		{"stand:\n  stay_edge: tape\n", "f:2: stay_edge is tape, want true or false"},
	} {
		if _, err := Parse("f", []byte(q.text)); err == nil || !strings.HasPrefix(err.Error(), q.want) {
			t.Errorf("Parse(%q): error %v, want one that begins %q", q.text, err, q.want)
		}
	}
	s, err := Parse("f", []byte("cut:\n  trim_cm: 2\ntrims:\n  - line_mm: [[10, -300], [20, -300]]\n"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Cowl(); err == nil || !strings.HasPrefix(err.Error(),
		"f:4: trim 1 crosses the seams of the half in 0 places") {
		t.Errorf("Piece(): error %v, want one of line 4 that says the trim crosses nothing", err)
	}
}

// A measurement goes before the chart, and the apex follows the rule of the
// draft from it: half of across front and dart.
func TestWearer(t *testing.T) {
	s, err := Parse("f", []byte("body:\n  size: 12\n  across_front_cm: 34.6\n"))
	if err != nil {
		t.Fatal(err)
	}
	b, err := s.Wearer()
	if err != nil || b.Bust != 0.92 || b.AcrossFront != 0.346 || math.Abs(b.BustSpan-(0.346+0.076)/2) > 1e-12 {
		t.Errorf("Wearer() = %+v, %v, want bust 0.92, across front 0.346, span 0.211", b, err)
	}
}

// what is left of a style when the places it came from are put aside.
func bare(s Style) Style {
	s.file, s.from = "", nil
	return s
}

// plain leaves control characters out.
func plain(r rune) rune {
	if unicode.IsControl(r) {
		return -1
	}
	return r
}

// Any style is read back to the same bits.
func TestWriteReads(t *testing.T) {
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		s := Default()
		s.Name = rapid.String().Draw(t, "name")
		s.Name = strings.Join(strings.Fields(strings.Map(plain, strings.ToValidUTF8(s.Name, ""))), " ")
		for _, f := range fields {
			if f.measure != nil && rapid.Bool().Draw(t, "chart "+f.Name) {
				continue
			}
			switch f.kind {
			case count:
				f.set(&s, float64(rapid.IntRange(0, mostSeed).Draw(t, f.Name)))
			case share:
				f.set(&s, rapid.Float64Range(0, 1).Draw(t, f.Name))
			case length:
				f.set(&s, toMetres(float64(rapid.IntRange(0, 99999).Draw(t, f.Name))/100, f.unit()))
			case angle:
				f.set(&s, toRadians(float64(rapid.IntRange(-9000, 9000).Draw(t, f.Name))/100))
			case mass:
				f.set(&s, float64(rapid.IntRange(0, 999).Draw(t, f.Name))/1000)
			case choice, truth:
				f.set(&s, float64(rapid.IntRange(0, 1).Draw(t, f.Name)))
			}
		}
		if rapid.Bool().Draw(t, "auto") {
			s.Cut.Extension, s.Cut.DartShare = draft.Auto, draft.Auto
		}
		s.Cut.How = draft.How(rapid.IntRange(0, 2).Draw(t, "how"))
		if rapid.Bool().Draw(t, "own cloth") {
			s.Fabric.Note, s.Fabric.BendBias = "changed", 1e-6/3
			s.Fabric = rounded(s.Fabric)
		}
		if rapid.Bool().Draw(t, "own block") {
			s.Points = map[string][]r2.Vec{"neck": {{X: 0.0671, Y: -0.1}}, "armhole": {{X: 0.2, Y: 0.3}, {X: 0.25, Y: -0.1}}}
		}
		if rapid.Bool().Draw(t, "own piece") { // its cut is that of the piece
			s.Lines = &draft.Lines{Shoulder: []r2.Vec{{X: 0.2, Y: 0.4}, {X: 0.28, Y: 0.35}},
				Dart: []r2.Vec{{X: 0.1, Y: -0.01}, {X: 0.09, Y: 0.17}, {X: 0.08}}, Apex: r2.Vec{X: 0.09, Y: 0.18}}
			c := draft.DefaultCut()
			c.Facing, c.Grain, c.Trim = s.Cut.Facing, s.Cut.Grain, s.Cut.Trim
			s.Cut = c
		}
		for k := range rapid.IntRange(0, 2).Draw(t, "trims") {
			s.Trims = append(s.Trims, draft.TrimLine{{X: 0.25, Y: -0.1 * float64(k)}, {X: toMetres(231.5, "mm"), Y: -0.25}})
		}
		text := s.YAML()
		got, err := Parse("again", text)
		if err != nil || !reflect.DeepEqual(bare(got), bare(s)) {
			t.Fatalf("Parse(YAML()) = %+v, %v, want %+v\n%s", bare(got), err, bare(s), text)
		}
	})
	if n < 200 {
		t.Errorf("%d styles tried, want 200", n)
	}
}

// FuzzParse: whatever the file, an error or a style that is written and read
// back; never a panic. Messages name the file.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"name: x\nbody:\n  size: 12\n  bust_in: 35\ncut: {dart_share: auto, extension_cm: 8, how: slash, slashes: " +
			"3}\nfabric: polyester-twill\nhang:\n  spacing_mm: 8\n  free: true\n",
		"fabric:\n  name: mine\n  weight_gsm: 120\n  bend_mean_uNm: 4\n",
		"block:\n  - {name: neck, x_cm: 6.7, y_cm: 0}\n  - {name: armhole, x_mm: 1, y_in: 2}\n",
		"trims:\n  - line_mm: [[262, -90], [230, -150]]\n  - line_in: [[9, -3], [9, -5.5], [10, -8]]\n",
		"trims: [{line_mm: [[1], 2]}]\n", "cut: {pleats: 2, pleat_depth_mm: 20, pleats_towards: armhole}\nstand: " +
			"{stay_edge: true, lower_cm: 1}\n",
		`{"fabric": {"name": "mine", "weight_gsm": 120, "bend_mean_uNm": 4}, "name": "x"}`,
		`{"name": "crêpe", "fabric": {"name": "mine", "title": "Crêpe noir", "weight_gsm": 120, "bend_mean_uNm": 4}}`,
		"name: ñandú\rfabric:\r  name: mine\r  weight_gsm: 120\r  bend_mean_uNm: 4\rcut:\r  facing_cm: 4\r",
		"\ufeffname: x\r\nfabric: {name: mine, weight_gsm: 120, bend_mean_uNm: 4}\r\n",
		"fabric:\r  name: \r  weight_gsm: [\r",
		"a: &x {b: *x}\n", "? [a]\n: b\n", "--- 1\n--- 2\n", "cut: [1, 2]\n", "cut: {grain_deg: .nan, trim_cm: .inf}\n",
		"\tx", "name: |\n  a\n  b\n", "fabric: {file: x}\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if strings.Contains(string(data), "file") {
			t.Skip("reads other files")
		}
		s, err := Parse("the-file", data)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "the-file:") {
				t.Errorf("Parse(%q) says %q, want it to begin with the file", data, err)
			}
			return
		}
		if _, err := Parse("again", s.YAML()); err != nil {
			t.Errorf("Parse(%q) is written as\n%s, which does not read: %v", data, s.YAML(), err)
		}
		s.Check()
		s.Cowl()
	})
}

// Every number of cut, stand and hang has a range under its name, which Cowl
// or Check holds to: its end passes and more is refused, with that field.
func TestRangesAreHeld(t *testing.T) {
	pleated, err := Parse("f", []byte("cut:\n  pleats: 1\n  how: slash\n  slashes: 2\n  cowl_point_cm: 3\nstand:\n  "+
		"release_waist_cm: 1\n"))
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range fields {
		if f.group == "body" || f.kind == choice || f.kind == truth || f.Name == "seed" {
			continue
		}
		i := slices.IndexFunc(pleated.Ranges(), func(r limit.Range) bool { return r.Field == f.spoken() })
		if i < 0 {
			t.Errorf("%s has no range", f.Name)
			continue
		}
		r := pleated.Ranges()[i]
		refused := func(v float64) bool {
			s := pleated.Clone()
			err := s.Set(f.Name, v, "--it")
			if err == nil {
				_, piece := s.Cowl()
				err = errors.Join(s.Check(), piece)
			}
			return err != nil && strings.HasPrefix(err.Error(), "--it: "+f.spoken()+" ") &&
				strings.Contains(err.Error(), ", want "+r.Allowed().String()+":")
		}
		more := r.Hi + 1/r.Unit.PerSI
		if refused(r.Hi) || f.kind != share && !refused(more) { // a share is refused before it gets to the draft
			t.Errorf("%s: %g refused %t, %g refused %t, want false and true", f.Name, r.Hi, refused(r.Hi), more, refused(more))
		}
		n++
	}
	if n < 15 {
		t.Errorf("%d ranges tried, want 15 or more", n)
	}
}

// By its name the waist is how it is held, which has a flag, not the measurement.
func TestSetWaist(t *testing.T) {
	s := Default()
	if err := s.Set("waist", float64(drape.Pinned), "--waist"); err != nil || s.Hang.Waist != drape.Pinned ||
		s.Taken() != 0 {
		t.Errorf("Set(waist, pinned) = %v: held %s, %d measurements, want pinned and none", err, s.Hang.Waist, s.Taken())
	}
	if v, err := Flag("waist").Parse("pinned"); err != nil || v != float64(drape.Pinned) {
		t.Errorf("--waist pinned = %v, %v, want %v", v, err, float64(drape.Pinned))
	}
}

// A front with a hem hangs free at the waist unless something else is asked for, in the
// same file or on top of it.
func TestHeld(t *testing.T) {
	for _, q := range []struct {
		file string
		hem  float64
		want drape.Waist
	}{
		{"", 0, drape.SidesPinned}, {"", 0.12, drape.FreeWaist},
		{"hang: {waist: auto}\n", 0, drape.SidesPinned}, {"hang: {waist: auto}\n", 0.12, drape.FreeWaist},
		{"hang: {waist: side}\n", 0.12, drape.SidesPinned}, {"hang: {waist: free}\n", 0, drape.FreeWaist},
		{"hang: {waist: pinned}\n", 0, drape.Pinned},
	} {
		s, err := Parse("f", []byte(q.file))
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Set("hem", q.hem, "--hem"); err != nil {
			t.Fatal(err)
		}
		again, err := Parse("f", s.YAML())
		if err != nil {
			t.Fatal(err)
		}
		p, err := s.Cowl()
		if err != nil {
			t.Fatal(err)
		}
		if s.Held() != q.want || again.Held() != q.want || s.Job(p, nil).Waist != q.want {
			t.Errorf("%q with hem %g: held %v, read back %v, hung %v, want %v", q.file, q.hem, s.Held(), again.Held(),
				s.Job(p, nil).Waist, q.want)
		}
	}
}

// A block of one's own shows no hip, and a finished front has its hem behind it.
func TestHemOfOnesOwn(t *testing.T) {
	s := Default()
	s.Points = map[string][]r2.Vec{
		"cf neck": {{Y: -0.08}}, "neck": {{X: 0.07}}, "shoulder tip": {{X: 0.18, Y: -0.04}},
		"underarm":   {{X: 0.23, Y: -0.20}},
		"side waist": {{X: 0.20, Y: -0.40}}, "dart outer": {{X: 0.10, Y: -0.40}}, "apex": {{X: 0.10, Y: -0.25}},
		"dart inner": {{X: 0.10, Y: -0.40}}, "cf waist": {{Y: -0.40}},
	}
	if err := s.Set("hem", 0.12, "--hem"); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Cowl(); err == nil || !strings.Contains(err.Error(),
		"--hem: hem 12.0 cm, but this block ends at the waist") {
		t.Errorf("Piece() = %v, want the hem refused: the block has no hip", err)
	}
	s.Points, s.Lines = nil, &draft.Lines{}
	s.from["piece"] = "--piece"
	if _, err := s.Cowl(); err == nil || !strings.Contains(err.Error(),
		"--hem: hem is set, but the piece is a finished one") {
		t.Errorf("Piece() = %v, want the hem refused: the piece is a finished one", err)
	}
}

// What is hung is the draft, to the last digit; what is on paper is trued, at most 3.5 mm
// from it for the demo's cut, with the same shoulder, side seam and edge.
func TestOnPaper(t *testing.T) {
	s := Default()
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	b, err := s.block()
	if err != nil {
		t.Fatal(err)
	}
	want, err := draft.Draft(b, s.Cut)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(p.Outline, want.Outline) || p.Clean {
		t.Error("Piece() is not the draft")
	}
	q, why := s.OnPaper(p)
	if why != nil || !q.Clean || slices.Equal(q.Outline, p.Outline) || !slices.Equal(q.Shoulder, p.Shoulder) ||
		!slices.Equal(q.Side, p.Side) || q.HalfEdge != p.HalfEdge {
		t.Error("OnPaper is not the draft with waist and armhole trued alone")
	}
	for _, v := range q.Outline {
		least := math.Inf(1)
		for i, a := range p.Outline {
			for k := range 40 {
				least = math.Min(least, r2.Norm(r2.Sub(v, r2.Add(a,
					r2.Scale(float64(k)/40, r2.Sub(p.Outline[(i+1)%len(p.Outline)], a))))))
			}
		}
		if least > 0.0035 {
			t.Errorf("place %v of the paper lies %.1f mm off the draft, want 3.5 mm at most", v, least*1000)
		}
	}
}

// A trim that was drawn for the draft's waist, between it and the trued one, is not there to
// be cut on paper: the front stays as drafted, and why is told with the line of the file.
func TestOnPaperAsDrafted(t *testing.T) {
	s, err := Parse("f", []byte("trims:\n  - line_mm: [[175, -432], [170, -428.9], [155, -428], [145, -430]]\n"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	q, why := s.OnPaper(p)
	if why == nil || !strings.HasPrefix(why.Error(), "f:2: trim 1 ") || !slices.Equal(q.Outline, p.Outline) {
		t.Errorf("OnPaper() says %v, want why the trim is not there, and the draft", why)
	}
}

// A lattice that is left to the cloth is carried on where that takes no many minutes and
// moves no edge that was set, and in a study never; one that was asked for is kept.
func TestLatticeByTheCloth(t *testing.T) {
	for _, q := range []struct {
		file          string
		spacing, look float64 // m, of the finest lattice of a drape, and of a study; denim is halved once, too
	}{
		{"", 0.004, 0.008}, {"hang: {spacing_mm: auto}\n", 0.004, 0.008}, {"fabric: denim-memory\n", 0.004, 0.008},
		{"hang: {placings: 5}\n", 0.008, 0.008}, {"hang: {shake: true}\n", 0.008, 0.008},
		{"hang: {lean_deg: 30}\n", 0.008, 0.008}, {"hang: {edge_depth_cm: 8}\n", 0.008, 0.008}, {"hang: {placings: 5, fine: true}\n", 0.004, 0.004},
		{"hang: {spacing_mm: 8}\n", 0.008, 0.008}, {"hang: {spacing_mm: 12, fine: true}\n", 0.003, 0.003},
	} {
		s, err := Parse("f", []byte(q.file))
		if err != nil {
			t.Fatal(err)
		}
		again, err := Parse("f", s.YAML())
		if err != nil {
			t.Fatal(err)
		}
		look := s.Clone()
		look.OnLook()
		finest := func(s Style) float64 { return s.Job(draft.Cowl{}, nil).FinestSpacing() }
		if a, b, c := finest(s), finest(again), finest(look); a != q.spacing || b != q.spacing || c != q.look {
			t.Errorf("%q ends on %g m, read back %g, in a study %g, want %g and %g", q.file, a, b, c, q.spacing, q.look)
		}
	}
}
