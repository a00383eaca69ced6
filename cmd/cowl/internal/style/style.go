// Package style holds what the user asks for: body, cut, fabric and how to
// hang. It comes from a style file in YAML, whose lengths end in their unit,
// and from flags that override it; every message about it says the field, the
// value, the allowed range and the line or flag it came from. Lengths are
// metres and angles radians inside. Start at Parse and Style.
package style

import (
	"maps"
	"slices"

	"cowl/materials"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r2"
)

// Style is one garment front and how it is to be hung.
type Style struct {
	Name string
	// of the chart, or draft.Auto: the chart's line at the bust; single measurements go before it
	Size    int
	Chart   *body.Chart         // of its own, never changed; nil: the built-in one
	Height  float64             // m, of the wearer; 0: that of the chart
	Body    body.Body           // measurements of its own; read them through Wearer
	Points  map[string][]r2.Vec // m, block of its own, see draft.FromPoints; nil: the block is drafted from the body
	Lines   *draft.Lines        // finished front of its own, see draft.FromLines; nil: the front is drafted from the block
	Cut     draft.Cut
	Closure draft.Closure    // opening to get in by, which the cloth hangs with closed
	Strap   draft.Strapping  // of a back cowl, or draft.Auto; read it through Strapped
	Stand   draft.Stand      // what is done on the stand after drafting
	Trims   []draft.TrimLine // lines along which surplus is cut off
	Fabric  materials.Fabric
	Hang    Hang
	Notes   []string // what reading block or piece from a file left out or straightened

	file  string            // name of the style file, for messages; empty: none
	taken map[string]bool   // fields of Body that were given
	from  map[string]string // field → "file:line" or "--flag"
}

// Hang says how the piece is hung.
type Hang struct {
	Spacing   float64     // m, between crossings of the lattice, or draft.Auto; read it through Lattice
	Seed      uint64      // which hand places the cloth
	Placings  int         // number of hands, of seeds Seed, Seed+1, …
	Folds     int         // that the hand lays, or drape.Auto
	EdgeDepth float64     // m below the front neck point that the edge is set to, or draft.Auto: as it falls
	Waist     drape.Waist // or draft.Auto; read it through Style.Held
	Fine      bool        // carry what has come to rest on to finer lattices; read it through Lattice
	Shake     bool        // say how hard a shake each fold survives
	Lean      float64     // rad, how far the wearer bends forward and up again; 0: not
	Free      bool        // no dress form: hang from the two cowl points
}

// Default is what an empty style file means: chart size 10 and a mid-depth
// cowl on the true bias.
func Default() Style {
	return Style{
		Name: "Unnamed style", Size: 10, Cut: draft.DefaultCut(), Strap: autoStrap, Stand: draft.DefaultStand(),
		Fabric: materials.Default(),
		Hang:   Hang{Spacing: draft.Auto, Folds: drape.Auto, EdgeDepth: draft.Auto, Waist: autoWaist, Seed: 1, Placings: 1},
		taken:  map[string]bool{}, from: map[string]string{},
	}
}

// Stands refuses a wearer for whom no form can be made. Who only cuts asks it too:
// a piece that is drafted can be hung.
func (s *Style) Stands() error {
	b, err := s.Wearer()
	if err != nil {
		return err
	}
	return s.placed(form.Check(b))
}

// Look is the spacing for a look, m: folds show, figures still follow the lattice.
const Look = 0.008

// Lattice returns the spacing on which the cloth is hung, m, and whether it is carried on
// to finer ones. Where that is left to the cloth it is, but for an edge that is set, which
// would not stay there, and for what would take many minutes: several hands, shakes and leaning.
func (h Hang) Lattice() (spacing float64, fine bool) {
	if h.Spacing != draft.Auto {
		return h.Spacing, h.Fine
	}
	return Look, h.Fine || h.Placings == 1 && !h.Shake && h.Lean == 0 && h.EdgeDepth == draft.Auto
}

// OnLook leaves no lattice to the cloth: many drapes are for a look unless they ask for more.
func (s *Style) OnLook() {
	if s.Hang.Spacing == draft.Auto {
		s.Hang.Spacing = Look
	}
}

// Job is what hangs p, the front of s, on the form of its wearer.
func (s *Style) Job(p draft.Cowl, f *form.Form) drape.Job {
	h := s.Hang
	spacing, fine := h.Lattice()
	return drape.Job{Cowl: p, Fabric: s.Fabric, Form: f, Free: h.Free, Folds: h.Folds, Waist: s.Held(), Fine: fine,
		Shake: h.Shake, Lean: h.Lean, SetEdge: h.EdgeDepth != draft.Auto, EdgeDepth: h.EdgeDepth, Spacing: spacing,
		Seed: h.Seed}
}

// Held is how the waist is held: as asked for, else at the sides, or nowhere where the
// front goes on to a hem.
func (s *Style) Held() drape.Waist {
	switch {
	case s.Hang.Waist != autoWaist:
		return s.Hang.Waist
	case s.Cut.Hem > 0:
		return drape.FreeWaist
	}
	return drape.SidesPinned
}

// autoWaist leaves the hold of the waist to the cut.
const autoWaist drape.Waist = draft.Auto

// Cowl drafts the flat piece. What keeps it from being cut is an error, and so is an
// edge that is to lie where no cutting brings it.
func (s *Style) Cowl() (draft.Cowl, error) {
	p, err := s.treated(nil)
	if err == nil {
		err = s.Job(p, nil).CheckEdge()
	}
	return p, s.located(err)
}

// OnPaper returns the front p of s, the Cowl or what a drape took up of it, as it is
// drawn on paper: trued over the seams, before it is on the stand. The cloth is hung by
// the lines of the draft, which lie within millimetres of them. A finished front stays
// as it is, and so does one of which no trued lines can be made, such as one whose trued
// lines miss a trim that was drawn for the draft: why says so, and is nil otherwise.
func (s *Style) OnPaper(p draft.Cowl) (q draft.Cowl, why error) {
	if s.Lines != nil {
		return p, nil
	}
	q, err := s.treated(draft.Cowl.Blended)
	if err == nil {
		q, err = q.TakenUp(p.Taken)
	}
	if err != nil {
		return p, s.located(err)
	}
	return q, nil
}

// TruedOnPaper returns a front that was trued on the cloth as it is drawn on paper. What
// was drawn by hand, a finished front or a trim, stays as it is, and so does a front that
// trued lines do not make: why says so, and is nil otherwise.
func (s *Style) TruedOnPaper(p draft.Cowl) (q draft.Cowl, why error) {
	if s.Lines != nil || len(s.Trims) > 0 {
		return p, nil
	}
	q, err := p.Blended()
	if err != nil {
		return p, err
	}
	return q, nil
}

// treated returns the piece, its lines drawn anew by draw where there is one, with what is
// done on the stand.
func (s *Style) treated(draw func(draft.Cowl) (draft.Cowl, error)) (draft.Cowl, error) {
	block, err := s.block()
	if err != nil {
		return draft.Cowl{}, err
	}
	p, err := s.flat(block)
	if err == nil && draw != nil {
		p, err = draw(p)
	}
	if err == nil {
		p, err = p.Treated(s.Stand, s.Trims...)
	}
	return p, err
}

// Fits refuses what cannot be hung of p, the front of s, on the form of its wearer.
func (s *Style) Fits(p draft.Cowl, f *form.Form) error { return s.located(s.Job(p, f).Check()) }

// flat returns the piece before it is on the stand.
func (s *Style) flat(b draft.Block) (draft.Cowl, error) {
	if s.Lines == nil {
		return draft.Draft(b, s.Cut)
	}
	if err := s.fixed(); err != nil {
		return draft.Cowl{}, err
	}
	return draft.FromLines(b, *s.Lines, s.Cut)
}

// block returns the block the piece is cut from.
func (s *Style) block() (draft.Block, error) {
	if err := s.checkSide(); err != nil {
		return draft.Block{}, err
	}
	if s.Points != nil {
		b, err := draft.FromPoints(s.Points)
		return b, s.locatedPoint(err)
	}
	b, err := s.Wearer()
	if err != nil {
		return draft.Block{}, err
	}
	block, err := draft.CowlFromBody(b, s.Cut.Worn)
	return block, s.located(err)
}

// Taken returns how many single measurements were given.
func (s *Style) Taken() int { return len(s.taken) }

// Clone returns a style that shares nothing with s that can be changed.
func (s *Style) Clone() Style {
	c := *s
	c.taken, c.from = maps.Clone(s.taken), maps.Clone(s.from)
	c.Trims = slices.Clone(s.Trims)
	return c
}
