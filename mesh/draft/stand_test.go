package draft

import (
	"cowl/mesh/polyline"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// An edge trimmed 2 cm lower on the worked cowl: by its points the shoulder
// falls 5.642 cm over 5.968 cm to the tip, so the half edge grows by
// 2·5.968/5.642 cm and the shoulder loses 2·8.212/5.642 cm.
func TestLower(t *testing.T) {
	c := DefaultCut()
	c.DartShare, c.Extension = 1, Auto
	p, err := Draft(workedBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	q, err := p.Treated(Stand{Lower: 0.02})
	if err != nil {
		t.Fatal(err)
	}
	const fall, run = 9.7981 - 4.1563, 27.6553 - 21.6878
	gone := 0.02 * math.Hypot(fall, run) / fall
	for _, k := range []struct {
		name      string
		got, want float64
	}{
		{"fold", q.FoldY, p.FoldY - 0.02}, {"half edge", q.HalfEdge, p.HalfEdge + 0.02*run/fall},
		{"shoulder", polyline.Length(q.Shoulder), polyline.Length(p.Shoulder) - gone},
		{"cowl point", q.CowlPoint, p.CowlPoint + gone},
		{"extension", q.Extension, q.HalfEdge - q.Block.CowlPoint(q.CowlPoint).X},
	} {
		if math.Abs(k.got-k.want) > 2e-5 {
			t.Errorf("%s %.5f m, want %.5f m", k.name, k.got, k.want)
		}
	}
}

// Taking in 2 cm at the waist shortens the waist by 2 cm and leaves the underarm.
func TestTakeIn(t *testing.T) {
	p, err := Draft(workedBlock(t), DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	q, err := p.Treated(Stand{TakeIn: 0.02})
	if err != nil {
		t.Fatal(err)
	}
	if d := polyline.Length(p.Waist) - polyline.Length(q.Waist); math.Abs(d-0.02) > 1e-9 || q.Side[0] != p.Side[0] {
		t.Errorf("waist %.4f m shorter, underarm %v, want 0.02 m and %v", d, q.Side[0], p.Side[0])
	}
}

func TestTreatedRefuses(t *testing.T) {
	p, err := Draft(workedBlock(t), DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct {
		s    Stand
		want string
	}{
		{Stand{Lower: 0.2}, "lower 20.0 cm"}, {Stand{Lower: -0.01}, "lower -1.0 cm"},
		{Stand{Lower: math.NaN()}, "lower NaN cm"},
		{Stand{TakeIn: 0.06}, "take in 6.0 cm, want 0.0–5.0 cm"},
		{Stand{ReleaseWaist: 0.2}, "release waist 20.0 cm, want 0.0–15.0 cm"},
		{Stand{ReleaseWaist: 0.1, ReleaseWaistAt: 1}, "off the centre front"},
		{Stand{ReleaseArmhole: 0.15, ReleaseArmholeAt: 0.98}, "release armhole 15.0 cm at 0.98"},
		{Stand{Weight: 0.2}, "weight 200.0 g, want 0.0–50.0 g"},
	} {
		if _, err := p.Treated(q.s); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("Treated(%+v): error %v, want one that says %q", q.s, err, q.want)
		}
	}
}

// A slash of 6 cm half way along the straight part of the waist runs square
// into the piece, once on each half.
func TestRelease(t *testing.T) {
	p, err := Draft(workedBlock(t), DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	s := DefaultStand()
	s.ReleaseWaist, s.ReleaseWaistAt = 0.06, 0.25
	q, err := p.Treated(s)
	if err != nil {
		t.Fatal(err)
	}
	if len(q.Releases) != 2 {
		t.Fatalf("%d slashes, want 2", len(q.Releases))
	}
	l, r := q.Releases[0], q.Releases[1]
	along, up := r2.Sub(q.Waist[1], q.Waist[0]), r2.Sub(l.To, l.From)
	if math.Abs(r2.Dot(along, up)) > 1e-9 || up.Y <= 0 || math.Abs(r2.Norm(up)-0.06) > 1e-9 {
		t.Errorf("slash runs %v, want 6 cm square to the waist, upwards", up)
	}
	if r.From != mirrored(l.From) || r.To != mirrored(l.To) {
		t.Errorf("right slash %v, want the mirror of %v", r, l)
	}
	if d := dist(q.Waist[0], l.From); math.Abs(d-0.25*polyline.Length(q.Waist)) > 1e-9 {
		t.Errorf("slash begins %.4f m from the side, want a quarter of the waist", d)
	}
}
