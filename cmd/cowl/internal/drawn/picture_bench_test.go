package drawn

import (
	"bytes"
	"image/png"
	"testing"

	"cowl/cmd/cowl/internal/stage"
)

// The picture of cowl drape from cloth at rest: smooth surface, four views of 2000 ×
// 1500 pixels, and the file.
func BenchmarkPicture(b *testing.B) {
	h := hang(b, "fabric: polyester-twill\nhang: {spacing_mm: 8, folds: 2}\n")
	for b.Loop() {
		h.skin = nil
		st, err := h.Open(stage.New)
		if err != nil {
			b.Skip(err)
		}
		img, err := stage.Views(st, h.Scene(), h.Section, []string{"The demo"})
		st.Close()
		if err != nil {
			b.Fatal(err)
		}
		var file bytes.Buffer
		if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&file, img); err != nil {
			b.Fatal(err)
		}
	}
}
