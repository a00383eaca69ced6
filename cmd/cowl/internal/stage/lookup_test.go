//go:build cgo

package stage

import (
	"slices"
	"testing"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// The form that is kept under the depth maps of the sky gives every vertex, bit for bit,
// the sky that a painter of its own gives it: after the cloth has lain elsewhere, before
// another form, and in another box.
func TestSkyOverKeptForm(t *testing.T) {
	one, two := testScene(12), testScene(12)
	two.Form = lifted(two.Form, 0.004)
	shift := func(s Scene, by r3.Vec) []r3.Vec {
		var pos []r3.Vec
		for _, q := range s.Cloth.Pos {
			pos = append(pos, r3.Add(q, by))
		}
		return pos
	}
	steps := []struct {
		scene int
		by    r3.Vec
	}{{0, r3.Vec{}}, {0, r3.Vec{Z: 0.002}}, {0, r3.Vec{}}, {1, r3.Vec{}}, {0, r3.Vec{}}, {0, r3.Vec{Z: 0.3}},
		{0, r3.Vec{}}}
	look := func(p *Painter, l *Loaded, s Scene, by r3.Vec) []float32 {
		if err := p.Move(l, shift(s, by), nil); err != nil {
			t.Error(err)
		}
		p.LookUp(l)
		return slices.Clone(l.open)
	}
	scenes := []Scene{one, two}
	var got, want [][]float32
	onStage(t, one, func(p *Painter, l *Loaded) {
		other, err := p.Load(two)
		if err != nil {
			t.Error(err)
			return
		}
		defer other.Release()
		for _, s := range steps {
			got = append(got, look(p, []*Loaded{l, other}[s.scene], scenes[s.scene], s.by))
		}
	})
	for _, s := range steps {
		onStage(t, scenes[s.scene], func(p *Painter, l *Loaded) {
			want = append(want, look(p, l, scenes[s.scene], s.by))
		})
	}
	if len(want) != len(steps) || len(got) != len(steps) {
		t.Fatalf("%d and %d steps ran, want %d", len(got), len(want), len(steps))
	}
	for k := range steps {
		if !slices.Equal(got[k], want[k]) || len(got[k]) == 0 {
			t.Errorf("step %d: %d numbers, other than those of a painter of its own", k, len(got[k]))
		}
	}
	if slices.Equal(want[0], want[3]) || slices.Equal(want[0], want[5]) {
		t.Error("another form, or cloth elsewhere, sees the same sky: the steps tell nothing")
	}
}

// lifted is a form by so much higher, m.
func lifted(f *mesh.Surface, by float64) *mesh.Surface {
	out := *f
	out.Pos = nil
	for _, q := range f.Pos {
		out.Pos = append(out.Pos, r3.Add(q, r3.Vec{Y: by}))
	}
	return &out
}

// Shadows that lie from vertex to vertex of a smooth surface look like those that every
// pixel asks for; without any the picture is another.
func TestSparingShadows(t *testing.T) {
	s := testScene(30)
	onStage(t, s, func(p *Painter, l *Loaded) {
		p.Smooth(l, NewFine(s.smooth()))
		v := ThreeQuarter(bodiceBox(s), 1)
		full, err := p.Shot(l, v, Manner{}, 400, 400)
		if err != nil {
			t.Error(err)
			return
		}
		sparing, err := p.Shot(l, v, Manner{Sparing: true}, 400, 400)
		if err != nil {
			t.Error(err)
			return
		}
		none, err := p.Shot(l, v, Manner{Quick: true, Fine: true}, 400, 400)
		if err != nil {
			t.Error(err)
			return
		}
		mean, far := difference(sparing, full)
		off, _ := difference(none, full)
		t.Logf("from vertex to vertex: %.3f of 255 on average, %.3f %% of channels clearly; without shadows %.3f", mean,
			100*far, off)
		if mean > 0.05 || far > 0.0005 || off < 0.5 {
			t.Errorf("shadows from vertex to vertex differ by %.3f of 255 on average, clearly in %.3f %% of channels, none "+
				"at all by %.3f; want 0.05, 0.05 %% and 0.5",
				mean, 100*far, off)
		}
	})
}
