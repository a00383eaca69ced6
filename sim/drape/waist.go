package drape

import "fmt"

// Waist says how the waist of the front is held.
type Waist int

// The ways to hold the waist.
const (
	SidesPinned Waist = iota // at the side seams only, as it is worn
	Pinned                   // all round, as on the stand
)

// String returns the name used in reports and files.
func (w Waist) String() string {
	if w < SidesPinned || w > Pinned {
		return fmt.Sprintf("Waist(%d)", int(w))
	}
	return [...]string{"side", "pinned"}[w]
}

// ParseWaist returns the Waist of a name that String gives.
func ParseWaist(name string) (Waist, error) {
	for w := SidesPinned; w <= Pinned; w++ {
		if w.String() == name {
			return w, nil
		}
	}
	return 0, fmt.Errorf("waist %q, want side or pinned", name)
}
