package study

import (
	"fmt"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// handFacts says what the hands do alike in all rows.
func handFacts(s style.Style, steady bool) []page.Fact {
	folds := fmt.Sprintf("%d by every hand", s.Hang.Folds)
	switch {
	case s.Hang.Folds == 0:
		folds = "none: the cloth falls"
	case s.Hang.Folds == drape.Auto && steady:
		folds = "as many as the draft asks for, else two, as far as they fit"
	case s.Hang.Folds == drape.Auto:
		folds = "what the first hand of each row finds by trying"
	}
	edge := "as it falls"
	if s.Hang.EdgeDepth != draft.Auto {
		edge = "set " + say.Length(s.Hang.EdgeDepth) +
			" below the front neck point by the first hand of each row; the others take up as much"
	}
	waist := map[drape.Waist]string{drape.SidesPinned: "pinned at the side seams", drape.Pinned: "pinned all round",
		drape.FreeWaist: "free"}[s.Held()]
	return []page.Fact{{Name: "Folds laid", Value: folds}, {Name: "Edge", Value: edge}, {Name: "Waist", Value: waist}}
}

// held lists what all cuts of a study share; leave out what it varies.
func held(s style.Style, a Spec, without ...string) []page.Fact {
	p, err := s.Cowl()
	facts := []page.Fact{{Name: "Style", Value: s.Name}, {Name: "Cut for", Value: s.ForWhom()}}
	point := s.Cut.CowlPoint
	if err == nil {
		facts = append(facts, page.Fact{Name: "Extension", Value: say.Length(p.Extension) + " a half"})
		point = p.CowlPoint
	}
	if err == nil && s.Lines == nil {
		facts = append(facts,
			page.Fact{Name: "Dart closed", Value: fmt.Sprintf("%.0f %%", p.Added.DartShare*100)},
			page.Fact{Name: "Cloth added by", Value: s.Cut.How.String()},
		)
	}
	facts = append(facts,
		page.Fact{Name: "Cowl point", Value: say.Length(point) + " from the neck point"},
		page.Fact{Name: "Facing", Value: say.Length(s.Cut.Facing)},
		page.Fact{Name: "Grain", Value: fmt.Sprintf("%.4g° from the centre front to the warp", say.Degrees(s.Cut.Grain))},
		page.Fact{Name: "Fabric", Value: s.Fabric.String()},
	)
	facts = append(facts, handFacts(s, a.steady())...)
	facts = append(facts,
		page.Fact{Name: "Hung", Value: map[bool]string{true: "free, from the cowl points",
			false: "on the dress form"}[s.Hang.Free]},
		page.Fact{Name: "Lattice", Value: fmt.Sprintf("%.0f mm", s.Hang.Spacing*1000)},
		page.Fact{Name: "Placings", Value: fmt.Sprintf("%d hands, seeds %d to %d", a.Placings, s.Hang.Seed,
			s.Hang.Seed+uint64(a.Placings)-1)},
	)
	return dropped(facts, without)
}

// dropped leaves out facts by name.
func dropped(facts []page.Fact, names []string) []page.Fact {
	var out []page.Fact
	for _, f := range facts {
		keep := true
		for _, n := range names {
			keep = keep && f.Name != n
		}
		if keep {
			out = append(out, f)
		}
	}
	return out
}

// factOf is the fact that a quantity makes differ from cut to cut.
var factOf = map[string]string{"size": "Cut for", "extension": "Extension", "grain": "Grain",
	"cowl-point": "Cowl point",
	"facing":     "Facing",
	"dart-share": "Dart closed", "folds": "Folds laid", "edge-depth": "Edge"}

// heldFacts lists what all cuts of a sweep share.
func (p *plan) heldFacts() []page.Fact {
	var without []string
	for _, f := range p.vary {
		without = append(without, factOf[f.name])
	}
	if len(p.spec.Fabrics) > 0 {
		without = append(without, "Fabric")
	}
	if first := p.vary[0].name; first == "extension" || first == "dart-share" || p.varies("size") {
		without = append(without, "Extension", "Dart closed")
	}
	out := held(p.style, p.spec, without...)
	if p.varies("size") && !p.varies("extension") {
		out = append(out, page.Fact{Name: "Each size", Value: "drafted anew, " +
			p.style.ExtensionHeld(p.spec.Hold == HoldDrop)})
	}
	return out
}
