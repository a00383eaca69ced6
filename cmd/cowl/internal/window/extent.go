//go:build cgo

package window

import (
	"image"
	"math"

	"cowl/cmd/cowl/internal/panel"
)

// extent is how large the picture of the window is.
type extent struct {
	wide, tall int     // pixels
	scale      float64 // pixels a unit
}

// pixels turns units into whole pixels.
func (e extent) pixels(r panel.Rect) image.Rectangle {
	px := func(v float64) int { return int(math.Round(v * e.scale)) }
	return image.Rect(px(r.X), px(r.Y), px(r.X+r.W), px(r.Y+r.H))
}
