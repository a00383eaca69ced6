//go:build cgo

package stage

import (
	"bytes"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// The shadow goes with the cloth: one that has moved since the last picture is
// drawn as if it had been loaded where it lies now.
func TestShadowFollowsTheCloth(t *testing.T) {
	s := testScene(12)
	v := ThreeQuarter(bodiceBox(s), 1)
	after := s
	after.Cloth.Pos = nil
	for _, p := range s.Cloth.Pos {
		after.Cloth.Pos = append(after.Cloth.Pos, r3.Add(p, r3.Vec{Y: -0.03}))
	}
	shot := func(p *Painter, l *Loaded) []byte {
		img, err := p.Shot(l, v, Manner{}, 200, 200)
		if err != nil {
			t.Error(err)
			return nil
		}
		return img.Pix
	}
	var moved, fresh []byte
	onStage(t, s, func(p *Painter, l *Loaded) {
		shot(p, l)
		if err := p.Move(l, after.Cloth.Pos, nil); err != nil {
			t.Error(err)
		}
		moved = shot(p, l)
		if !bytes.Equal(moved, shot(p, l)) {
			t.Error("two pictures of cloth that has not moved differ")
		}
	})
	onStage(t, after, func(p *Painter, l *Loaded) { fresh = shot(p, l) })
	far := 0
	for i := range moved {
		if math.Abs(float64(moved[i])-float64(fresh[i])) > 8 {
			far++
		}
	}
	if share := float64(far) / float64(len(fresh)); share > 0.001 {
		t.Errorf("%.2f %% of channels differ from a picture of cloth loaded there, want 0.1 %% at most", 100*share)
	}
}
