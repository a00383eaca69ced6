package draft

import (
	"cowl/mesh/polyline"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// pleatedFront is the worked cowl with pleats.
func pleatedFront(t testing.TB, n int, depth float64, to Towards) Cowl {
	t.Helper()
	c := DefaultCut()
	c.DartShare, c.Extension = 1, Auto
	c.Pleats, c.PleatDepth, c.PleatsTo = n, depth, to
	p, err := Draft(workedBlock(t), c)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Pleats lengthen the shoulder on the table by twice their depth each and
// nothing else: folded it walks with the back, edge, armhole and side stay.
func TestPleatsLengthenTheShoulder(t *testing.T) {
	plain := pleatedFront(t, 0, 0, Neck)
	for _, to := range []Towards{Neck, Armhole} {
		p := pleatedFront(t, 2, 0.02, to)
		back, err := BackFromBody(readWorked(t).body())
		if err != nil {
			t.Fatal(err)
		}
		b, err := MatchBack(back, p)
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range []struct {
			name      string
			got, want float64
		}{
			{"flat shoulder", polyline.Length(p.Shoulder), polyline.Length(plain.Shoulder) + 0.08},
			{"folded shoulder", p.ShoulderLength(), polyline.Length(plain.Shoulder)},
			{"half edge", p.HalfEdge, plain.HalfEdge},
			{"armhole", polyline.Length(p.Armhole), polyline.Length(plain.Armhole)},
			{"side", polyline.Length(p.Side), polyline.Length(plain.Side)},
			{"waist", polyline.Length(p.Waist), polyline.Length(plain.Waist)},
			{"front less back shoulder", Walked(p, b)[0].Off(), 0},
		} {
			if math.Abs(k.got-k.want) > 1e-6 {
				t.Errorf("towards the %v: %s %.6f m, want %.6f m", to, k.name, k.got, k.want)
			}
		}
		if p.FoldY < plain.FoldY+0.01 {
			t.Errorf("towards the %v: the edge lies %.1f cm higher than without pleats, want a longer front", to,
				(p.FoldY-plain.FoldY)*100)
		}
	}
}

// The legs of a pleat are equally far from the point of CF they are folded
// about, so folding brings one onto the other.
func TestPleatLegs(t *testing.T) {
	p := pleatedFront(t, 3, 0.015, Neck)
	hinge := r2.Vec{Y: p.Apex.Y}
	for k := range p.Pleats {
		a, b := p.Legs(k)
		at, _ := polyline.Along(p.Shoulder, a)
		bt, _ := polyline.Along(p.Shoulder, b)
		if d := dist(hinge, at) - dist(hinge, bt); math.Abs(d) > 1e-9 || math.Abs(dist(at, bt)-0.03) > 1e-9 {
			t.Errorf("pleat %d: legs %.6f m apart, %g m more from CF one than the other, want 0.03 m and 0", k+1, dist(at, bt),
				d)
		}
	}
}

// Folded as paper is: the seam keeps its length through every fold, lies in
// three layers over a pleat and in one elsewhere, and turns back first where
// the fold that is seen lies: at the far end for a pleat towards the armhole,
// and last at the near end for one towards the neck.
func TestFolded(t *testing.T) {
	for _, to := range []Towards{Neck, Armhole} {
		p := pleatedFront(t, 2, 0.02, to)
		const step = 1e-5
		layers := map[int]int{}
		last := 0.0
		for q := step / 2; q < polyline.Length(p.Shoulder); q += step {
			s, _ := p.Folded(q)
			if d := math.Abs(s - last); q > step && math.Abs(d-step) > 1e-9 && d > step {
				t.Fatalf("towards the %v: the seam moves %g m over %g m at %.4f m", to, d, step, q)
			}
			last = s
			layers[int(s/0.001)]++
		}
		three, one := 0, 0
		for mm, n := range layers {
			s, inside := (float64(mm)+0.5)/1000, false
			for _, l := range p.Pleats {
				from, end := l.lies()
				inside = inside || s > from+0.001 && s < end-0.001
			}
			switch n / 95 {
			case 3:
				three++
			case 1:
				one++
			}
			if inside && n/95 != 3 {
				t.Errorf("towards the %v: %d hundredths of a millimetre of seam over the millimetre at %.4f m, want three layers",
					to, n, s)
			}
		}
		if three < 36 || one < 36 {
			t.Errorf("towards the %v: %d mm in three layers and %d mm in one, want 40 and 42", to, three, one)
		}
		a, b := p.Legs(0)
		for _, k := range []struct{ q, want float64 }{{a, p.Pleats[0].At}, {b, p.Pleats[0].At}, {p.Unfolded(0.05), 0.05},
			{p.Unfolded(0.08), 0.08}, {0.01, 0.01}} {
			if s, _ := p.Folded(k.q); math.Abs(s-k.want) > 1e-12 {
				t.Errorf("towards the %v: Folded(%.4f) = %.6f, want %.6f", to, k.q, s, k.want)
			}
		}
		mid, _ := p.Folded((a + b) / 2)
		if way := mid - p.Pleats[0].At; (to == Neck) != (way > 0) || math.Abs(math.Abs(way)-0.02) > 1e-12 {
			t.Errorf("towards the %v: the cloth beneath reaches %.4f m from the legs, want 0.02 m away from the fold", to, way)
		}
	}
}

func TestPleatsRefused(t *testing.T) {
	for _, q := range []struct {
		n     int
		depth float64
		share float64
		want  string
	}{
		{5, 0.005, 1, "pleats 5, want 0–4"}, {2, 0.05, 1, "pleat depth 5.0 cm, want 0.5–4.0 cm"},
		{2, math.NaN(), 1, "pleat depth NaN"},
		{3, 0.02, 1, "3 pleats of 2.0 cm cover 6.0 cm of shoulder, want at most 4.7 cm"},
		{2, 0.02, 0, "slopes"},
	} {
		c := DefaultCut()
		c.Pleats, c.PleatDepth, c.DartShare, c.How = q.n, q.depth, q.share, Shift
		if _, err := Draft(workedBlock(t), c); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("%d pleats of %g m, dart share %g: error %v, want one that says %q", q.n, q.depth, q.share, err, q.want)
		}
	}
}

// Folded, the middle of a pleat lies on the seam beyond its fold, which is found
// here by folding the paper: the cloth is turned over about the line of the fold.
// Both halves of the pleat are alike, or the two legs would not meet.
func TestPleatJut(t *testing.T) {
	count := 0
	for _, to := range []Towards{Neck, Armhole} {
		for n := 1; n <= 3; n++ {
			c := DefaultCut()
			c.Extension, c.Pleats, c.PleatDepth, c.PleatsTo = Auto, n, 0.014, to
			p, err := Draft(workedBlock(t), c)
			if err != nil {
				t.Fatal(err)
			}
			lines := p.PleatLines() // place and fold of each pleat
			for k := range p.Pleats {
				count++
				fold, place, jut := lines[2*k+1], lines[2*k], p.PleatJut(k)
				u := r2.Unit(r2.Sub(fold.To, fold.From))
				w := r2.Sub(jut, fold.From)
				over := r2.Add(fold.From, r2.Sub(r2.Scale(2*r2.Dot(w, u), u), w))
				// The corner of the seam next to the fold that is not the place.
				i := slices.IndexFunc(p.Shoulder, func(v r2.Vec) bool { return dist(v, fold.From) < 1e-9 })
				next := p.Shoulder[i+1]
				if to == Armhole {
					next = p.Shoulder[i-1]
				}
				if off := math.Abs(r2.Cross(r2.Unit(r2.Sub(next, fold.From)), r2.Sub(over, fold.From))); off > 1e-9 {
					t.Errorf("%d pleats towards the %v, pleat %d: its inside ends %.3f mm off the seam, want on it", n, to, k+1,
						off*1000)
				}
				if d := dist(jut, fold.From) - dist(jut, place.From); math.Abs(d) > 1e-9 {
					t.Errorf("%d pleats towards the %v, pleat %d: its halves differ by %.3f mm", n, to, k+1, d*1000)
				}
			}
		}
	}
	if count != 12 {
		t.Errorf("looked at %d pleats, want 12", count)
	}
}
