package draft

import (
	"math"
	"testing"
)

// By hand, on the back of the worked example, cm, y down: the shoulder falls 5 cm over
// 12.27 cm, the nape lies 1.5 cm down. The strap sits 1.5 cm beyond the cowl point and is
// led over the centre back 1 cm below the nape, or lower where its ends lie lower.
func TestStrapByHand(t *testing.T) {
	who := readWorked(t).body()
	blk, err := CowlFromBody(who, AtBack)
	if err != nil {
		t.Fatal(err)
	}
	slope := math.Atan2(5.0, 19.470-7.2)
	for _, q := range []struct{ cowl, down float64 }{{2, 2.5}, {4, 2.5}, {6, (6 + 1.5) * math.Sin(slope)}} {
		c := DefaultCut()
		c.Worn, c.CowlPoint, c.Facing = AtBack, q.cowl/100, 0.05
		p, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		x, y := 7.2+(q.cowl+1.5)*math.Cos(slope), (q.cowl+1.5)*math.Sin(slope)
		half := math.Hypot(x, q.down-y)
		for kind, want := range map[Strapping]float64{Strapped: 2 * half, Tied: half + 30} {
			s, err := p.StrapOf(kind)
			if err != nil || math.Abs(s.Long*100-want) > 0.002 || s.Wide != 0.02 || s.At != 0.015 {
				t.Errorf("StrapOf(%v), cowl point %g cm: %+v, %v, want %.3f cm long", kind, q.cowl, s, err, want)
			}
		}
	}
}

// A neck that is wide, low or neither holds by itself; wide and low it slips. No cowl at
// the front has a strap.
func TestSlips(t *testing.T) {
	who := readWorked(t).body()
	for _, q := range []struct {
		worn            Side
		cowl, extension float64 // m
		want            bool
	}{
		{AtBack, 0.02, 0.03, false}, {AtBack, 0.06, 0.03, false}, {AtBack, 0.02, 0.12, false}, {AtBack, 0.06, 0.12, true},
		{AtFront, 0.06, 0.15, false},
	} {
		blk, err := CowlFromBody(who, q.worn)
		if err != nil {
			t.Fatal(err)
		}
		c := DefaultCut()
		c.Worn, c.CowlPoint, c.Extension, c.Facing = q.worn, q.cowl, q.extension, 0.05
		p, err := Draft(blk, c)
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Slips(); got != q.want {
			t.Errorf("%+v: Slips() = %t", q, got)
		}
		if s, err := p.StrapOf(Tied); (err != nil) != (q.worn == AtFront) || (s != nil) == (q.worn == AtFront) {
			t.Errorf("%+v: StrapOf(tie) = %v, %v, want one at the back alone", q, s, err)
		}
	}
	for s := NoStrap; s <= Tied; s++ {
		if got, err := ParseStrapping(s.String()); got != s || err != nil {
			t.Errorf("ParseStrapping(%q) = %v, %v", s.String(), got, err)
		}
	}
	if _, err := ParseStrapping("rope"); err == nil {
		t.Error(`ParseStrapping("rope") = nil error, want one`)
	}
}
