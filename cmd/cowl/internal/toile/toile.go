// Package toile keeps a book of toiles: what a ruler gave on the stand, for a style and a
// cloth, and holds it against what cowl predicts for them. The book is a plain CSV file;
// beside it lies a folder of its name with a copy of every style and the predictions.
// Nothing leaves the machine. A Toile is SI; files, flags and sheets say their units.
// Start at Book, Show and Fit.
package toile

import (
	"fmt"
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"time"
	"unicode"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/limit"
	"cowl/sim/drape"
)

// Toile is a row of the book.
type Toile struct {
	Key    string // what names it, in all books
	Date   string // year-month-day
	Style  string // file of the style, from where the book lies
	Fabric string // name of its fabric
	Photo  string // file of the photograph, from where the book lies; empty: none
	Note   string
	Reading
}

// Reading is what a ruler gives of a toile, or what a prediction says in its place.
type Reading struct {
	Drop  float64 // m, edge on the centre front below the shoulder neck points; NaN: not measured
	Reach float64 // m, how far the front reaches ahead of the form; NaN: not measured
	Laid  float64 // folds that the hand laid; NaN: not counted
	Kept  float64 // those of them that stayed; NaN: not counted
	Folds []Fold  // from the edge down, MostFolds at most
}

// Fold is one fold of a Reading.
type Fold struct {
	Depth float64 // m, from its crest back to the shallower of the valleys beside it; NaN: not measured
	At    float64 // m, down the centre front along the cloth from the edge to its crest; NaN: not measured
}

// MostFolds is how many folds a row holds.
const MostFolds = drape.MostFolds

// nothing is a reading without a figure.
func nothing() Reading {
	none := math.NaN()
	return Reading{Drop: none, Reach: none, Laid: none, Kept: none}
}

// Limits of a row; a stand and a ruler give no others.
const (
	longestNote = 200 // letters
	longestPath = 1000
)

var (
	keyForm  = regexp.MustCompile(`^[0-9a-f]{12}$`)
	nameForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
)

// check refuses a row that no toile gives, and one without any measured figure.
func (t Toile) check() error {
	if !keyForm.MatchString(t.Key) {
		return fmt.Errorf("key %.40q, want 12 of 0–9 and a–f, as cowl toile add gives them", t.Key)
	}
	if _, err := time.Parse(time.DateOnly, t.Date); err != nil {
		return fmt.Errorf("date %.40q, want year-month-day: 2026-05-31", t.Date)
	}
	if !nameForm.MatchString(t.Fabric) || len(t.Fabric) > 120 {
		return fmt.Errorf("fabric %.40q, want its name: lower-case words joined by hyphens", t.Fabric)
	}
	if t.Style == "" {
		return fmt.Errorf("style is empty, want the file of the style, by its path from the book")
	}
	for _, p := range []struct{ name, path string }{{"style", t.Style}, {"photo", t.Photo}} {
		if err := checkPath(p.name, p.path); err != nil {
			return err
		}
	}
	if err := checkText("note", t.Note, longestNote); err != nil {
		return err
	}
	return t.Reading.check()
}

// checkPath refuses a path that leads out of the folder of the book.
func checkPath(name, path string) error {
	if path == "" {
		return nil
	}
	if !filepath.IsLocal(filepath.FromSlash(path)) || strings.Contains(path, `\`) {
		return fmt.Errorf("%s %.80q, want a path within the folder of the book, with /: a shared book names files beside "+
			"it alone", name, path)
	}
	return checkText(name, path, longestPath)
}

// checkText refuses what is more than a line of plain text, and what a table program
// would take for a formula.
func checkText(name, text string, most int) error {
	if n := len([]rune(text)); n > most {
		return fmt.Errorf("%s of %d letters, want at most %d", name, n, most)
	}
	if strings.ContainsFunc(text, func(r rune) bool { return unicode.IsControl(r) || r == unicode.ReplacementChar }) {
		return fmt.Errorf("%s %.80q, want one line of plain text", name, text)
	}
	if strings.ContainsAny(text[:min(1, len(text))], "=+-@") || text != strings.TrimSpace(text) {
		return fmt.Errorf("%s %.80q begins with %q, want a letter or a figure first: a table program takes it for a formula",
			name, text, text[:1])
	}
	return nil
}

// ranges are what the figures of a reading may be; one that was not measured is NaN.
func (r Reading) ranges() []limit.Range {
	out := []limit.Range{
		{Field: "drop", Value: r.Drop, Lo: -0.10, Hi: 0.60, Unit: limit.Length,
			Why: limit.Say("of the edge on the centre front below the shoulder neck points")},
		{Field: "reach", Value: r.Reach, Lo: -0.05, Hi: 0.40, Unit: limit.Length,
			Why: limit.Say("how far the front stands ahead of the form")},
		{Field: "laid", Value: r.Laid, Lo: 0, Hi: MostFolds, Unit: limit.Count,
			Why: limit.Say("folds that the hand laid; 0 lets the cloth fall")},
		{Field: "kept", Value: r.Kept, Lo: 0, Hi: MostFolds, Unit: limit.Count,
			Why: limit.Say("of the folds that the hand laid")},
	}
	for k, f := range r.Folds {
		out = append(out,
			limit.Range{Field: fmt.Sprintf("depth of fold %d", k+1), Value: f.Depth, Lo: 0.002, Hi: 0.25, Unit: limit.Length,
				Why: limit.Say("from its crest back to the shallower of the valleys beside it")},
			limit.Range{Field: fmt.Sprintf("place of fold %d", k+1), Value: f.At, Lo: 0, Hi: 0.60, Unit: limit.Length,
				Why: limit.Say("down the centre front along the cloth from the edge to its crest")})
	}
	return out
}

// check refuses figures that no stand gives.
func (r Reading) check() error {
	measured := false
	for _, l := range r.ranges() {
		if math.IsNaN(l.Value) {
			continue
		}
		measured = measured || l.Field != "laid"
		if err := l.Check(); err != nil {
			return err
		}
		if l.Unit == limit.Count && l.Value != math.Trunc(l.Value) {
			return fmt.Errorf("%s %g, want a whole number", l.Field, l.Value)
		}
	}
	switch {
	case !measured:
		return fmt.Errorf("nothing is measured, want one or more of drop, kept, fold and reach")
	case r.Kept > r.Laid:
		return fmt.Errorf("kept %g of laid %g folds, want no more kept than laid: count those that the hand laid and "+
			"that stayed", r.Kept, r.Laid)
	case math.IsNaN(r.Laid) && !math.IsNaN(r.Kept):
		return fmt.Errorf("kept %g and laid is not told, want how many folds the hand laid with it", r.Kept)
	}
	return r.checkFolds()
}

// checkFolds wants folds from the edge down.
func (r Reading) checkFolds() error {
	if len(r.Folds) > MostFolds {
		return fmt.Errorf("%d folds, want at most %d", len(r.Folds), MostFolds)
	}
	last := math.Inf(-1)
	for k, f := range r.Folds {
		if math.IsNaN(f.Depth) && math.IsNaN(f.At) {
			return fmt.Errorf("fold %d has neither depth nor place, want the folds one after the other from the edge down", k+1)
		}
		if f.At <= last {
			return fmt.Errorf("fold %d lies %s and the one before it %s down the centre front, want them from the edge down",
				k+1, say.Length(f.At), say.Length(last))
		}
		if !math.IsNaN(f.At) {
			last = f.At
		}
	}
	return nil
}
