package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/marker"
	"cowl/mesh/paper"
)

// words are those of the picture.
func (p *markerPlan) words() marker.Words {
	notes := []string{
		p.answer(),
		"Single layer, right side up, every grain line along the selvedge. " + p.napWords(),
	}
	if p.shown.Joins() > 0 {
		notes = append(notes, "Orange dashes: join the corner along the straight grain before the piece is used; never a "+
			"seam down the centre.")
	}
	notes = append(notes, "Corners are drawn as the paper has them. What of a tip lies outside",
		"the thin line was not counted: clip it where it meets an edge or a piece.")
	notes = append(notes, "A lay by the draft, not by your cloth: measure its width, and test in real cloth first.")
	return marker.Words{Title: p.style.Name + ": lay, 1:5", Notes: notes}
}

func (p *markerPlan) napWords() string {
	if p.shown.Cloth.Nap {
		return "With nap: all tops lie the same way."
	}
	return "No nap: pieces may lie head over heels."
}

// answer says whether it fits and what it takes.
func (p *markerPlan) answer() string {
	if p.err != nil {
		return fmt.Sprintf("Does not fit on %s.", p.widthWords())
	}
	join := ""
	if n := p.shown.Joins(); n > 0 {
		join = fmt.Sprintf(", %s joined on along the straight grain", say.Several(n, "corner"))
	}
	return fmt.Sprintf("Fits on %s: %s long, %.0f %% waste%s.", p.widthWords(), say.Length(p.shown.Length),
		p.shown.Waste()*100, join)
}

func (p *markerPlan) widthWords() string {
	usable := say.Length(p.shown.Cloth.Width)
	if p.nominal == 0 {
		return usable + " between the selvedges"
	}
	return fmt.Sprintf("%s wide cloth (%s between the selvedges)", say.Round(p.nominal), usable)
}

// report prints the answer and the other widths and grains.
func (p *markerPlan) report(w io.Writer) {
	var names []string
	for _, q := range p.pieces {
		names = append(names, strings.ToLower(q.Name))
	}
	fmt.Fprintf(w, "%s, for %s: %s\n\n", p.style.Name, p.style.ForWhom(), strings.Join(names, ", "))
	fmt.Fprintf(w, "  %s\n", p.answer())
	if p.err != nil {
		fmt.Fprintf(w, "  %v\n", p.err)
	}
	if p.joined != nil {
		fmt.Fprintf(w, "  With --join it fits: %s long, %.0f %% waste, %s joined on along the straight grain.\n",
			say.Length(p.joined.Length), p.joined.Waste()*100, say.Several(p.joined.Joins(), "corner"))
	}
	fmt.Fprintf(w, "\n  On its grain, %.0f° to the %s:\n", say.Degrees(p.pieces[0].Grain()), p.style.Cut.Worn.Centre())
	for _, c := range p.widths {
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
func (p *markerPlan) cheapest(w io.Writer) {
	own, ok := marker.Cheapest(p.widths)
	if !ok {
		fmt.Fprintf(w, "  No standard width carries it on this grain.\n")
	} else {
		fmt.Fprintf(w, "  Least cloth on this grain: %s wide, %s.\n", say.Round(own.Nominal), say.Cloth(own.Bought()))
	}
	best, found := marker.Cheapest(p.grains)
	if !found || ok && best.Bought() > own.Bought()-1e-9 {
		return
	}
	fmt.Fprintf(w, "  Least cloth on any grain: %s wide at %.0f°, %s long, %s. Another grain is another drape: hang "+
		"it first with cowl drape --grain %.0f.\n",
		say.Round(best.Nominal), say.Degrees(best.Grain), say.Length(best.Marker.Length), say.Cloth(best.Bought()),
		say.Degrees(best.Grain))
}

// markerJSON holds the figures of cowl lay --json.
type markerJSON struct {
	Name     string       `json:"name"`
	Pieces   []string     `json:"pieces"`
	Width    float64      `json:"width_mm,omitempty"`
	Usable   float64      `json:"usable_width_mm"`
	Nap      bool         `json:"nap"`
	Fits     bool         `json:"fits"`
	Why      string       `json:"why,omitempty"`
	Length   float64      `json:"length_mm"`
	Waste    float64      `json:"waste_percent"`
	Joins    int          `json:"joined_corners"`
	Widths   []choiceJSON `json:"widths"`
	Cheapest *choiceJSON  `json:"cheapest,omitempty"` // of every grain and width
}

type choiceJSON struct {
	Width  float64 `json:"width_mm"`
	Grain  float64 `json:"grain_deg"`
	Fits   bool    `json:"fits"`
	Length float64 `json:"length_mm"`
	Waste  float64 `json:"waste_percent"`
	Bought float64 `json:"cloth_mm2"`
	Joins  int     `json:"joined_corners"`
}

// figures returns the figures of the lay; lengths are 0 where it does not fit.
func (p *markerPlan) figures() markerJSON {
	out := markerJSON{
		Name: p.style.Name, Width: say.MM(p.nominal), Usable: say.MM(p.shown.Cloth.Width), Nap: p.shown.Cloth.Nap,
		Fits:   p.err == nil,
		Length: say.MM(p.shown.Length), Joins: p.shown.Joins(),
	}
	if p.err != nil {
		out.Why = p.err.Error()
	} else {
		out.Waste = p.shown.Waste() * 100
	}
	for _, q := range p.pieces {
		out.Pieces = append(out.Pieces, q.Name)
	}
	for _, c := range p.widths {
		out.Widths = append(out.Widths, choiceOf(c))
	}
	if best, ok := marker.Cheapest(p.grains); ok {
		c := choiceOf(best)
		out.Cheapest = &c
	}
	return out
}

func choiceOf(c marker.Choice) choiceJSON {
	out := choiceJSON{Width: say.MM(c.Nominal), Grain: math.Round(say.Degrees(c.Grain)*1e6) / 1e6, Fits: c.Err == nil}
	if c.Err == nil {
		out.Length, out.Waste, out.Bought, out.Joins = say.MM(c.Marker.Length), c.Marker.Waste()*100, c.Bought()*1e6,
			c.Marker.Joins()
	}
	return out
}

// markerPlan is the answer of cowl lay.
type markerPlan struct {
	style   style.Style
	pieces  []paper.Piece
	nominal float64         // m; 0: only the usable width was given
	shown   marker.Marker   // on the chosen width
	err     error           // why it does not fit there
	joined  *marker.Marker  // with a corner joined on, where it fits only so
	widths  []marker.Choice // on the grain of the style, standard widths
	grains  []marker.Choice // every grain on every width
}

// status is that of what was sought and missed where the pieces do not fit.
func (p *markerPlan) status() error {
	if p.err != nil {
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}
