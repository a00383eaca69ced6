package drafted

import (
	"fmt"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/paper/plot"
	"cowl/mesh/ruler"
	"cowl/mesh/truing"
)

// Sheet has title and notes of the sheet that p, the front of s, is drawn on.
func Sheet(s style.Style, p draft.Cowl) plot.Options {
	r := p.Report()
	notes := []string{
		"Cut for: " + s.ForWhom(),
		"Fabric: " + s.Fabric.Name,
		fmt.Sprintf("Half edge %s, extension %s a half", say.Length(r.HalfEdge), say.Length(r.Extension)),
	}
	if s.Lines == nil {
		notes[2] += fmt.Sprintf(", %s of it from the dart", say.Length(r.FromDart))
	}
	switch {
	case p.Eased > 0:
		notes = append(notes, fmt.Sprintf("Dart closed %.0f %%, %s left unsewn as ease at the waist", r.DartShare*100,
			say.Length(r.IntakeLeft)))
	case p.DartLeft == nil:
	case s.Lines != nil:
		notes = append(notes, fmt.Sprintf("Dart: %s left open at the waist", say.Length(r.IntakeLeft)))
	default:
		notes = append(notes, fmt.Sprintf("Dart closed %.0f %%, %s left open at the waist", r.DartShare*100,
			say.Length(r.IntakeLeft)))
	}
	if r.Hem > 0 {
		notes = append(notes, fmt.Sprintf("Hem %s below the waist, half hem %s", say.Length(r.Hem), say.Length(r.HemLine)))
	}
	if words := StrapOf(s, p).words(); words != "" {
		notes = append(notes, words)
	}
	return plot.Options{Title: s.Name, Notes: append(notes,
		fmt.Sprintf("Edge hangs %s to %s below the cowl points in an upright plane", say.Length(r.DropChain),
			say.Length(r.DropV)),
		fmt.Sprintf("Seams: shoulder %s, armhole %s, side %s, half waist %s", say.Length(r.Shoulder), say.Length(r.Armhole),
			say.Length(r.Side), say.Length(r.Waist)),
		fmt.Sprintf("Cloth: %s across, %s along the grain", say.Length(r.Across), say.Length(r.Along)),
	)}
}

// SuitSheet has title and notes of the sheet that all pieces of a suit are drawn on.
func SuitSheet(s style.Style, suit truing.Suit) plot.Options {
	r, b, cowl, plain := suit.Front.Report(), suit.Back.Report(), suit.Front.Worn, suit.Back.Worn()
	notes := []string{
		"Cut for: " + s.ForWhom(),
		fmt.Sprintf("Half edge %s, extension %s a half", say.Length(r.HalfEdge), say.Length(r.Extension)),
		fmt.Sprintf("%s seams: shoulder %s, armhole %s, side %s, half waist %s", ruler.Capital(cowl.String()),
			say.Length(r.Shoulder), say.Length(r.Armhole), say.Length(r.Side), say.Length(r.Waist)),
		fmt.Sprintf("%s: half neck %s, armhole %s, waist dart %s; shoulder and side as the cowl",
			ruler.Capital(plain.String()), say.Length(b.Neck), say.Length(b.Armhole), say.Length(b.DartIntake)),
		fmt.Sprintf("Neck opening %s round edge and %v neck", say.Length(draft.Opening(suit.Front, suit.Back)), plain),
	}
	if words := StrapOf(s, suit.Front).words(); words != "" {
		notes = append(notes, words)
	}
	return plot.Options{Title: s.Name, Notes: append(notes, "For: "+s.Fabric.Name)}
}
