// Package drafted tells of a cowl as it is drafted, of which nothing hangs yet: its figures for
// programs and for people, those of its strap and of the plain piece that it is sewn to, whether
// one gets into both, and the notes of its sheet. Start at [Of] and [Report].
package drafted

import (
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/treatment"
	"cowl/mesh/draft"
	"cowl/mesh/truing"
)

// Figures are those of a piece under the keys of cowl draft --json: lengths in mm, areas in mm²,
// angles in degrees.
type Figures struct {
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

	Treatment *treatment.Figures `json:"treatment,omitempty"`
	Strap     *Strap             `json:"strap,omitempty"` // of a back cowl

	Back     *Plain    `json:"back,omitempty"`
	Front    *Plain    `json:"front,omitempty"` // plain, of a back cowl
	Openings *Openings `json:"openings,omitempty"`
}

// AddPlain puts in the figures of the plain piece of a suit.
func (d *Figures) AddPlain(s truing.Suit) {
	if s.Back.Worn() == draft.AtFront {
		d.Front = plainOf(s)
		return
	}
	d.Back = plainOf(s)
}

// Of returns the figures of p, the front of s, without allowances, plain piece and openings.
func Of(s style.Style, p draft.Cowl) Figures {
	const mm = 1000
	r := p.Report()
	return Figures{
		Name: s.Name, For: s.ForWhom(), Worn: sided.Key(p.Worn),
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
		Treatment: treatment.Of(s, p), Strap: StrapOf(s, p),
	}
}
