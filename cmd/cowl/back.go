package main

import (
	"fmt"
	"io"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/truing"
)

// backJSON holds the figures of the matching back.
type backJSON struct {
	Grain    float64    `json:"grain_deg"`
	Neck     float64    `json:"half_neck_mm"`
	Armhole  float64    `json:"armhole_mm"`
	Dart     float64    `json:"dart_intake_mm"`
	Facing   float64    `json:"facing_cb_mm"` // depth of the back-neck facing on the centre back; 0: none
	Walked   []walkJSON `json:"walked"`
	Opening  float64    `json:"opening_mm"`
	Seam     float64    `json:"allowance_mm"`
	SideSeam float64    `json:"side_allowance_mm"`
}

// backFigures returns the figures of the back of a suit.
func backFigures(s truing.Suit) *backJSON {
	r := s.Back.Report()
	out := &backJSON{
		Grain: degreesOf(s.BackGrain), Neck: mm(r.Neck), Armhole: mm(r.Armhole), Dart: mm(r.DartIntake), Facing: mm(r.Facing),
		Opening: mm(draft.Opening(s.Front, s.Back)), Seam: mm(s.Allow.Seam), SideSeam: mm(s.Allow.Side),
	}
	for _, k := range draft.Walked(s.Front, s.Back) {
		out.Walked = append(out.Walked, walkJSON{k.Name, mm(k.Front), mm(k.Back)})
	}
	return out
}

// backReport prints them. Lengths are centimetres.
func backReport(w io.Writer, s truing.Suit) {
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	r := s.Back.Report()
	row("Back", "half neck %.1f cm, armhole %.1f cm, waist dart %.1f cm; warp at %.1f° to the centre back", cm(r.Neck), cm(r.Armhole), cm(r.DartIntake), degreesOf(s.BackGrain))
	if r.Facing > 0 {
		row("Back facing", "%.1f cm deep on the centre back, %.1f cm at the shoulder", cm(r.Facing), cm(s.Back.FacedBy))
	}
	for _, k := range draft.Walked(s.Front, s.Back) {
		row("Walked", "%s: front %.2f cm, back %.2f cm, apart %.1f mm", k.Name, k.Front*100, k.Back*100, math.Abs(mm(k.Off())))
	}
	row("Opening", "%.1f cm round edge and back neck", cm(draft.Opening(s.Front, s.Back)))
	row("Allowances", "%.1f cm, side seams %.1f cm", cm(s.Allow.Seam), cm(s.Allow.Side))
}
