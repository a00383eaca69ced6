package main

import (
	"fmt"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/sim/drape/measure"
)

// tellNotes prints what reading a block or a piece from a file left out or straightened.
func tellNotes(c console.Console, s style.Style) {
	for _, n := range s.Notes {
		fmt.Fprintf(c.Err, "cowl: %s\n", s.Cut.Worn.Say(n))
	}
}

// tellDrafted says why a front is on paper as it was drafted; size names it in a nest.
func tellDrafted(c console.Console, size string, why error) {
	if why != nil {
		fmt.Fprintf(c.Err, "cowl: %sthe paper shows the lines of the draft, not trued over the seams: %s\n", size,
			ruler.Spoken().Words(why))
	}
}

// tellShort warns of an edge that cannot lie below the neck, before anything is hung.
func tellShort(c console.Console, p draft.Cowl) {
	if d := p.DeepestBelowNeck(); d < 0 {
		fmt.Fprintf(sided.To(c.Err, p.Worn), "cowl: the edge is too short to lie below the front neck point: it stays %s "+
			"above it at least; give it an extension of more than %s\n", say.Length(-d), say.Length(p.ExtensionToNeck()))
	}
}

// namesOf lists the names of files.
func namesOf(files []console.File) []string {
	var out []string
	for _, f := range files {
		out = append(out, f.Name)
	}
	return out
}

// edgeDrop is the figure that reports speak of most.
var edgeDrop = measure.Named("edge_drop_mm")
