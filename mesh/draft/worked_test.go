package draft

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
)

// worked is testdata/worked.json: centimetres, y down.
type worked struct {
	Body      map[string]float64    `json:"body"`
	DartAngle float64               `json:"dart angle (degrees)"`
	Block     map[string][2]float64 `json:"block"`
	CowlPoint float64               `json:"cowl point"`
	Cowl      map[string][2]float64 `json:"whole dart closed"`
}

func readWorked(t testing.TB) worked {
	t.Helper()
	data, err := os.ReadFile("testdata/worked.json")
	if err != nil {
		t.Fatal(err)
	}
	var w worked
	if err := json.Unmarshal(data, &w); err != nil {
		t.Fatal(err)
	}
	return w
}

// body returns the body of the example, with apex and slope left to the draft.
func (w worked) body() body.Body {
	cm := func(name string) float64 { return w.Body[name] / 100 }
	return body.Body{
		Bust: cm("bust"), Waist: cm("waist"), Hip: cm("hip"), BackWidth: cm("back width"),
		AcrossFront: cm("across front"), Shoulder: cm("shoulder"), Neck: cm("neck"),
		BustDart: cm("bust dart"), ArmscyeDepth: cm("armscye depth"),
		NapeToWaist: cm("nape to waist"), WaistToHip: cm("waist to hip"),
	}
}

func workedBlock(t testing.TB) Block {
	t.Helper()
	b, err := FromBody(readWorked(t).body())
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// nearest returns how far v lies from the nearest point of line.
func nearest(line []r2.Vec, v r2.Vec) float64 {
	d := math.Inf(1)
	for _, p := range line {
		d = min(d, dist(p, v))
	}
	return d
}

func fromCM(p [2]float64) r2.Vec { return r2.Vec{X: p[0] / 100, Y: -p[1] / 100} }

const workedTolerance = 0.00005 // m

func TestWorkedBlock(t *testing.T) {
	w := readWorked(t)
	b := workedBlock(t)
	got := map[string][]r2.Vec{
		"neck": {b.Neck}, "cf neck": {b.CFNeck}, "apex": {b.Apex}, "shoulder tip": {b.ShoulderTip},
		"armhole pitch": b.Armhole, "armhole scoop": b.Armhole, "underarm": {b.Underarm},
		"side waist": {b.SideWaist}, "dart outer": {b.DartOuter}, "dart inner": {b.DartInner}, "cf waist": {b.CFWaist},
	}
	checkPoints(t, "FromBody", got, w.Block, 11)
	if a := deg(b.DartAngle()); math.Abs(a-w.DartAngle) > 0.001 {
		t.Errorf("DartAngle() = %.4f°, want %.4f°", a, w.DartAngle)
	}
}

func TestWorkedCowl(t *testing.T) {
	w := readWorked(t)
	c := DefaultCut()
	c.DartShare, c.Extension, c.CowlPoint = 1, Auto, w.CowlPoint/100
	p, err := Draft(workedBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	last := func(l []r2.Vec) []r2.Vec { return l[len(l)-1:] }
	got := map[string][]r2.Vec{
		"edge at cf": {{Y: p.FoldY}}, "cowl point": p.Shoulder[:1], "shoulder tip": last(p.Shoulder),
		"armhole pitch": p.Armhole, "armhole scoop": p.Armhole, "underarm": last(p.Armhole),
		"side waist": last(p.Side), "dart closed": p.Waist[1:2], "cf waist": last(p.Waist),
	}
	checkPoints(t, "Draft", got, w.Cowl, 9)
	for _, q := range []struct {
		name           string
		got, want, tol float64
	}{
		{"half edge", p.HalfEdge, 0.2169, 0.00005},
		{"extension", p.Extension, 0.1114, 0.00005},
		{"area of the front, armhole knots joined by straight lines", straightArea(w), 0.1835, 0.00005},
		{"area of the front, the hollow of the armhole filled", p.Report().AreaFront + 2*hollow(p.Armhole, w), 0.1835,
			0.00005},
	} {
		if math.Abs(q.got-q.want) > q.tol {
			t.Errorf("Draft: %s = %.5f, want %.5f ± %.5f", q.name, q.got, q.want, q.tol)
		}
	}
}

func checkPoints(t *testing.T, call string, got map[string][]r2.Vec, want map[string][2]float64, count int) {
	t.Helper()
	if len(want) != count {
		t.Fatalf("%s: the example has %d points, want %d", call, len(want), count)
	}
	for name, at := range want {
		if got[name] == nil {
			t.Errorf("%s: no point %q", call, name)
		} else if d := nearest(got[name], fromCM(at)); d > workedTolerance {
			t.Errorf("%s: %s is %.3f mm off (%.3f, %.3f) cm, want within %.2f mm", call, name, d*1000, at[0], at[1],
				workedTolerance*1000)
		}
	}
}

// straightArea returns the area of the example's front, both halves, with the
// armhole points joined by straight lines (m²); the example gives 1835 cm².
func straightArea(w worked) float64 {
	var p []r2.Vec
	for _, name := range []string{"cf waist", "dart closed", "side waist", "underarm", "armhole scoop", "armhole pitch",
		"shoulder tip", "cowl point", "edge at cf"} {
		p = append(p, fromCM(w.Cowl[name]))
	}
	return 2 * polyline.Area(p)
}

// hollow returns the area between the armhole curve and its knots (m²).
func hollow(armhole []r2.Vec, w worked) float64 {
	p := append([]r2.Vec(nil), armhole...)
	return polyline.Area(append(p, fromCM(w.Cowl["armhole scoop"]), fromCM(w.Cowl["armhole pitch"])))
}

func deg(rad float64) float64 { return rad * 180 / math.Pi }
