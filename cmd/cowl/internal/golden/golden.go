// Package golden keeps the pictures that tests compare with. Only tests import
// it; with the flag -update they write the pictures anew. Start at Want.
package golden

import (
	"flag"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// Want returns the picture at path, which got should be like and as large as.
// With -update got is written there first.
func Want(t testing.TB, path string, got *image.RGBA) *image.RGBA {
	t.Helper()
	if *update {
		Save(t, path, got)
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if got.Rect != img.Bounds() {
		t.Fatalf("picture of %v, want the %v of %s", got.Rect, img.Bounds(), path)
	}
	want := image.NewRGBA(got.Rect)
	draw.Draw(want, want.Rect, img, got.Rect.Min, draw.Src)
	return want
}

// Save writes a picture.
func Save(t testing.TB, path string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}
