package toile

import (
	"strings"

	"cowl/cmd/cowl/internal/sided"
	"cowl/mesh/draft"
)

// overview is what a sheet of toiles is made of.
type overview struct {
	book     Book
	all      []held
	placings int
}

// ofBoth are words about toiles at the front, as they are said where some are backs.
var ofBoth = strings.NewReplacer("centre front", "centre front or back", "Reach ahead of the form",
	"Reach off the form")

// says turns words about toiles at the front into those about the toiles of the sheet, which
// may all be backs, or some. What the user has written stays.
func (s overview) says(text string) string {
	backs := 0
	names := sided.Names{s.book.Path, s.book.folder()}
	for _, h := range s.all {
		if h.worn == draft.AtBack {
			backs++
		}
		names = append(names, h.Fabric, h.Note)
	}
	switch backs {
	case 0:
		return text
	case len(s.all):
		return names.Say(text, draft.AtBack)
	}
	return names.By(ofBoth.Replace, text)
}
