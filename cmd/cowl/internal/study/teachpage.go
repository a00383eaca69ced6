package study

import (
	"fmt"
	"math"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/page"
	"cowl/materials"
	"cowl/mesh/draft"
	"cowl/mesh/ruler"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/lab"
)

// teachPage makes the class sheet: explanation and figures on the first page,
// questions and answers on the second.
func teachPage(p *plan, rs []caseResult) page.Page {
	f := p.style.Fabric
	angles := func(c caseResult) string { return c.Name }
	return page.Page{
		Title: "Grain: warp, weft and bias in a cowl",
		Blocks: []page.Block{
			{Aside: page.Weave{Title: "warp, weft and true bias"}, Text: []string{
				"Warp yarns run along the cloth, beside the selvedge. Weft yarns cross them from selvedge to selvedge. Bias is " +
					"any direction between the two; true bias lies at 45° to both.",
				"Pulled along a yarn, cloth hardly gives: the yarn itself would have to stretch. Pulled on the bias, no yarn " +
					"need stretch: at every crossing the two yarns turn a little, the squares become diamonds, and the cloth " +
					"grows longer and narrower.",
				"Below, one and the same cowl front is laid on the cloth at five angles between its centre front and the warp, " +
					"then hung.",
			}},
			{Heading: "On the cloth: upright lines are warp, the dashed line is the centre front", Cards: layouts(rs),
				Dense: true},
			{Heading: "Hung: front view, same camera, same light, the first hand", Cards: plainCards(rs, angles), Dense: true},
			{Heading: "In figures", Table: teachTable(p, rs)},
			{Heading: "Questions", List: teachQuestions(), NewPage: true},
			{Heading: "Answers", List: teachAnswers(p, rs)},
			{Heading: "How this was made", Text: []string{
				fmt.Sprintf("%s, cut for %s, in %s (%s). Extension %s a half, cowl point %s from the neck point. Every angle "+
					"is placed by the same %d hands, which lay %s, on a lattice of %.0f mm.",
					p.style.Name, p.style.ForWhom(), f.Title, f, say.Length(rs[bias].cowl.Extension),
					say.Length(rs[bias].cowl.CowlPoint), p.spec.Placings, laidWords(rs[bias]), p.style.Hang.Spacing*1000),
				statistic(p.spec.Placings, len(rs)-1),
				grainCaution,
			}},
		},
		Cautions: []string{say.Caution, "Let bias hang for 24 to 48 hours before you level a hem: the slow growth of " +
			"hanging bias is not in these figures."},
		Foot: foot(p.spec),
	}
}

// plainCards shows pictures with the angle alone: the figures are in the table.
func plainCards(rs []caseResult, title func(caseResult) string) []page.Card {
	out := cards(rs, title)
	for i := range out {
		out[i].Lines = nil
	}
	return out
}

// biasLoad is the load of the strip of the table, N per m width: 5 gf on a
// centimetre, the load of the simplest bias test.
const biasLoad = 5 * materials.GramForcePerCm

// stretchAlong returns how much a strip cut at an angle (rad) to the warp
// grows under pullLoad, %.
func stretchAlong(f materials.Fabric, angle float64) float64 {
	return 100 * biasLoad / lab.OffAxisModulus(drape.Stiffness(f), angle)
}

// teachTable sets the angles side by side.
func teachTable(p *plan, rs []caseResult) *page.Table {
	t := &page.Table{Head: []string{"Centre front to warp"}}
	row := func(name string, cell func(caseResult) string) {
		cells := []string{name}
		for _, c := range rs {
			cells = append(cells, cell(c))
		}
		t.Rows = append(t.Rows, page.TableRow{Cells: cells})
	}
	for _, c := range rs {
		t.Head = append(t.Head, c.Name)
	}
	row("A strip along the centre front grows under 5 g a centimetre of width, %", func(c caseResult) string {
		return fmt.Sprintf("%.2g", stretchAlong(p.style.Fabric, c.style.Cut.Grain))
	})
	for _, m := range []*measure.Figure{keptFigure, depthFigure, reachFigure, dropFigure, countFigure, twistFigure} {
		row(m.Axis(), func(c caseResult) string { return cellOf(m, c) })
	}
	row("Cloth needed, across × along, "+string(ruler.Spoken()), func(c caseResult) string {
		if c.wrong != nil {
			return "–"
		}
		across, along := draft.Footprint(c.cowl.Outline, c.cowl.Grain, c.cowl.Trim)
		return fmt.Sprintf("%.0f × %.0f", spokenLength(across*100), spokenLength(along*100))
	})
	t.Note = fmt.Sprintf("± is the standard deviation over %d hands that place the same cut. Edge drop: below the "+
		"shoulder neck points. Twist: how far the left half is from the mirror image of the right.", p.spec.Placings)
	return t
}

// laidWords says how many folds are laid.
func laidWords(c caseResult) string {
	if n, _ := c.laid(); n > 0 {
		return say.Several(n, "fold")
	}
	return "no fold"
}

// teachQuestions are for the class.
func teachQuestions() []page.Answer {
	return []page.Answer{
		{Text: "In which direction does the cloth give most when it is pulled, and what moves inside the cloth?"},
		{Text: "Why must the centre front of a bias cowl be one straight line?"},
		{Text: "At 22.5° and 67.5° the centre front is equally far from the true bias. What is different between the two?"},
		{Text: "Compare folds and edge drop at 0°, 45° and 90°. Which differences are larger than what another hand " +
			"changes? What may you claim of the grain?"},
		{Text: "Which angle takes the least cloth, and what does the true bias cost?"},
		{Text: "How would you test the grain on a stand, so that a difference is the cloth's and not yours?"},
	}
}

// teachAnswers answer from the figures of this sheet.
func teachAnswers(p *plan, rs []caseResult) []page.Answer {
	f := p.style.Fabric
	along, across, on := stretchAlong(f, 0), stretchAlong(f, math.Pi/2), stretchAlong(f, math.Pi/4)
	return []page.Answer{
		{Text: fmt.Sprintf("On the true bias: %.2g %%, against %.2g %% along the warp and %.2g %% along the weft. The "+
			"yarns do not stretch; they turn at their crossings, and squares of cloth become diamonds.", on, along, across)},
		{Text: "It is the fold of the paper pattern: both halves mirror about it. On the true bias warp and weft lie " +
			"alike on both sides of it, so the halves give alike; a curved line would change its angle to the yarns on the " +
			"way, and give unevenly."},
		{Text: fmt.Sprintf("Which yarn the centre front leans to: the warp at 22.5°, the weft at 67.5°, and the cloth "+
			"skews to opposite sides. This fabric bends %.3g µN·m along the warp and %.3g along the weft, so the two are "+
			"not mirror images of each other.", materials.BendWarp.InUnits(f), materials.BendWeft.InUnits(f))},
		{Text: dropAnswer(p, rs)},
		{Text: clothAnswer(rs)},
		{Text: "Cut all pieces from one length and mark the warp on each. Let the same person place them, several times " +
			"each and in mixed order, without knowing which is which. Measure the edge drop every time, and compare means " +
			"against the spread. A difference smaller than the spread is no finding."},
	}
}

// dropAnswer reads the differences in drop.
func dropAnswer(p *plan, rs []caseResult) string {
	var clear []string
	for _, d := range teachDiffs(p, rs) {
		if d.Figure == dropFigure && d.Clear {
			clear = append(clear, fmt.Sprintf("at %s the edge drops %s", d.Second, dropFigure.Change(d.Mean)))
		}
	}
	const nothing = "Nothing may be claimed of the grain from these figures, neither that it matters nor that it does not"
	if len(clear) == 0 {
		return "Held against the true bias: " + noDifference + " of the edge drop at any angle. " + nothing + "."
	}
	return "Held against the true bias: " + strings.Join(clear, ", ") + "; elsewhere " + noDifference +
		". The hands do not explain that. " + nothing +
		": a difference in the figures of a program can come from the program. " + latticeLesson
}

// latticeLesson is how one finds out that a difference comes from the program.
const latticeLesson = "How one finds out: hang a cloth that has no grain, alike in all directions. On 8 mm its edge " +
	"dropped by up to 8 mm more at one angle than at another; what is no larger than that is the lattice's."

// clothAnswer reads the cloth that is needed.
func clothAnswer(rs []caseResult) string {
	least, area, on := "", math.Inf(1), 0.0
	for i, c := range rs {
		if c.wrong != nil {
			continue
		}
		across, along := draft.Footprint(c.cowl.Outline, c.cowl.Grain, c.cowl.Trim)
		if a := across * along; a < area {
			least, area = c.Name, a
		}
		if i == bias {
			on = across * along
		}
	}
	return fmt.Sprintf("%s takes the least: a rectangle of %s. The true bias takes %s, %.0f %% more, and the corners "+
		"left over are hard to use.", least, say.Area(area, 0), say.Area(on, 0), 100*(on/area-1))
}

// bias is the place of 45° among the angles.
const bias = 2
