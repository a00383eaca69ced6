package study

import (
	"fmt"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/style"
)

// missingFinding says if the sheet is incomplete.
func missingFinding(rs []caseResult) []string {
	if n := unsettled(rs); n > 0 {
		return []string{fmt.Sprintf("%d drapes gave no result and are left out of all figures.", n)}
	}
	return nil
}

// weakCloths warns of fabrics that are not measured.
func weakCloths(rs []caseResult) []string {
	var names []string
	for _, c := range rs {
		if style.LeastKnown(c.style.Fabric).String() == "memory" {
			names = append(names, c.style.Fabric.Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{"From memory, a starting value and never evidence: " + strings.Join(names, ", ") +
		". Do not buy cloth on them; cowl swatch measures yours."}
}

// grainCaution is what keeps a sheet from speaking of the grain.
const grainCaution = "No effect of grain may be claimed from these figures unless it is larger than what the " +
	"lattice does. The lattice turns with the grain, and shows a little: two made-up cloths that bend, shear and pull " +
	"alike in all directions kept the same two laid folds at 0, 22.5, 45, 67.5 and 90° on 8 mm, but in the mean of " +
	"five hands the edge dropped by up to 8 mm more at one angle than at another, and the first fold was up to 8 mm " +
	"deeper. Cloth like that has no grain."

// cautionsOf are the cautions at the end of a sheet.
func cautionsOf(s style.Style) []string {
	out := []string{
		say.Caution,
		"The folds of a cowl are laid by hand. The figures say how many of the laid ones the cloth keeps, and how they " +
			"then lie; another hand may lay others, and the lattice has its say too.",
		"± is the standard deviation over the placings: what another hand changes. It does not hold the error of the " +
			"model, which no real cowl has been measured against yet.",
	}
	if s.Hang.Spacing > 0.0081 {
		out = append(out, fmt.Sprintf("A lattice of %.0f mm is coarse: good for a trend, not for a figure. Repeat what "+
			"matters with --spacing 8mm or finer.", s.Hang.Spacing*1000))
	}
	return out
}

// foot says how the sheet was made.
func foot(a Spec) string {
	return fmt.Sprintf("Made by cowl %s. Every row can be hung again from its file in styles; all figures are in "+
		"table.csv (means), placings.csv (each drape) and result.json. Physics %s.", a.Verb, a.Physics)
}
