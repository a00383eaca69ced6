package drafted

import (
	"fmt"
	"io"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/treatment"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
)

// Report prints the figures of the flat piece p, the front of s.
func Report(w io.Writer, s style.Style, p draft.Cowl) {
	r := p.Report()
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	fmt.Fprintf(w, "%s, for %s\n\n", s.Name, s.ForWhom())
	w = sided.To(w, p.Worn)
	if line := s.SizeLine(); line != "" {
		row("Body", "%s", line)
	}
	if s.Lines != nil {
		row("Dart", "%s left open at the waist", say.Length(r.IntakeLeft))
		row("Extension", "%s a half, as the piece has it", say.Length(r.Extension))
	} else {
		row("Dart", "%.1f° wide, intake %s; %.0f %% closed into the cowl, %s left %s at the waist",
			say.Degrees(r.DartAngle), say.Length(r.DartIntake), r.DartShare*100, say.Length(r.IntakeLeft), leftAs(p))
		row("Extension", "%s a half: %s from the dart, %s", say.Length(r.Extension), say.Length(r.FromDart), beyond(p))
	}
	row("Half edge", "%s from the centre front to the cowl point, %s down the shoulder", say.Length(r.HalfEdge),
		say.Length(p.CowlPoint))
	row("Edge drop", "%s (hanging curve) to %s (V) below the cowl points, in an upright plane; over the bust less",
		say.Length(r.DropChain), say.Length(r.DropV))
	row(ruler.Capital(p.Worn.Centre()), "%s from edge to waist, %s of it surplus that goes into folds",
		say.Length(r.CFLength), say.Length(r.SurplusCF))
	row("Facing", "%s deep", say.Length(p.Facing))
	StrapOf(s, p).Report(row)
	treatment.Of(s, p).Report(row)
	row("Seams", "shoulder %s, armhole %s, side %s, half waist %s", say.Length(r.Shoulder), say.Length(r.Armhole),
		say.Length(r.Side), say.Length(r.Waist))
	if r.Hem > 0 {
		row("Hem", "%s below the waist, half hem %s; side %s to the waist", say.Length(r.Hem), say.Length(r.HemLine),
			say.Length(p.SideToWaist()))
	}
	row("Grain", "warp at %.1f° to the centre front", say.Degrees(p.Grain))
	row("Cloth", "%s across × %s along the grain, with %s allowance", say.Length(r.Across), say.Length(r.Along),
		say.Length(p.Trim))
	row("Area", "%v %s, facing %s, no allowance", p.Worn, say.Area(r.AreaFront, 0), say.Area(r.AreaFacing, 0))
}

// leftAs says what becomes of the dart that is left.
func leftAs(p draft.Cowl) string {
	if p.Eased > 0 {
		return "unsewn as ease"
	}
	return "open"
}

// beyond says what was added beyond the dart, and how.
func beyond(p draft.Cowl) string {
	by := ""
	switch {
	case p.Added.Amount == 0:
		return "nothing beyond it"
	case p.How == draft.Slash:
		by = fmt.Sprintf("%d slashes opened %s each on the centre front", p.Slashes, say.Length(p.Added.Amount))
	case p.How == draft.Pivot:
		by = fmt.Sprintf("pivoting %.1f° about the waist", say.Degrees(p.Added.Amount))
	case p.How == draft.Shift:
		by = fmt.Sprintf("shifting %s", say.Length(p.Added.Amount))
	}
	if p.Pleats != nil {
		by += ", which makes up for what the pleats draw in"
	}
	return fmt.Sprintf("%s by %s", say.Length(p.Added.FromOther), by)
}

// Bounds returns how far below the shoulder neck points the edge of the flat
// piece would hang alone in an upright plane, m: in a hanging curve and in a V.
func Bounds(p draft.Cowl) (curve, v float64) {
	r := p.Report()
	down := p.Block.Neck.Y - p.Block.CowlPoint(p.CowlPoint).Y
	return down + r.DropChain, down + r.DropV
}
