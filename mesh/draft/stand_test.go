package draft

import (
	"math"
	"strings"
	"testing"
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
		{"shoulder", length(q.Shoulder), length(p.Shoulder) - gone}, {"cowl point", q.CowlPoint, p.CowlPoint + gone},
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
	if d := length(p.Waist) - length(q.Waist); math.Abs(d-0.02) > 1e-9 || q.Side[0] != p.Side[0] {
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
		{Stand{Lower: 0.2}, "lower 20.0 cm"}, {Stand{Lower: -0.01}, "lower -1.0 cm"}, {Stand{Lower: math.NaN()}, "lower NaN cm"},
		{Stand{TakeIn: 0.06}, "take in 6.0 cm, want 0.0–5.0 cm"},
	} {
		if _, err := p.Treated(q.s); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("Treated(%+v): error %v, want one that says %q", q.s, err, q.want)
		}
	}
}
