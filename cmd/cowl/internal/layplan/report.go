package layplan

import (
	"fmt"
	"io"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/marker"
)

// Words are those of the picture.
func (p *Plan) Words() marker.Words {
	notes := []string{
		p.answer(),
		"Single layer, right side up, every grain line along the selvedge. " + p.napWords(),
	}
	if p.Shown.Joins() > 0 {
		notes = append(notes, "Orange dashes: join the corner along the straight grain before the piece is used; never a "+
			"seam down the centre.")
	}
	notes = append(notes, "Corners are drawn as the paper has them. What of a tip lies outside",
		"the thin line was not counted: clip it where it meets an edge or a piece.")
	notes = append(notes, "A lay by the draft, not by your cloth: measure its width, and test in real cloth first.")
	return marker.Words{Title: p.Style.Name + ": lay, 1:5", Notes: notes}
}

func (p *Plan) napWords() string {
	if p.Shown.Cloth.Nap {
		return "With nap: all tops lie the same way."
	}
	return "No nap: pieces may lie head over heels."
}

// answer says whether it fits and what it takes.
func (p *Plan) answer() string {
	if p.Err != nil {
		return fmt.Sprintf("Does not fit on %s.", p.widthWords())
	}
	join := ""
	if n := p.Shown.Joins(); n > 0 {
		join = fmt.Sprintf(", %s joined on along the straight grain", say.Several(n, "corner"))
	}
	return fmt.Sprintf("Fits on %s: %s long, %.0f %% waste%s.", p.widthWords(), say.Length(p.Shown.Length),
		p.Shown.Waste()*100, join)
}

func (p *Plan) widthWords() string {
	usable := say.Length(p.Shown.Cloth.Width)
	if p.Nominal == 0 {
		return usable + " between the selvedges"
	}
	return fmt.Sprintf("%s wide cloth (%s between the selvedges)", say.Round(p.Nominal), usable)
}

// Report prints the answer and the other widths and grains.
func (p *Plan) Report(w io.Writer) {
	var names []string
	for _, q := range p.Pieces {
		names = append(names, strings.ToLower(q.Name))
	}
	fmt.Fprintf(w, "%s, for %s: %s\n\n", p.Style.Name, p.Style.ForWhom(), strings.Join(names, ", "))
	fmt.Fprintf(w, "  %s\n", p.answer())
	if p.Err != nil {
		fmt.Fprintf(w, "  %v\n", p.Err)
	}
	if p.Joined != nil {
		fmt.Fprintf(w, "  With --join it fits: %s long, %.0f %% waste, %s joined on along the straight grain.\n",
			say.Length(p.Joined.Length), p.Joined.Waste()*100, say.Several(p.Joined.Joins(), "corner"))
	}
	fmt.Fprintf(w, "\n  On its grain, %.0f° to the %s:\n", say.Degrees(p.Pieces[0].Grain()), p.Style.Cut.Worn.Centre())
	for _, c := range p.Widths {
		fmt.Fprintf(w, "    %s\n", choiceWords(c))
	}
	p.cheapest(w)
	fmt.Fprintln(w, "\nPieces are dropped in every order; moving them by hand may save a little more. Widths are "+
		"nominal: measure the cloth.")
	fmt.Fprintln(w, say.Caution)
}

// choiceWords says what one width takes.
func choiceWords(c marker.Choice) string {
	if c.Err != nil {
		return fmt.Sprintf("%6s wide: does not fit", say.Round(c.Nominal))
	}
	join := ""
	if n := c.Marker.Joins(); n > 0 {
		join = fmt.Sprintf(", %s joined on", say.Several(n, "corner"))
	}
	return fmt.Sprintf("%6s wide: %8s long, %2.0f %% waste, %s of cloth%s", say.Round(c.Nominal),
		say.Length(c.Marker.Length), c.Marker.Waste()*100, say.Cloth(c.Bought()), join)
}

// cheapest prints what takes least cloth, on this grain and on best.
func (p *Plan) cheapest(w io.Writer) {
	own, ok := marker.Cheapest(p.Widths)
	if !ok {
		fmt.Fprintf(w, "  No standard width carries it on this grain.\n")
	} else {
		fmt.Fprintf(w, "  Least cloth on this grain: %s wide, %s.\n", say.Round(own.Nominal), say.Cloth(own.Bought()))
	}
	best, found := marker.Cheapest(p.Grains)
	if !found || ok && best.Bought() > own.Bought()-1e-9 {
		return
	}
	fmt.Fprintf(w, "  Least cloth on any grain: %s wide at %.0f°, %s long, %s. Another grain is another drape: hang "+
		"it first with cowl drape --grain %.0f.\n",
		say.Round(best.Nominal), say.Degrees(best.Grain), say.Length(best.Marker.Length), say.Cloth(best.Bought()),
		say.Degrees(best.Grain))
}
