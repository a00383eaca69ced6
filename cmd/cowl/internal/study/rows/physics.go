package rows

import (
	_ "embed"
	"strings"
)

//go:embed physics.txt
var physics string

// Physics names the state of everything that decides how a cloth comes to lie:
// a hash of the source of draft, form, lattice, solver and reader. It is part of
// the key of a row, so that no row outlives the physics that made it, while a
// change of report or command line keeps them all. The test of this file tells
// when physics.txt is out of date and writes it with -update.
func Physics() string { return strings.TrimSpace(physics) }
