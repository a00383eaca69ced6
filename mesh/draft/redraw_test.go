package draft

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A piece redrawn by its own lines is the same piece.
func TestRedrawnSame(t *testing.T) {
	count := 0
	for _, c := range []func(*Cut){
		func(c *Cut) {},
		func(c *Cut) { c.Facing = 0 },
		func(c *Cut) { c.DartShare, c.Extension = 0.5, Auto },
		func(c *Cut) { c.How, c.Extension = Slash, 0.14 },
	} {
		cut := DefaultCut()
		c(&cut)
		p, err := Draft(workedBlock(t), cut)
		if err != nil {
			t.Fatal(err)
		}
		q, err := p.Redrawn(p.Lines())
		if err != nil {
			t.Fatal(err)
		}
		if len(q.Outline) != len(p.Outline) || len(q.CutLine) != len(p.CutLine) {
			t.Fatalf("Redrawn: %d and %d points, want %d and %d", len(q.Outline), len(q.CutLine), len(p.Outline), len(p.CutLine))
		}
		for i := range p.Outline {
			count++
			if d := dist(p.Outline[i], q.Outline[i]); d > 1e-9 {
				t.Errorf("Redrawn: outline %d moved %.3g m", i, d)
			}
		}
		if math.Abs(q.Extension-p.Extension) > 1e-12 {
			t.Errorf("Redrawn: extension %.5f m, want %.5f m", q.Extension, p.Extension)
		}
	}
	if count < 100 {
		t.Errorf("looked at %d points, want 100 or more", count)
	}
}

// A shoulder drawn 1 cm lower takes edge and facing with it.
func TestRedrawnLower(t *testing.T) {
	cut := DefaultCut()
	p, err := Draft(workedBlock(t), cut)
	if err != nil {
		t.Fatal(err)
	}
	l := p.Lines()
	down := func(v r2.Vec) r2.Vec { return r2.Vec{X: v.X, Y: v.Y - 0.01} }
	l.Shoulder = movedLine(l.Shoulder, down)
	l.Armhole = append([]r2.Vec{l.Shoulder[len(l.Shoulder)-1]}, l.Armhole[1:]...)
	q, err := p.Redrawn(l)
	if err != nil {
		t.Fatal(err)
	}
	top := q.FacingEdge[len(q.FacingEdge)-1]
	if math.Abs(q.FoldY-p.FoldY+0.01) > 1e-9 || math.Abs(top.Y-q.FoldY-cut.Facing) > 1e-9 {
		t.Errorf("Redrawn: edge at %.4f, facing to %.4f, want %.4f and %.4f", q.FoldY, top.Y, p.FoldY-0.01,
			p.FoldY-0.01+cut.Facing)
	}
}

func TestRedrawnRefuses(t *testing.T) {
	p, err := Draft(workedBlock(t), DefaultCut())
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct {
		name   string
		change func(*Lines)
		want   string
	}{
		{"gap", func(l *Lines) {
			l.Side = movedLine(l.Side, func(v r2.Vec) r2.Vec { return r2.Vec{X: v.X + 0.01, Y: v.Y} })
		}, "armhole and side"},
		{"empty", func(l *Lines) { l.Waist = nil }, "waist has 0 points"},
		{"off CF", func(l *Lines) { l.Waist = []r2.Vec{l.Waist[0], {X: 0.05, Y: -0.4}} }, "centre front"},
		{"NaN", func(l *Lines) { l.Shoulder = []r2.Vec{{X: math.NaN()}, l.Shoulder[1]} }, "cowl point"},
	} {
		l := p.Lines()
		q.change(&l)
		if _, err := p.Redrawn(l); err == nil || !strings.Contains(err.Error(), q.want) {
			t.Errorf("%s: Redrawn error %v, want one that says %q", q.name, err, q.want)
		}
	}
}
