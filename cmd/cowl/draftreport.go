package main

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// draftReport prints the figures of the flat piece. Lengths are centimetres.
func draftReport(w io.Writer, s style.Style, p draft.Piece) {
	r := p.Report()
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	fmt.Fprintf(w, "%s, for %s\n\n", s.Name, s.ForWhom())
	if line := s.SizeLine(); line != "" {
		row("Body", "%s", line)
	}
	if s.Lines != nil {
		row("Dart", "%.1f cm left open at the waist", say.CM(r.IntakeLeft))
		row("Extension", "%.1f cm a half, as the piece has it", say.CM(r.Extension))
	} else {
		row("Dart", "%.1f° wide, intake %.1f cm; %.0f %% closed into the cowl, %.1f cm left %s at the waist",
			say.Degrees(r.DartAngle), say.CM(r.DartIntake), r.DartShare*100, say.CM(r.IntakeLeft), leftAs(p))
		row("Extension", "%.1f cm a half: %.1f cm from the dart, %s", say.CM(r.Extension), say.CM(r.FromDart), beyond(p))
	}
	row("Half edge", "%.1f cm from the centre front to the cowl point, %.1f cm down the shoulder", say.CM(r.HalfEdge), say.CM(p.CowlPoint))
	row("Edge drop", "%.1f cm (hanging curve) to %.1f cm (V) below the cowl points, in an upright plane; over the bust less", say.CM(r.DropChain), say.CM(r.DropV))
	row("Centre front", "%.1f cm from edge to waist, %.1f cm of it surplus that goes into folds", say.CM(r.CFLength), say.CM(r.SurplusCF))
	row("Facing", "%.1f cm deep", say.CM(p.Facing))
	treatmentOf(s, p).report(row)
	row("Seams", "shoulder %.1f cm, armhole %.1f cm, side %.1f cm, half waist %.1f cm", say.CM(r.Shoulder), say.CM(r.Armhole), say.CM(r.Side), say.CM(r.Waist))
	if r.Hem > 0 {
		row("Hem", "%.1f cm below the waist, half hem %.1f cm; side %.1f cm to the waist", say.CM(r.Hem), say.CM(r.HemLine), say.CM(p.SideToWaist()))
	}
	row("Grain", "warp at %.1f° to the centre front", say.Degrees(p.Grain))
	row("Cloth", "%.1f cm across × %.1f cm along the grain, with %.1f cm allowance", say.CM(r.Across), say.CM(r.Along), say.CM(p.Trim))
	row("Area", "front %.0f cm², facing %.0f cm², no allowance", r.AreaFront*1e4, r.AreaFacing*1e4)
}

// leftAs says what becomes of the dart that is left.
func leftAs(p draft.Piece) string {
	if p.Eased > 0 {
		return "unsewn as ease"
	}
	return "open"
}

// beyond says what was added beyond the dart, and how.
func beyond(p draft.Piece) string {
	by := ""
	switch {
	case p.Added.Amount == 0:
		return "nothing beyond it"
	case p.How == draft.Slash:
		by = fmt.Sprintf("%d slashes opened %.1f cm each on the centre front", p.Slashes, say.CM(p.Added.Amount))
	case p.How == draft.Pivot:
		by = fmt.Sprintf("pivoting %.1f° about the waist", say.Degrees(p.Added.Amount))
	case p.How == draft.Shift:
		by = fmt.Sprintf("shifting %.1f cm", say.CM(p.Added.Amount))
	}
	if p.Pleats != nil {
		by += ", which makes up for what the pleats draw in"
	}
	return fmt.Sprintf("%.1f cm by %s", say.CM(p.Added.FromOther), by)
}

// draftJSON holds the figures of a piece under the keys of cowl draft --json.
type draftJSON struct {
	Name       string  `json:"name"`
	For        string  `json:"for"`
	DartAngle  float64 `json:"dart_angle_deg"`
	DartIntake float64 `json:"dart_intake_mm"`
	DartShare  float64 `json:"dart_share"`
	IntakeLeft float64 `json:"intake_left_mm"`
	Extension  float64 `json:"extension_mm"`
	FromDart   float64 `json:"extension_from_dart_mm"`
	FromOther  float64 `json:"extension_from_other_mm"`
	How        string  `json:"how"`
	Slashes    int     `json:"slashes"`
	HalfEdge   float64 `json:"half_edge_mm"`
	CowlPoint  float64 `json:"cowl_point_mm"`
	Facing     float64 `json:"facing_mm"`
	DropCurve  float64 `json:"drop_curve_mm"` // below the cowl points, hanging curve
	DropV      float64 `json:"drop_v_mm"`     // below the cowl points, V
	CFLength   float64 `json:"cf_length_mm"`
	SurplusCF  float64 `json:"surplus_cf_mm"`
	Shoulder   float64 `json:"shoulder_mm"` // cowl point to tip
	Armhole    float64 `json:"armhole_mm"`
	Side       float64 `json:"side_mm"`
	HalfWaist  float64 `json:"half_waist_mm"`
	Hem        float64 `json:"hem_mm,omitempty"` // below the waist
	HalfHem    float64 `json:"half_hem_mm,omitempty"`
	Grain      float64 `json:"grain_deg"`
	Trim       float64 `json:"trim_mm"`
	Across     float64 `json:"cloth_across_mm"`
	Along      float64 `json:"cloth_along_mm"`
	Seam       float64 `json:"allowance_mm"`
	SideSeam   float64 `json:"side_allowance_mm"`
	AreaFront  float64 `json:"area_front_mm2"`
	AreaFacing float64 `json:"area_facing_mm2"`

	Treatment *treatmentJSON `json:"treatment,omitempty"`

	Back     *backJSON    `json:"back,omitempty"`
	Openings *openingJSON `json:"openings,omitempty"`
}

// draftFigures returns the figures of p.
func draftFigures(s style.Style, p draft.Piece) draftJSON {
	const mm = 1000
	r := p.Report()
	return draftJSON{
		Name: s.Name, For: s.ForWhom(),
		DartAngle: say.Degrees(r.DartAngle), DartIntake: r.DartIntake * mm, DartShare: r.DartShare, IntakeLeft: r.IntakeLeft * mm,
		Extension: r.Extension * mm, FromDart: r.FromDart * mm, FromOther: r.FromOther * mm, How: p.How.String(), Slashes: p.Slashes,
		HalfEdge: r.HalfEdge * mm, CowlPoint: p.CowlPoint * mm, Facing: p.Facing * mm, DropCurve: r.DropChain * mm, DropV: r.DropV * mm,
		CFLength: r.CFLength * mm, SurplusCF: r.SurplusCF * mm,
		Shoulder: r.Shoulder * mm, Armhole: r.Armhole * mm, Side: r.Side * mm, HalfWaist: r.Waist * mm, Hem: r.Hem * mm, HalfHem: r.HemLine * mm,
		Grain: say.Degrees(p.Grain), Trim: p.Trim * mm, Across: r.Across * mm, Along: r.Along * mm,
		AreaFront: r.AreaFront * mm * mm, AreaFacing: r.AreaFacing * mm * mm,
		Treatment: treatmentOf(s, p),
	}
}
