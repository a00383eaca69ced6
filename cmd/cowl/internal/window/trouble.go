//go:build cgo

package window

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/style"
	"cowl/sim/drape"
)

// doubt is why a drape is not to be trusted, in the words of the window, and what helps.
type doubt struct {
	sign  string // how the warning of the outcome begins
	head  string
	words func(Units, *drape.Outcome) string
	cures []cure
}

// cure is a button that does what helps. Its label is empty where it cannot be done.
type cure struct {
	id    string
	label func(*App) string
	help  string
	do    func(*App)
}

// said is words that hold no figure.
func said(text string) func(Units, *drape.Outcome) string {
	return func(Units, *drape.Outcome) string { return text }
}

// doubts lists them; a test sees that every warning of a drape is among them.
var doubts = []doubt{
	{"the cloth has not come to rest", "Not at rest", said("The cloth has fallen as long as is tried and still moves. " +
		"Picture and figures are of one moment: another would show others."), []cure{fallOn, otherHand, finerLattice}},
	{"layers of cloth pass through", "Layers have crossed",
		said("Layers of the cloth have passed through each other, as no cloth does. " +
			"Figures of it are worth nothing."), []cure{otherHand, finerLattice}},
	{"a spot of the cloth has crumpled", "Crumpled",
		said("A spot of the cloth has crumpled into a knot that does not open again. " +
			"Figures of it are worth nothing."), []cure{otherHand, finerLattice}},
	{"the forces are not in balance", "Not at rest", said("The cloth stands still, but its forces are not in balance. " +
		"Figures of it are not to be trusted."), []cure{fallOn, otherHand, finerLattice}},
	{"the forces ran away", "Torn apart", said("The forces grew without end, and the reckoning was given up. " +
		"If a finer lattice does not help, the values of the fabric contradict each other."),
		[]cure{finerLattice, undoLast, otherCloth}},
	{"yarns change length by", "Stretched too far", func(_ Units, o *drape.Outcome) string {
		return fmt.Sprintf("Somewhere a yarn changes its length by %.0f %%: no woven cloth bears that. "+
			"The cut asks more of this cloth than it gives.", 100*o.MaxStrain)
	}, []cure{finerLattice, otherCloth}},
	{"the cloth lies up to", "Sunk into the form", func(u Units, o *drape.Outcome) string {
		return fmt.Sprintf("Somewhere the cloth lies %s inside the form, more than comes of the lattice alone.",
			u.Small(o.Inside))
	}, []cure{finerLattice, otherHand}},
	{"the edge is stretched by", "Edge too short", func(_ Units, o *drape.Outcome) string {
		return fmt.Sprintf("The edge is stretched by %.0f %%: it is too short to lie there. A longer extension lets it "+
			"fall.", 100*o.EdgeGrowth)
	}, []cure{longerEdge, undoLast}},
	{"the shoulder seams are stretched by", "Piece too small", func(_ Units, o *drape.Outcome) string {
		return fmt.Sprintf("The shoulder seams are stretched by %.0f %%: the piece is too small for the form.",
			100*o.ShoulderGrow)
	}, []cure{largerSize, undoLast}},
}

var (
	fallOn = cure{"fall", func(*App) string { return "Let it fall on" }, "Goes on from where the cloth hangs.",
		func(a *App) {
			p := a.pane()
			a.touch(p)
			// A hand that takes hold of nothing wakes the walk.
			p.live.Grab(offCloth, p.frame.Sheet.Pos[0])
			p.live.Drop()
		}}
	otherHand = cure{"hand", func(*App) string { return "Another hand" },
		"The same cloth is placed again, a little differently.", func(a *App) {
			a.change("another placing", "", func(s *style.Style) error { s.Hang.Seed++; return nil })
		}}
	finerLattice = cure{"finer", func(a *App) string {
		if v := a.pane().finer(); v > 0 {
			return "Lattice of " + a.units.Apart(v)
		}
		return ""
	}, "Reckons with yarns that lie closer together: slower, and nearer to cloth.", func(a *App) {
		a.setSpacing(a.pane().finer())
	}}
	longerEdge = cure{"longer", func(a *App) string {
		if v := a.longer(); v > 0 {
			return "Extension " + a.units.Length(v)
		}
		return ""
	}, "Adds cloth to half the edge.", func(a *App) { a.setNumber("extension", a.longer(), "the extension", "") }}
	largerSize = cure{"larger", func(a *App) string {
		if n := a.nextSize(); n > 0 {
			return fmt.Sprintf("Size %d", n)
		}
		return ""
	}, "The next size of the chart, form and piece.",
		func(a *App) { a.setNumber("size", float64(a.nextSize()), "the size", "") }}
	otherCloth = cure{"cloth", func(*App) string { return "Choose another cloth" }, "Goes to the list of fabrics.",
		func(a *App) { a.tab = 0 }}
	undoLast = cure{"undo", func(a *App) string {
		if undo, _ := a.past.Next(); undo != "" {
			return "Undo " + undo
		}
		return ""
	}, "Takes the last change back.", (*App).undo}
)

// finer returns the next finer lattice, m, a quarter closer; 0 where there is none.
func (p *Pane) finer() float64 {
	h := p.spacing()
	if v := max(math.Floor(h*750)/1000, drape.Finest); v < h {
		return v
	}
	return 0
}

// longer returns an extension longer by some centimetres, m; 0 where the draft allows none.
func (a *App) longer() float64 {
	p := a.pane()
	v := min(p.cowl.Extension+4*a.units.Step(), p.limits("extension").Hi)
	if v <= p.cowl.Extension {
		return 0
	}
	return v
}

// nextSize returns the next size of the chart, 0 after the last.
func (a *App) nextSize() int {
	sizes := a.pane().Style.Chart.Numbers()
	if k := slices.Index(sizes, a.pane().Style.Size); k >= 0 && k+1 < len(sizes) {
		return sizes[k+1]
	}
	return 0
}

// doubt returns what is wrong with what a pane shows; nil where nothing is.
func (p *Pane) doubt() *doubt {
	w := p.frame.Outcome.Warning
	switch {
	case p.asked.refused != nil:
		return p.refusal(p.asked.refused)
	case !p.resting():
		return nil
	case w == "" && p.failed():
		return &doubt{head: "Not at rest", words: said("The cloth has stopped, and nothing can be read off it."),
			cures: []cure{otherHand, finerLattice, undoLast}}
	case w == "":
		return nil
	}
	for i, d := range doubts {
		if strings.HasPrefix(w, d.sign) {
			return &doubts[i]
		}
	}
	return &doubt{head: "Not to be trusted", words: said(upper(w) + "."), cures: []cure{otherHand, finerLattice, undoLast}}
}

// refusal is the doubt about a drape that could not be made as it was asked for.
func (p *Pane) refusal(err error) *doubt {
	head, after := "Not as asked", ""
	switch {
	case !p.frame.Job.Same(&p.asked.job):
		head, after = "Could not be hung", " The cloth hangs as before the change."
	case p.failed():
		head = "Could not be placed"
	}
	return &doubt{head: head, words: func(u Units, _ *drape.Outcome) string { return upper(u.Words(err)) + "." + after },
		cures: []cure{undoLast}}
}

// doubtBox tells the whole of a doubt and offers what helps.
func (a *App) doubtBox(c *panel.Column, p *Pane, d *doubt) {
	if !p.failed() { // else it stands above
		c.Gap(8)
		c.Text(d.head, panel.Heading, false)
		c.Gap(2)
	}
	c.Text(d.words(a.units, &p.frame.Outcome), panel.Plain, false)
	c.Gap(8)
	for _, k := range d.cures {
		label := k.label(a)
		if label == "" {
			continue
		}
		if a.ui.Button("cure/"+k.id, c.Next(panel.RowHeight), upper(label), k.help) {
			k.do(a)
		}
		c.Gap(6)
	}
	if p.failed() && p.frame.Read {
		c.Text("What was read of that moment:", panel.Small, true)
	}
}
