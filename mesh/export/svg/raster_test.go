package svg

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"os/exec"
	"testing"

	"cowl/mesh/draft"
	"cowl/mesh/paper/plot"
)

// The rasteriser of the desktop sees the 10 cm square 100 mm wide: lines are
// found by their darkness at 4 dots a millimetre.
func TestRasterSquare(t *testing.T) {
	tool, err := exec.LookPath("rsvg-convert")
	if err != nil {
		t.Skip("rsvg-convert (librsvg2-bin) is not installed: no independent rasteriser")
	}
	const perMM = 4
	data := bytesOf(t, piece(t, func(*draft.Cut) {}), plot.Options{})
	cmd := exec.Command(tool, "-d", fmt.Sprint(25.4*perMM), "-p", fmt.Sprint(25.4*perMM))
	cmd.Stdin = bytes.NewReader(data)
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("rsvg-convert: %v", err)
	}
	img, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	pic := drawn(t, piece(t, func(*draft.Cut) {}), plot.Options{})
	square := pic.path(t, "square-10cm")
	row := int((square[0].Y + 20) * perMM)
	var at []float64
	sum, moment := 0.0, 0.0
	for x := 0; x < int((square[0].X+105)*perMM); x++ {
		r, _, _, _ := img.At(x, row).RGBA()
		if dark := 1 - float64(r)/65535; dark > 0.05 {
			sum, moment = sum+dark, moment+dark*(float64(x)+0.5)
		} else if sum > 0 {
			at, sum, moment = append(at, moment/sum), 0, 0
		}
	}
	if len(at) != 2 || math.Abs((at[1]-at[0])/perMM-100) > 0.2 {
		t.Errorf("the square's sides lie at %.2f dots, want two 100.0 ± 0.2 mm apart", at)
	}
	if w, _ := pic.page(t); math.Abs(float64(img.Bounds().Dx())/perMM-w) > 0.5 {
		t.Errorf("the picture is %.1f mm wide, want %.1f mm", float64(img.Bounds().Dx())/perMM, w)
	}
}
