package draft

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"cowl/mesh/body"
	"cowl/mesh/limit"
	"cowl/mesh/polyline"

	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"
)

// By hand, from the back of the worked example: the shoulder without its 1 cm of ease is
// 12 cm long, and closing the whole waist dart, 3 cm wide and 19.5 cm tall about a point
// 9.1 cm from CB, swings the cowl point out by the angle of the dart. cm, y down.
func TestBackCowlByHand(t *testing.T) {
	who := readWorked(t).body()
	blk, err := CowlFromBody(who, AtBack)
	if err != nil {
		t.Fatal(err)
	}
	c := DefaultCut()
	c.Worn, c.DartShare, c.Extension = AtBack, 1, Auto
	p, err := Draft(blk, c)
	if err != nil {
		t.Fatal(err)
	}
	long := math.Hypot(19.470-7.2, 5.0) // of the drafted shoulder, with its ease
	dart := workedBack(t)
	wide, tall := (dart.DartOuter.X-dart.DartInner.X)*100, (dart.DartPoint.Y-dart.CBWaist.Y)*100
	x, y := 7.2+4*(19.470-7.2)/long, 4*5.0/long // the cowl point, 4 cm down
	a := 2 * math.Atan(wide/2/tall)
	dx, dy := x-dart.DartPoint.X*100, -dart.DartPoint.Y*100-y // from the dart point, up
	want := dart.DartPoint.X*100 + dx*math.Cos(a) + dy*math.Sin(a)
	for _, q := range []struct {
		name           string
		got, want, tol float64
	}{
		{"shoulder left", p.ShoulderLength() * 100, long - 1 - 4, 0.001},
		{"half edge", p.HalfEdge * 100, want, 0.001},
		{"extension", p.Extension * 100, want - x, 0.001},
		{"side seam", polyline.Length(p.Side) * 100, dist(dart.Underarm, dart.SideWaist) * 100, 0.001},
		{"half waist", polyline.Length(p.Waist) * 100, 18.75, 0.01},
	} {
		if !(math.Abs(q.got-q.want) <= q.tol) {
			t.Errorf("back cowl: %s = %.4f cm, want %.4f cm", q.name, q.got, q.want)
		}
	}
	marks := map[string]int{}
	for _, n := range p.Notches {
		marks[n.Name]++
	}
	if marks["centre back, waist"] != 1 || marks["armhole, half way"] != 4 {
		t.Errorf("notches %v, want the centre back marked, and two at each armhole as on any back", marks)
	}
}

// Any body gets a back cowl and its plain front, or is refused with a measurement named;
// their seams walk.
func TestBackCowlOfAnyBody(t *testing.T) {
	count, drafted := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		count++
		who := randomBody(t)
		// Half of them are no bodies that a chart knows.
		if rapid.Bool().Draw(t, "odd") {
			for _, m := range body.Measures() {
				*m.In(&who) *= rapid.Float64Range(0.8, 1.25).Draw(t, "odd "+m.Name)
			}
		}
		c := DefaultCut()
		c.Worn, c.Extension = AtBack, rapid.Float64Range(0.04, 0.15).Draw(t, "extension")
		c.CowlPoint, c.Facing = rapid.Float64Range(0, 0.06).Draw(t, "cowl point"),
			rapid.Float64Range(0.01, 0.06).Draw(t, "facing")
		blk, err := CowlFromBody(who, AtBack)
		var p Cowl
		if err == nil {
			p, err = Draft(blk, c)
		}
		if err != nil {
			refusedWell(t, who, err)
			return
		}
		checkFacing(t, p)
		checkHalves(t, p)
		near(t, "side", polyline.Length(p.Side), blk.SideLength())
		near(t, "shoulder", p.ShoulderLength(), who.Shoulder-c.CowlPoint)
		k, err := PlainFromBody(who, AtBack)
		var b Back
		if err == nil {
			b, err = MatchBack(k, p)
		}
		if err != nil {
			refusedWell(t, who, err)
			return
		}
		drafted++
		for _, w := range Walked(p, b) {
			if math.Abs(w.Off()) > 0.0005 {
				t.Errorf("%s: front %.2f cm, back %.2f cm, want 0.5 mm apart at most", w.Name, w.Front*100, w.Back*100)
			}
		}
		if b.Worn() != AtFront || dist(b.Neck[len(b.Neck)-1], r2.Vec{Y: -(who.Neck/5 - 0.002)}) > 1e-9 {
			t.Errorf("the plain piece is worn at the %v with its neck at %v, want a front with its own front neck point",
				b.Worn(), b.Neck[len(b.Neck)-1])
		}
	})
	if !t.Failed() && (count < 200 || drafted < 80) {
		t.Errorf("%d bodies, %d drafted, want 200 and 80 or more", count, drafted)
	}
}

// refusedWell fails unless an error names a measurement of the body or a number of the cut.
func refusedWell(t *rapid.T, who body.Body, err error) {
	names := []string{"body", "facing", "extension", "cowl point", "outline", "block"}
	for _, m := range body.Measures() {
		names = append(names, m.Name)
	}
	said := false
	for _, part := range []error{err} {
		var e *limit.Error
		if errors.As(part, &e) && slices.Contains(names, e.Field) || slices.ContainsFunc(names,
			func(n string) bool { return strings.Contains(part.Error(), n) }) {
			said = true
		}
	}
	if !said {
		t.Errorf("%+v is refused with %v, want a measurement named", who, err)
	}
}

// Every row of the table of words is turned whole, and left and right change places.
func TestSideSays(t *testing.T) {
	for text, want := range map[string]string{
		"3 folds above the bust, 2 cm down the centre front": "3 folds above the blades, 2 cm down the centre back",
		"below the front neck point":                         "below the nape",
		"to the wearer's left, not the wearer's right":       "to the wearer's right, not the wearer's left",
		"bust 88 cm, apex of the block":                      "bust 88 cm, blade point of the block",
		"the front reaches 5 cm ahead of the form":           "the back reaches 5 cm behind the form",
	} {
		if got := AtBack.Say(text); got != want {
			t.Errorf("AtBack.Say(%q) = %q, want %q", text, got, want)
		}
		if got := AtFront.Say(text); got != text {
			t.Errorf("AtFront.Say(%q) = %q, want it as it was", text, got)
		}
	}
}
