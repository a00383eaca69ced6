package main

import (
	"fmt"
	"io"
	"math"

	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/treatment"
	"cowl/mesh/truing"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
)

// report prints what truing changed.
func (r *truth) report(w io.Writer) {
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-12s ", name)
		fmt.Fprintf(w, format+"\n", args...)
	}
	first, again, p := r.first.Run.Outcome, r.again.Outcome, r.trued.Cowl
	fmt.Fprintf(w, "%s, for %s: trued along the %s, %s\n\n", r.first.Style.Name, r.first.Style.ForWhom(),
		markWords[r.mark], halfWords[r.half])
	w = sided.To(w, p.Worn)
	treatment.Of(r.first.Style, p).Report(row)
	drafted.StrapOf(r.first.Style, p).Report(row)
	row("Hung", "%s", hangWords(first))
	if text := takenText(&first); text != "" {
		row("Taken up", "%s", text)
	}
	if first.Taken != 0 {
		row("", "the trued edge and extension are %s for it, and the shoulder line runs from the new cowl point",
			longerBy(-first.Taken))
	}
	fmt.Fprintf(w, "\n  %-12s %8s %8s %9s %11s %12s   %s\n", "Seam", "draft", "trued", "moved by", "left–right",
		"off the line", "the form's seam lies")
	for _, s := range r.trued.Seams {
		fmt.Fprintf(w, "  %-12s %8s %8s %9s %s   %s\n", s.Name, say.Length(s.Draft), say.Length(s.Length),
			say.Slight(s.Moved), marksOf(s), misfitOf(s.Misfit))
	}
	fmt.Fprintln(w)
	row("Edge", "half edge %s, drafted %s; square to the centre front", say.Length(p.HalfEdge),
		say.Length(r.before.HalfEdge))
	row("Extension", "%s a half, drafted %s", say.Length(p.Extension), say.Length(r.before.Extension))
	row(p.Worn.Say("Apex"), "the form's apex lies %s from the draft's on the cloth", say.Length(r.trued.Apex))
	for _, k := range r.walked() {
		row("Walked", "%s: front %s, back %s, apart %s", k.Name, say.Fine(k.Front), say.Fine(k.Back),
			say.Slight(math.Abs(k.Off())))
	}
	row("Opening", "%s", r.openingWords())
	row("Allowances", "%s, side seams %s", say.Length(r.suit.Allow.Seam), say.Length(r.suit.Allow.Side))
	row("Re-hung", "%s", hangWords(again))
	row("", "edge drop %s, folds above the bust %s", apart(drop(&again)-drop(&first), "lower", "higher"),
		foldsApart(first.FoldCount, again.FoldCount))
	row("Pins", "off the form's seams by %s at most, re-hung %s", say.Slight(slip(&first)/1000),
		say.Slight(slip(&again)/1000))
	fmt.Fprintf(w, "\n%s\n%s\n", advice, say.Caution)
}

var (
	markWords = map[string]string{"pins": "pins", "form": "seam lines of the form"}
	halfWords = map[string]string{"both": "both halves averaged", "left": "the wearer's left half",
		"right": "the wearer's right half"}
)

const advice = "Cut single layer. Hang front and back 24 to 48 hours before the side seams are closed and again " +
	"before the hem is levelled; stay the shoulders."

// Figures of truing, mm.
var (
	drop = edgeDrop.Value
	slip = measure.Named("pin_slip_mm").Value
)

// hangWords says in a line how a piece hangs.
func hangWords(o drape.Outcome) string {
	text := fmt.Sprintf("%s; edge drop %s, %s above the bust", o.Status, edgeDrop.Amount(drop(&o)),
		say.Several(o.FoldCount, "fold"))
	if o.Laid > 0 {
		text += "; " + tryText(o.Try())
	}
	return text
}

// longerBy says by how much a length has changed.
func longerBy(v float64) string {
	if v < 0 {
		return say.Length(-v) + " shorter"
	}
	return say.Length(v) + " longer"
}

// marksOf says how well the marks agree; a seam without pins has none.
func marksOf(s truing.Seam) string {
	if s.Marks == 0 {
		return fmt.Sprintf("%11s %12s", "no pins", "–")
	}
	return fmt.Sprintf("%11s %12s", say.Slight(s.LeftRight), say.Slight(s.Scatter))
}

// misfitOf says where the form's seam lies against the cloth's.
func misfitOf(m truing.Misfit) string {
	if m.Places == 0 {
		return "off the cloth"
	}
	reach := ""
	if m.Places < m.Of {
		reach = fmt.Sprintf(", %.0f %% of it on the cloth", 100*float64(m.Places)/float64(m.Of))
	}
	return fmt.Sprintf("%s to %s%s", inOrOut(m.Least), inOrOut(m.Most), reach)
}

// inOrOut says how far inside or outside the seam of the cloth something lies.
func inOrOut(v float64) string {
	if v < 0 {
		return say.Slight(-v) + " outside"
	}
	return say.Slight(v) + " inside"
}

// apart says a difference in millimetres.
func apart(d float64, more, less string) string {
	switch {
	case math.Abs(d) < 0.05:
		return "the same"
	case d > 0:
		return say.Slight(d/1000) + " " + more
	}
	return say.Slight(-d/1000) + " " + less
}

func foldsApart(a, b int) string {
	if a == b {
		return "as before"
	}
	return fmt.Sprintf("%d, before %d", b, a)
}

// openingWords compares the opening with the head.
func (r *truth) openingWords() string {
	o := r.opening()
	text := fmt.Sprintf("%s round edge and %v neck; head %s: ", say.Length(o), r.suit.Back.Worn(), say.Length(r.head))
	if o < r.head {
		return text + "does not pass, needs a fastening"
	}
	return text + "passes"
}

// trueJSON holds the figures of cowl true --json and true.json.
type trueJSON struct {
	Name       string         `json:"name"`
	Worn       string         `json:"side,omitempty"` // back; else the front
	Mark       string         `json:"mark"`
	Half       string         `json:"half"`
	Seams      []trueSeamJSON `json:"seams"`
	HalfEdge   float64        `json:"half_edge_mm"`
	DraftEdge  float64        `json:"draft_half_edge_mm"`
	Extension  float64        `json:"extension_mm"`
	DraftExt   float64        `json:"draft_extension_mm"`
	Taken      float64        `json:"taken_up_mm"` // at either cowl point; below 0: let down
	ApexOff    float64        `json:"apex_off_mm"`
	Walked     []drafted.Walk `json:"walked"`
	Opening    float64        `json:"opening_mm"`
	Head       float64        `json:"head_girth_mm"`
	Passes     bool           `json:"passes_head"`
	Seam       float64        `json:"allowance_mm"`
	SideSeam   float64        `json:"side_allowance_mm"`
	Status     string         `json:"status"`
	Drop       float64        `json:"edge_drop_mm"`
	Folds      int            `json:"fold_count"`
	Laid       int            `json:"laid"`
	Kept       int            `json:"kept"`
	PinSlip    float64        `json:"pin_slip_mm"`
	AgainState string         `json:"rehung_status"`
	AgainDrop  float64        `json:"rehung_edge_drop_mm"`
	AgainFolds int            `json:"rehung_fold_count"`
	AgainKept  int            `json:"rehung_kept"`
	AgainSlip  float64        `json:"rehung_pin_slip_mm"`

	Treatment *treatment.Figures `json:"treatment,omitempty"` // of the trued front
	Strap     *drafted.Strap     `json:"strap,omitempty"`     // of a trued back cowl
}

// trueSeamJSON is one seam; misfit above 0: the form's seam lies inside the piece.
type trueSeamJSON struct {
	Name      string  `json:"name"`
	Draft     float64 `json:"draft_mm"`
	Trued     float64 `json:"trued_mm"`
	Marks     int     `json:"marks"`
	Moved     float64 `json:"moved_mm"`
	LeftRight float64 `json:"left_right_mm"`
	Scatter   float64 `json:"off_line_mm"`
	Mean      float64 `json:"misfit_mean_mm"`
	Least     float64 `json:"misfit_least_mm"`
	Most      float64 `json:"misfit_most_mm"`
	Reached   float64 `json:"misfit_reached_share"`
}

// figures returns the figures of the truing.
func (r *truth) figures() trueJSON {
	first, again := r.first.Run.Outcome, r.again.Outcome
	out := trueJSON{
		Name: r.first.Style.Name, Worn: sided.Key(r.trued.Cowl.Worn), Mark: r.mark, Half: r.half,
		HalfEdge: say.MM(r.trued.Cowl.HalfEdge), DraftEdge: say.MM(r.before.HalfEdge), ApexOff: say.MM(r.trued.Apex),
		Extension: say.MM(r.trued.Cowl.Extension), DraftExt: say.MM(r.before.Extension), Taken: say.MM(first.Taken),
		Laid: first.Laid, Kept: first.Kept, AgainKept: again.Kept,
		Opening: say.MM(r.opening()), Head: say.MM(r.head), Passes: r.opening() >= r.head,
		Seam: say.MM(r.suit.Allow.Seam), SideSeam: say.MM(r.suit.Allow.Side),
		Status: string(first.Status), Drop: drop(&first), Folds: first.FoldCount, PinSlip: slip(&first),
		AgainState: string(again.Status), AgainDrop: drop(&again), AgainFolds: again.FoldCount, AgainSlip: slip(&again),
		Treatment: treatment.Of(r.first.Style, r.trued.Cowl), Strap: drafted.StrapOf(r.first.Style, r.trued.Cowl),
	}
	for _, s := range r.trued.Seams {
		m := s.Misfit
		out.Seams = append(out.Seams, trueSeamJSON{s.Name, say.MM(s.Draft), say.MM(s.Length), s.Marks, say.MM(s.Moved),
			say.MM(s.LeftRight), say.MM(s.Scatter),
			say.MM(m.Mean), say.MM(m.Least), say.MM(m.Most), float64(m.Places) / float64(m.Of)})
	}
	out.Walked = drafted.Walked(r.suit)
	return out
}
