package main

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/mesh/truing"
)

// draftReport prints the figures of the flat piece.
func draftReport(w io.Writer, s style.Style, p draft.Cowl) {
	r := p.Report()
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	fmt.Fprintf(w, "%s, for %s\n\n", s.Name, s.ForWhom())
	w = sided.To(w, p.Worn)
	if line := s.SizeLine(); line != "" {
		row("Body", "%s", line)
	}
	if s.Lines != nil {
		row("Dart", "%s left open at the waist", say.Length(r.IntakeLeft))
		row("Extension", "%s a half, as the piece has it", say.Length(r.Extension))
	} else {
		row("Dart", "%.1f° wide, intake %s; %.0f %% closed into the cowl, %s left %s at the waist",
			say.Degrees(r.DartAngle), say.Length(r.DartIntake), r.DartShare*100, say.Length(r.IntakeLeft), leftAs(p))
		row("Extension", "%s a half: %s from the dart, %s", say.Length(r.Extension), say.Length(r.FromDart), beyond(p))
	}
	row("Half edge", "%s from the centre front to the cowl point, %s down the shoulder", say.Length(r.HalfEdge),
		say.Length(p.CowlPoint))
	row("Edge drop", "%s (hanging curve) to %s (V) below the cowl points, in an upright plane; over the bust less",
		say.Length(r.DropChain), say.Length(r.DropV))
	row(ruler.Capital(p.Worn.Centre()), "%s from edge to waist, %s of it surplus that goes into folds",
		say.Length(r.CFLength), say.Length(r.SurplusCF))
	row("Facing", "%s deep", say.Length(p.Facing))
	strapOf(s, p).report(row)
	treatmentOf(s, p).report(row)
	row("Seams", "shoulder %s, armhole %s, side %s, half waist %s", say.Length(r.Shoulder), say.Length(r.Armhole),
		say.Length(r.Side), say.Length(r.Waist))
	if r.Hem > 0 {
		row("Hem", "%s below the waist, half hem %s; side %s to the waist", say.Length(r.Hem), say.Length(r.HemLine),
			say.Length(p.SideToWaist()))
	}
	row("Grain", "warp at %.1f° to the centre front", say.Degrees(p.Grain))
	row("Cloth", "%s across × %s along the grain, with %s allowance", say.Length(r.Across), say.Length(r.Along),
		say.Length(p.Trim))
	row("Area", "%v %s, facing %s, no allowance", p.Worn, say.Area(r.AreaFront, 0), say.Area(r.AreaFacing, 0))
}

// leftAs says what becomes of the dart that is left.
func leftAs(p draft.Cowl) string {
	if p.Eased > 0 {
		return "unsewn as ease"
	}
	return "open"
}

// beyond says what was added beyond the dart, and how.
func beyond(p draft.Cowl) string {
	by := ""
	switch {
	case p.Added.Amount == 0:
		return "nothing beyond it"
	case p.How == draft.Slash:
		by = fmt.Sprintf("%d slashes opened %s each on the centre front", p.Slashes, say.Length(p.Added.Amount))
	case p.How == draft.Pivot:
		by = fmt.Sprintf("pivoting %.1f° about the waist", say.Degrees(p.Added.Amount))
	case p.How == draft.Shift:
		by = fmt.Sprintf("shifting %s", say.Length(p.Added.Amount))
	}
	if p.Pleats != nil {
		by += ", which makes up for what the pleats draw in"
	}
	return fmt.Sprintf("%s by %s", say.Length(p.Added.FromOther), by)
}

// draftJSON holds the figures of a piece under the keys of cowl draft --json.
type draftJSON struct {
	Name       string  `json:"name"`
	For        string  `json:"for"`
	Worn       string  `json:"side,omitempty"` // back; else the front
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
	Strap     *strapJSON     `json:"strap,omitempty"` // of a back cowl

	Back     *backJSON    `json:"back,omitempty"`
	Front    *backJSON    `json:"front,omitempty"` // plain, of a back cowl
	Openings *openingJSON `json:"openings,omitempty"`
}

// plain puts in the figures of the plain piece of a suit.
func (d *draftJSON) plain(s truing.Suit) {
	if s.Back.Worn() == draft.AtFront {
		d.Front = backFigures(s)
		return
	}
	d.Back = backFigures(s)
}

// sideKey is how files name the side that a cowl is worn at; empty: the front.
func sideKey(s draft.Side) string {
	if s == draft.AtFront {
		return ""
	}
	return s.String()
}

// draftFigures returns the figures of p.
func draftFigures(s style.Style, p draft.Cowl) draftJSON {
	const mm = 1000
	r := p.Report()
	return draftJSON{
		Name: s.Name, For: s.ForWhom(), Worn: sideKey(p.Worn),
		DartAngle: say.Degrees(r.DartAngle), DartIntake: r.DartIntake * mm, DartShare: r.DartShare,
		IntakeLeft: r.IntakeLeft * mm,
		Extension:  r.Extension * mm, FromDart: r.FromDart * mm, FromOther: r.FromOther * mm, How: p.How.String(),
		Slashes:  p.Slashes,
		HalfEdge: r.HalfEdge * mm, CowlPoint: p.CowlPoint * mm, Facing: p.Facing * mm, DropCurve: r.DropChain * mm,
		DropV:    r.DropV * mm,
		CFLength: r.CFLength * mm, SurplusCF: r.SurplusCF * mm,
		Shoulder: r.Shoulder * mm, Armhole: r.Armhole * mm, Side: r.Side * mm, HalfWaist: r.Waist * mm, Hem: r.Hem * mm,
		HalfHem: r.HemLine * mm,
		Grain:   say.Degrees(p.Grain), Trim: p.Trim * mm, Across: r.Across * mm, Along: r.Along * mm,
		AreaFront: r.AreaFront * mm * mm, AreaFacing: r.AreaFacing * mm * mm,
		Treatment: treatmentOf(s, p), Strap: strapOf(s, p),
	}
}
