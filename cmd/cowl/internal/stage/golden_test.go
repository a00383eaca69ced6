package stage

import (
	"flag"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

func save(t *testing.T, path string, img image.Image) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}

func load(t *testing.T, path string) *image.RGBA {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	out := image.NewRGBA(img.Bounds())
	draw.Draw(out, out.Rect, img, image.Point{}, draw.Src)
	return out
}

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
	if *update {
		save(t, path, img)
	}
	want := load(t, path)
	if img.Rect != want.Rect {
		t.Fatalf("picture is %v, want %v", img.Rect, want.Rect)
	}
	if mean, far := difference(img, want); mean > 1 || far > 0.01 {
		t.Errorf("picture differs from %s by %.2f on average and clearly in %.2f %% of channels, want 1 and 1 %%", path, mean, 100*far)
	}
}
