package draft

import (
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// workedPoints returns the points of the worked block as a user would give them.
func workedPoints(t testing.TB) map[string][]r2.Vec {
	w := readWorked(t)
	p := map[string][]r2.Vec{}
	for _, name := range []string{"neck", "cf neck", "apex", "shoulder tip", "underarm", "side waist", "dart outer",
		"dart inner", "cf waist"} {
		p[name] = []r2.Vec{fromCM(w.Block[name])}
	}
	p["armhole"] = []r2.Vec{fromCM(w.Block["armhole pitch"]), fromCM(w.Block["armhole scoop"])}
	return p
}

func TestFromPoints(t *testing.T) {
	b, err := FromPoints(workedPoints(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range workedPoints(t)["armhole"] {
		if d := nearest(b.Armhole, v); d > 1e-9 {
			t.Errorf("FromPoints: the armhole passes %.4f m from a point given", d)
		}
	}
	if len(b.Armhole) < 20 {
		t.Errorf("FromPoints: %d armhole points, want a curve of at least 20", len(b.Armhole))
	}
	c := DefaultCut()
	c.DartShare, c.Extension = 1, Auto
	p, err := Draft(b, c)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(p.Extension-0.1114) > 0.00005 {
		t.Errorf("Draft of the points: extension %.5f, want 0.1114", p.Extension)
	}
}

// A block without a dart can be cut; all of its extension is added.
func TestFromPointsWithoutDart(t *testing.T) {
	p := workedPoints(t)
	p["dart outer"] = p["dart inner"]
	b, err := FromPoints(p)
	if err != nil {
		t.Fatal(err)
	}
	piece, err := Draft(b, DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	if piece.Added.FromDart != 0 || math.Abs(piece.Extension-0.08) > 1e-6 || piece.DartLeft != nil {
		t.Errorf("Draft without a dart: %+v, want all 8 cm added", piece.Added)
	}
}

func TestFromPointsErrors(t *testing.T) {
	for _, q := range []struct {
		name   string
		change func(map[string][]r2.Vec)
		want   string
	}{
		{"missing", func(p map[string][]r2.Vec) { delete(p, "apex") }, "apex has 0 points, want 1"},
		{"unknown", func(p map[string][]r2.Vec) { p["nape"] = p["neck"] }, `unknown point "nape"`},
		{"twice", func(p map[string][]r2.Vec) { p["neck"] = append(p["neck"], r2.Vec{}) }, "neck has 2 points"},
		{"NaN", func(p map[string][]r2.Vec) { p["underarm"] = []r2.Vec{{X: math.NaN()}} }, "underarm (NaN"},
		{"centimetres", func(p map[string][]r2.Vec) { p["side waist"] = []r2.Vec{{X: 27.8, Y: -38.1}} }, "give metres"},
		{"off CF", func(p map[string][]r2.Vec) { p["cf waist"] = []r2.Vec{{X: 0.02, Y: -0.425}} }, "2.00 cm off CF"},
		{"legs", func(p map[string][]r2.Vec) { p["dart outer"] = []r2.Vec{{X: 0.16, Y: -0.40}} }, "dart legs"},
		{"dart the wrong way", func(p map[string][]r2.Vec) {
			p["dart outer"], p["dart inner"] = p["dart inner"], p["dart outer"]
		}, "dart angle"},
		{"crossing", func(p map[string][]r2.Vec) { p["armhole"] = []r2.Vec{{X: -0.05, Y: -0.14}} }, "crosses itself"},
		{"rising shoulder", func(p map[string][]r2.Vec) { p["shoulder tip"] = []r2.Vec{{X: 0.18, Y: 0.03}} },
			"shoulder slope"},
		{"same point", func(p map[string][]r2.Vec) { p["underarm"] = p["side waist"] }, "apart"},
		{"too many", func(p map[string][]r2.Vec) { p["armhole"] = make([]r2.Vec, 201) }, "want 0–200"},
	} {
		p := workedPoints(t)
		q.change(p)
		_, err := FromPoints(p)
		if err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("%s: FromPoints error = %v, want it to say %q", q.name, err, q.want)
		}
	}
}

// The slope given is the mean of front and back: with that of the draft itself
// the front keeps its slope, 16.0° in the worked example, and the shoulder its
// measured length.
func TestMeasurementsHonoured(t *testing.T) {
	b := readWorked(t).body()
	b.BustSpan, b.ApexDepth = 0.19, 0.262
	b.ShoulderSlope = (22.17 + 16.01) / 2 * math.Pi / 180
	blk, err := FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	if d := dist(blk.Apex, r2.Vec{X: 0.095, Y: -0.262}); d > 1e-9 {
		t.Errorf("FromBody: apex %.4f m from where it was measured", d)
	}
	if l := blk.ShoulderLength(); math.Abs(l-0.1225) > 1e-9 {
		t.Errorf("FromBody: shoulder %.4f m, want 0.1225", l)
	}
	b.BustSpan, b.ApexDepth = 0, 0
	if blk, err = FromBody(b); err != nil {
		t.Fatal(err)
	}
	if s := deg(blk.ShoulderSlope()); math.Abs(s-16.01) > 0.02 {
		t.Errorf("FromBody: front slope %.2f°, want 16.01°", s)
	}
	if _, err := FromBody(body.Body{}); err == nil {
		t.Error("FromBody(no measurements) = nil error, want one")
	}
}

// FuzzFromPoints moves the points of the worked block: whatever they are, the
// block is refused or can be handed to Draft, and nothing panics.
func FuzzFromPoints(f *testing.F) {
	f.Add([]byte{}, 0.08)
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 200, 100, 50, 25}, 0.2)
	f.Add([]byte{255, 255, 255, 255, 255, 255, 255, 255}, math.NaN())
	base := workedPoints(f)
	names := PointNames()
	f.Fuzz(func(t *testing.T, data []byte, extension float64) {
		p := map[string][]r2.Vec{}
		for name, at := range base {
			p[name] = append([]r2.Vec(nil), at...)
		}
		for len(data) >= 9 { // which point, X and Y offset in 0.1 mm up to ± 3.2 m
			name := names[int(data[0])%len(names)]
			k := int(data[0]) / len(names) % len(p[name])
			dx, dy := int16(binary.LittleEndian.Uint16(data[1:])), int16(binary.LittleEndian.Uint16(data[3:]))
			p[name][k] = r2.Add(p[name][k], r2.Vec{X: float64(dx) * 1e-4, Y: float64(dy) * 1e-4})
			if data[5] == 255 {
				p[name][k].X = math.Float64frombits(binary.LittleEndian.Uint64(data[1:]))
			}
			data = data[9:]
		}
		b, err := FromPoints(p)
		if err != nil {
			return
		}
		c := DefaultCut()
		c.Extension = extension
		if piece, err := Draft(b, c); err == nil && polyline.Area(piece.Outline) <= 0 {
			t.Errorf("Draft: area %g, want above 0", polyline.Area(piece.Outline))
		}
	})
}
