package drafted

import (
	"fmt"
	"io"
	"math"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/mesh/truing"
)

// Plain holds the figures of the matching back, or of the plain front of a back cowl: lengths in
// mm, the grain in degrees.
type Plain struct {
	Grain   float64 `json:"grain_deg"`
	Neck    float64 `json:"half_neck_mm"`
	Armhole float64 `json:"armhole_mm"`
	Dart    float64 `json:"dart_intake_mm"`
	Facing  float64 `json:"facing_cb_mm"` // depth of the neck facing on the centre; 0: none
	Walked  []Walk  `json:"walked"`
	Joined  []Join  `json:"joined"`
	Opening float64 `json:"opening_mm"`
}

// plainOf returns the figures of the plain piece of a suit.
func plainOf(s truing.Suit) *Plain {
	r := s.Back.Report()
	out := &Plain{
		Grain: say.Degrees(s.BackGrain), Neck: say.MM(r.Neck), Armhole: say.MM(r.Armhole), Dart: say.MM(r.DartIntake),
		Facing:  say.MM(r.Facing),
		Opening: say.MM(draft.Opening(s.Front, s.Back)),
	}
	out.Walked = Walked(s)
	for _, j := range draft.Joined(s.Front, s.Back) {
		out.Joined = append(out.Joined, Join{j.Name, say.Degrees(j.Angle())})
	}
	return out
}

// Walked lays the seams of a suit along each other.
func Walked(s truing.Suit) []Walk {
	var out []Walk
	for _, k := range draft.Walked(s.Front, s.Back) {
		out = append(out, Walk{k.Name, say.MM(k.Front), say.MM(k.Back)})
	}
	return out
}

// ReportPlain prints the figures of the plain piece of a suit.
func ReportPlain(w io.Writer, s truing.Suit) {
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

// ReportAllowances prints what is cut outside the seams.
func ReportAllowances(w io.Writer, a truing.Allowances) {
	fmt.Fprintf(w, "  %-13s%s, side seams %s\n", "Allowances", say.Length(a.Seam), say.Length(a.Side))
}

// Walk is a seam that both pieces have, and how long it is on either.
type Walk struct {
	Name  string  `json:"name"`
	Front float64 `json:"front_mm"`
	Back  float64 `json:"back_mm"`
}

// Join is the angle of a line over a closed seam; 180 runs on without a corner.
type Join struct {
	Name  string  `json:"name"`
	Angle float64 `json:"angle_deg"`
}
