package toile

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"
)

// held writes a JPEG of 80 × 40 pixels whose left upper quarter is red, with an Exif head
// that tells an orientation, and returns its path.
func heldPhoto(t *testing.T, turn byte) string {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 80, 40))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for y := range 20 {
		for x := range 40 {
			img.SetRGBA(x, y, color.RGBA{R: 255, A: 255})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	tiff := []byte{'I', 'I', 42, 0, 8, 0, 0, 0, 1, 0, 0x12, 0x01, 3, 0, 1, 0, 0, 0, turn, 0, 0, 0, 0, 0, 0, 0}
	body := append([]byte("Exif\x00\x00"), tiff...)
	head := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(body) + 2)}, body...)
	path := filepath.Join(t.TempDir(), "p.jpg")
	if err := os.WriteFile(path, append(head, b.Bytes()[2:]...), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// A photograph stands upright on the sheet, however the camera was held: where the red
// quarter goes is read off the meaning of the eight orientations.
func TestUpright(t *testing.T) {
	for turn, q := range map[byte]struct {
		w, h  int
		down  bool // the red quarter lies low
		right bool // and on the right
	}{1: {640, 320, false, false}, 2: {640, 320, false, true}, 3: {640, 320, true, true}, 4: {640, 320, true, false},
		5: {384, 768, false, false}, 6: {384, 768, false, true}, 7: {384, 768, true, true}, 8: {384, 768, true, false}} {
		data, err := shown(heldPhoto(t, turn))
		if err != nil {
			t.Fatal(err)
		}
		img, err := jpeg.Decode(bytes.NewReader(data))
		if err != nil || img.Bounds().Dx() != q.w || img.Bounds().Dy() != q.h {
			t.Fatalf("orientation %d: %v, %v, want %d × %d", turn, img.Bounds(), err, q.w, q.h)
		}
		x, y := q.w/4, q.h/4
		if q.right {
			x = 3 * q.w / 4
		}
		if q.down {
			y = 3 * q.h / 4
		}
		if r, g, _, _ := img.At(x, y).RGBA(); r>>8 < 200 || g>>8 > 80 {
			t.Errorf("orientation %d: (%d, %d) is %v, want red", turn, x, y, img.At(x, y))
		}
		if bytes.Contains(data, []byte("Exif")) {
			t.Errorf("orientation %d: the sheet holds what the camera noted", turn)
		}
	}
}

// Heads that are cut short or point nowhere tell nothing.
func TestOrientationHostile(t *testing.T) {
	whole, err := os.ReadFile(heldPhoto(t, 6))
	if err != nil {
		t.Fatal(err)
	}
	for n := range 60 {
		orientation(whole[:n])
		bad := bytes.Clone(whole)
		bad[n] ^= 0xff
		orientation(bad)
	}
	if got := orientation(whole); got != 6 {
		t.Errorf("orientation = %d, want 6", got)
	}
}
