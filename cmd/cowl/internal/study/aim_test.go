package study

import (
	"math"
	"math/rand/v2"
	"testing"

	"cowl/mesh/draft"
)

// plane150 is the drop of a hanging edge 2 × 105 mm wide, mm, of an extension
// in mm.
func plane150(e int) float64 {
	_, chain := draft.DropForEdge(0.105, 0.105+float64(e)/1000)
	return chain * 1000
}

// On synthetic drapes that rise with the extension, smooth, bent, stepped by a
// scatter of 1 mm, or flat at first, the want is met within the 2 mm that one
// millimetre of extension and the scatter leave, in at most six hangings.
func TestAim(t *testing.T) {
	shapes := map[string]func(int) float64{
		"a share of the plane": func(e int) float64 { return 0.68 * plane150(e) },
		"less and less":        func(e int) float64 { return 0.9*plane150(e) - 0.0008*plane150(e)*plane150(e) },
		"flat at first":        func(e int) float64 { return math.Max(5, 1.1*plane150(e)-60) },
		"straight":             func(e int) float64 { return 3 + 0.9*float64(e) },
		"scattered":            func(e int) float64 { return 0.72*plane150(e) + math.Sin(float64(e)*1.7) },
	}
	cases, hangings := 0, 0
	for name, drop := range shapes {
		r := rand.New(rand.NewPCG(1, 2)) // of its own, for maps have no order
		for range 200 {
			a := &aim{lo: 0, hi: 300, plane: plane150}
			a.want = drop(5) + (drop(295)-drop(5))*r.Float64()
			for {
				at, ok := a.next()
				if !ok {
					break
				}
				a.tell(at, drop(at))
			}
			cases++
			hangings += len(a.tries)
			if off := a.best().value - a.want; math.Abs(off) > 2.6 || a.out() || len(a.tries) > 6 {
				t.Errorf("%s: wanted %.1f mm, found %.1f mm in %d hangings, out %t", name, a.want, a.best().value, len(a.tries),
					a.out())
			}
		}
	}
	if cases != 1000 || hangings > 6*cases {
		t.Errorf("%d hangings for %d wants, want at most 6 each", hangings, cases)
	}
}

// A want beyond what the function reaches ends at that end and is called out.
func TestAimOut(t *testing.T) {
	for _, q := range []struct {
		want float64
		end  int
	}{{500, 300}, {1, 0}} {
		a := &aim{want: q.want, lo: 0, hi: 300, plane: plane150}
		for {
			at, ok := a.next()
			if !ok {
				break
			}
			a.tell(at, 20+0.7*plane150(at))
		}
		if !a.out() || a.best().at != q.end || len(a.tries) > mostTries {
			t.Errorf("wanted %g mm: best %+v after %d tries, out %t, want the end at %d", q.want, a.best(), len(a.tries),
				a.out(), q.end)
		}
	}
}

// A place without a result is asked no more, the next is beside it, and it counts among the
// six, of which three are enough to find the want. Where all are lost the first stands, without a value.
func TestAimLost(t *testing.T) {
	for lost := 1; lost <= 6; lost++ {
		a := &aim{want: 100, lo: 0, hi: 300, plane: plane150}
		seen := map[int]bool{}
		for at, ok := a.next(); ok; at, ok = a.next() {
			if len(seen) > 0 && len(seen) < lost && !seen[at-asideBy] && !seen[at+asideBy] {
				t.Errorf("%d lost: asked at %d after %v, want one beside them", lost, at, seen)
			}
			seen[at] = true
			if len(seen) <= lost {
				a.tell(at, math.NaN())
			} else {
				a.tell(at, 0.68*plane150(at))
			}
		}
		found := a.best().value
		if asked := len(a.tries) + len(a.lost); asked != len(seen) || asked > 6 || len(a.lost) != lost {
			t.Errorf("%d lost: %d asked, %d of them anew, %d lost, want at most 6", lost, asked, len(seen), len(a.lost))
		}
		if lost == 6 != math.IsNaN(found) || lost < 4 && math.Abs(found-100) > 2.6 {
			t.Errorf("%d lost: found %.1f mm, want 100 mm", lost, found)
		}
	}
}

// A place is asked once.
func TestAimOnce(t *testing.T) {
	a := &aim{want: 100, lo: 0, hi: 300, plane: plane150}
	seen := map[int]bool{}
	for {
		at, ok := a.next()
		if !ok {
			break
		}
		if seen[at] {
			t.Fatalf("asked twice at %d", at)
		}
		seen[at] = true
		a.tell(at, map[bool]float64{true: 60, false: 140}[at < 150]) // jumps over the want
	}
	if len(seen) < 2 {
		t.Errorf("asked %d times, want more", len(seen))
	}
}
