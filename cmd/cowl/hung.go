package main

import (
	"time"

	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/treatment"
)

// hung is a drape with what it was made from, and what is told of it.
type hung struct {
	drawn.Drape
	took time.Duration
	turn bool // a turning picture is wanted

	asDrafted error // why its paper shows the lines of the draft; nil: it shows trued ones

	changes treatment.Changes // what treatments gave, as far as compared
}
