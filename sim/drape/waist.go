package drape

import (
	"fmt"

	"cowl/mesh/limit"
)

// Waist says how the waist of the front is held.
type Waist int

// The ways to hold the waist.
const (
	SidesPinned Waist = iota // at the side seams only, as it is worn
	Pinned                   // all round, as on the stand
	FreeWaist                // nowhere: the front hangs from shoulder and underarm
)

// String returns the name used in reports and files.
func (w Waist) String() string {
	if w < SidesPinned || w > FreeWaist {
		return fmt.Sprintf("Waist(%d)", int(w))
	}
	return [...]string{"side", "pinned", "free"}[w]
}

// ParseWaist returns the Waist of a name that String gives.
func ParseWaist(name string) (Waist, error) {
	for w := SidesPinned; w <= FreeWaist; w++ {
		if w.String() == name {
			return w, nil
		}
	}
	return 0, fmt.Errorf("waist %q, want side, pinned, free or auto", name)
}

// checkWaist refuses to pin a waist all round that is no seam.
func (j Job) checkWaist() error {
	if j.Waist == Pinned && j.Cowl.Hem > 0 {
		return limit.Errorf("hold of the waist", "waist pinned all round, but the front goes on %v below it and has no "+
			"seam there to pin: let it hang with waist free or side, or let the front end at the waist with hem 0",
			limit.Metres(j.Cowl.Hem))
	}
	return nil
}
