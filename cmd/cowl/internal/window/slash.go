//go:build cgo

package window

import (
	"strings"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"

	"gonum.org/v1/gonum/spatial/r2"
)

// seam is an edge that a release slash may begin on.
type seam struct {
	name       string // of the slash in the style
	word, help string
	line       func(draft.Cowl) []r2.Vec // of the wearer's left half, m
	where      string                    // what its place runs from and to
}

// seams lists them.
var seams = []seam{
	{"release_waist", "Waist slash", "A cut from the waist up, square to it, that lets the cloth open.",
		func(p draft.Cowl) []r2.Vec { return p.Waist }, "0 % is the side seam, 100 % the centre front."},
	{"release_armhole", "Armhole slash", "A cut from the armhole inwards, square to it, that lets the cloth open.",
		func(p draft.Cowl) []r2.Vec { return p.Armhole }, "0 % is the shoulder tip, 100 % the underarm."},
}

// lower is the word for the slash within a sentence.
func (k seam) lower() string { return strings.ToLower(k.word) }

// slash returns length (m) and place (0..1) of the slash from a seam.
func (k seam) slash(s *draft.Stand) (long, at *float64) {
	if k.name == "release_waist" {
		return &s.ReleaseWaist, &s.ReleaseWaistAt
	}
	return &s.ReleaseArmhole, &s.ReleaseArmholeAt
}

// openPlace returns the place on the seam, nearest to that of the style, at
// which a slash long m may be cut; where there is none, that of the style.
func openPlace(s style.Style, k seam, long float64) float64 {
	l, at := k.slash(&s.Stand)
	was := *at
	*l = long
	for step := range 11 {
		for _, side := range [2]float64{-1, 1} {
			*at = was + side*0.05*float64(step)
			if *at < 0 || *at > 1 {
				continue
			}
			if _, err := s.Cowl(); err == nil {
				return *at
			}
		}
	}
	return was
}

// What the mouse draws on the flat piece.
const (
	drawSlashes = iota
	drawTrims
)

var (
	drawNames = []string{"Slash", "Trim"}
	drawHelps = []string{
		"Press on the waist or the armhole and drag inwards to slash both halves.",
		"Draw a line across the piece, from outside to outside: what lies beyond it is cut off both halves.",
	}
)

// slashing is a release slash being drawn on the flat piece.
type slashing struct {
	seam       seam
	at         float64 // 0..1 along the seam
	from, into r2.Vec  // m and unit, on the wearer's left half
	long       float64 // m
}
