package measure

import (
	"fmt"
	"strings"

	"cowl/mesh/ruler"
	"cowl/sim/drape"
)

// Halved says what the last halving of the spacing moved; empty: nothing was halved.
func Halved(o *drape.Outcome) string { return HalvedIn(ruler.Spoken(), o) }

// HalvedIn is Halved in the units of a reader.
func HalvedIn(u ruler.Units, o *drape.Outcome) string {
	c := o.Coarser
	if c == nil {
		return ""
	}
	apart := Named("spacing_mm")
	text := fmt.Sprintf("%s → %s: ", apart.AmountIn(u, apart.Value(c)), apart.AmountIn(u, apart.Value(o)))
	text += moved(u, c, o, "edge_drop_mm") + "; " + moved(u, c, o, "deepest_fold_mm")
	if o.Kept == c.Kept && o.Extra == c.Extra {
		return text
	}
	return text + fmt.Sprintf("; laid folds kept %d → %d, folds nobody laid %d → %d: the finer counts", c.Kept, o.Kept,
		c.Extra, o.Extra)
}

// moved tells a figure of two outcomes.
func moved(u ruler.Units, from, to *drape.Outcome, key string) string {
	f := Named(key)
	return fmt.Sprintf("%s %s → %s", strings.ToLower(f.Name), f.besideIn(u, f.Value(from)), f.AmountIn(u, f.Value(to)))
}

// Sharpness says how far the figures of sharpness follow the lattice; empty: nothing
// speaks against them. A fold is drawn by its chords, so a radius under two spacings
// is that of the lattice as much as of the cloth.
func Sharpness(o *drape.Outcome) string {
	switch c := o.Coarser; {
	case o.FoldRadius == 0:
		return ""
	case c != nil && c.FoldRadius > 0:
		return Say(c, "; on {spacing_mm} a radius of {fold_radius_mm} and {kinks} sharp bends")
	case o.FoldRadius < 2*o.Spacing:
		return "; under two spacings both follow the lattice, --fine says how far"
	}
	return ""
}
