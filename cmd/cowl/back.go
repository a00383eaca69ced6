package main

import (
	"fmt"
	"io"
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/mesh/truing"
)

// backJSON holds the figures of the matching back, or of the plain front of a back cowl.
type backJSON struct {
	Grain   float64    `json:"grain_deg"`
	Neck    float64    `json:"half_neck_mm"`
	Armhole float64    `json:"armhole_mm"`
	Dart    float64    `json:"dart_intake_mm"`
	Facing  float64    `json:"facing_cb_mm"` // depth of the neck facing on the centre; 0: none
	Walked  []walkJSON `json:"walked"`
	Joined  []joinJSON `json:"joined"`
	Opening float64    `json:"opening_mm"`
}

// backFigures returns the figures of the back of a suit.
func backFigures(s truing.Suit) *backJSON {
	r := s.Back.Report()
	out := &backJSON{
		Grain: say.Degrees(s.BackGrain), Neck: say.MM(r.Neck), Armhole: say.MM(r.Armhole), Dart: say.MM(r.DartIntake),
		Facing:  say.MM(r.Facing),
		Opening: say.MM(draft.Opening(s.Front, s.Back)),
	}
	for _, k := range draft.Walked(s.Front, s.Back) {
		out.Walked = append(out.Walked, walkJSON{k.Name, say.MM(k.Front), say.MM(k.Back)})
	}
	for _, j := range draft.Joined(s.Front, s.Back) {
		out.Joined = append(out.Joined, joinJSON{j.Name, say.Degrees(j.Angle())})
	}
	return out
}

// backReport prints them. Lengths are centimetres.
func backReport(w io.Writer, s truing.Suit) {
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	r, worn := s.Back.Report(), s.Back.Worn()
	row(ruler.Capital(worn.String()), "half neck %s, armhole %s, waist dart %s; warp at %.1f° to the %s",
		say.Length(r.Neck), say.Length(r.Armhole), say.Length(r.DartIntake), say.Degrees(s.BackGrain), worn.Centre())
	if r.Facing > 0 {
		row(ruler.Capital(worn.String())+" facing", "%s deep on the %s, %s at the shoulder", say.Length(r.Facing),
			worn.Centre(), say.Length(s.Back.FacedBy))
	}
	for _, k := range draft.Walked(s.Front, s.Back) {
		row("Walked", "%s: front %s, back %s, apart %s", k.Name, say.Fine(k.Front), say.Fine(k.Back),
			say.Slight(math.Abs(k.Off())))
	}
	for _, j := range draft.Joined(s.Front, s.Back) {
		row("Joined", "%s: %.1f°, front %.1f° and back %.1f°", j.Name, say.Degrees(j.Angle()), say.Degrees(j.Front),
			say.Degrees(j.Back))
	}
	row("Opening", "%s round edge and %v neck", say.Length(draft.Opening(s.Front, s.Back)), worn)
}

// allowanceReport prints what is cut outside the seams.
func allowanceReport(w io.Writer, a truing.Allowances) {
	fmt.Fprintf(w, "  %-13s%s, side seams %s\n", "Allowances", say.Length(a.Seam), say.Length(a.Side))
}

type walkJSON struct {
	Name  string  `json:"name"`
	Front float64 `json:"front_mm"`
	Back  float64 `json:"back_mm"`
}

// joinJSON is the angle of a line over a closed seam; 180 runs on without a corner.
type joinJSON struct {
	Name  string  `json:"name"`
	Angle float64 `json:"angle_deg"`
}
