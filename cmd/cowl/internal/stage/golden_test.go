package stage

import (
	"image"
	"math"
	"path/filepath"
	"testing"

	"cowl/cmd/cowl/internal/golden"
)

// difference returns the mean difference of a channel (0 to 255) and the share
// of channels that differ by more than 24.
func difference(a, b *image.RGBA) (mean, far float64) {
	for i := range a.Pix {
		d := math.Abs(float64(a.Pix[i]) - float64(b.Pix[i]))
		mean += d
		if d > 24 {
			far++
		}
	}
	n := float64(len(a.Pix))
	return mean / n, far / n
}

// The golden picture was looked at when it was made. Drivers differ in the
// last bit and at the rims of triangles, hence the tolerance.
func TestDrawGolden(t *testing.T) {
	st := newStage(t)
	s := testScene(24)
	img, err := st.Draw(s, ThreeQuarter(bodiceBox(s), 4.0/3), 320, 240)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join("testdata", "threequarter.png")
	want := golden.Want(t, path, img)
	if mean, far := difference(img, want); mean > 1 || far > 0.01 {
		t.Errorf("picture differs from %s by %.2f on average and clearly in %.2f %% of channels, want 1 and 1 %%", path,
			mean, 100*far)
	}
}
