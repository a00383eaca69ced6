package pdf

import (
	"fmt"
	"slices"
	"strings"

	"cowl/mesh/paper"
	"cowl/mesh/ruler"
)

// allowanceFacts says how wide the allowances are, edges of the same width
// together.
func allowanceFacts(p paper.Piece) []string {
	var widths []float64
	names := map[float64][]string{}
	for _, e := range p.Edges {
		name := strings.TrimPrefix(strings.TrimPrefix(e.Name, "left "), "right ")
		if _, ok := names[e.Allowance]; !ok {
			widths = append(widths, e.Allowance)
		}
		if !slices.Contains(names[e.Allowance], name) {
			names[e.Allowance] = append(names[e.Allowance], name)
		}
	}
	if len(widths) == 1 {
		return []string{fmt.Sprintf("Allowance %s all round", ruler.Spoken().Length(widths[0]))}
	}
	var out []string
	for _, w := range widths {
		out = append(out, fmt.Sprintf("Allowance %s: %s", ruler.Spoken().Length(w), strings.Join(names[w], ", ")))
	}
	return out
}

// has reports whether any piece has a line of the kind.
func has(pieces []paper.Piece, k paper.Kind) bool {
	for _, p := range pieces {
		for _, l := range p.Lines {
			if l.Kind == k {
				return true
			}
		}
	}
	return false
}

// darts reports whether the pieces have darts that were left open, and others.
func darts(pieces []paper.Piece) (left, whole bool) {
	for _, p := range pieces {
		for _, l := range p.Lines {
			open := strings.HasSuffix(l.Name, "left open")
			left, whole = left || l.Kind == paper.Dart && open, whole || l.Kind == paper.Dart && !open
		}
	}
	return left, whole
}

// minding lists what spoils a cowl if it is not minded: common practice of
// cutting on the bias.
func minding(pieces []paper.Piece) []string {
	out := []string{
		"Cut a test first, in cloth of the same weight and hand as the good one. Cloth that only weighs the same falls " +
			"differently.",
		"Cut each piece whole, in a single layer, right side up. A fold hides a shifted grain, and two layers creep.",
		"Lay the grain line along the selvedge with a ruler, never by eye. See that warp and weft cross at a right angle " +
			"before anything is cut; pull the cloth square if they do not.",
		"The two sides of a bias piece are not the same: one lies nearer the warp, the other nearer the weft. They may " +
			"stretch and fold differently. Do not even them out before the cloth has hung.",
		"Stay the shoulders: sew a strip of selvedge or a narrow tape, cut to the length of the seam on paper, into each " +
			"shoulder seam.",
		"Let it hang for 24 to 48 hours before it is hemmed, and again after seaming; 48 for heavy crepe and satin. Bias " +
			"grows under its own weight.",
	}
	cowl := pieces[0].Worn // a suit begins with its cowl
	if has(pieces, paper.Fold) {
		out = append(out, "Put no interlining into the self-facing: it must roll with the edge. If it rolls out in wear, "+
			"sew a small covered weight of 5 to 15 g to it at "+cowl.Centre()+".")
	}
	return out
}

// steps lists the work in its order.
func steps(pieces []paper.Piece) []string {
	cowl := pieces[0].Worn
	out := []string{
		"Print the pattern, measure the test square, join the pages, cut out the paper. Press the cloth and straighten " +
			"its ends on a drawn thread.",
		"Lay the pieces on one layer, grain lines along the selvedge, and weight them rather than pin them.",
		cowl.Say("Mark notches, centre line and bust points, and run a thread along the centre line while the cloth lies " +
			"flat."),
		"Cut with long strokes without lifting the cloth. Lay narrow tape along armholes and other bias edges before you " +
			"move it.",
		"Hang it up by its shoulders for a day or two. Lay it back on the paper, note how far it grew, and mark the " +
			"seams anew.",
	}
	for _, p := range pieces {
		out = append(out, p.Steps...)
	}
	left, whole := darts(pieces)
	if whole {
		out = append(out, "Stitch the darts and press them to the centre.")
	}
	if left {
		out = append(out, cowl.Say("Stitch what is left of the front's dart, or pleat or ease it into the waist: try "+
			"which on the test piece."))
	}
	if has(pieces, paper.Fold) {
		out = append(out, cowl.Say("Fold the self-facing in along the cowl edge without pressing it sharp. Wrap its ends "+
			"round the back shoulder and catch them in the shoulder seam, so that the seam cannot slip back."))
	}
	return append(out,
		"Sew the shoulders with their stay, then the side seams, with a stitch that gives: a narrow zigzag, or the cloth "+
			"held a little taut.",
		"Try it on over the head, arms down, then leaning forward. Look for gaping, for the wrong side showing, for a "+
			"fold that turns to one side.",
		"Let it hang again, level the lower edge from the floor, and hem it.",
	)
}
