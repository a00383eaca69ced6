package toile

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strconv"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
)

// Show hangs each toile of the book that has no prediction of this physics yet, by so
// many hands, and writes a sheet that holds predictions against toiles to a folder.
func Show(ctx context.Context, o Options, c console.Console, placings int, out string) error {
	b, err := o.book()
	if err != nil {
		return err
	}
	if placings < 1 || placings > style.MostPlacings {
		return fmt.Errorf("--placings: placings %d, want 1–%d: 3 show how far hands differ", placings, style.MostPlacings)
	}
	if err := console.Writable(out); err != nil {
		return err
	}
	all, err := o.hold(ctx, c, b, placings)
	if err != nil {
		return err
	}
	s := sheet{book: b, all: all, placings: placings}
	page := s.page()
	html, err := page.HTML()
	if err != nil {
		panic("the sheet of toiles cannot be made\n" + err.Error())
	}
	result, err := console.JSON(s.result(page.Findings))
	if err != nil {
		return err
	}
	files := []console.File{{Name: "index.html", Data: html}, {Name: "table.csv", Data: s.table()}, {Name: "result.json", Data: result}}
	if err := console.Save(out, files); err != nil {
		return err
	}
	return o.tell(c, page.Title, page.Findings, result, all, out)
}

// book reads the book, which must have a toile.
func (o Options) book() (Book, error) {
	if err := checkName(o.Book); err != nil {
		return Book{}, err
	}
	b, err := Read(o.Book)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return b, fmt.Errorf("%w; cowl toile add makes one", err)
	case err != nil:
		return b, err
	case len(b.Toiles) == 0:
		return b, fmt.Errorf("%s holds no toile, want one: cowl toile add", o.Book)
	}
	return b, nil
}

// hold hangs what is not kept and returns every toile with its prediction.
func (o Options) hold(ctx context.Context, c console.Console, b Book, placings int) ([]held, error) {
	var list []study.Hanging
	for _, t := range b.Toiles {
		h, err := b.hanging(t, placings)
		if err != nil {
			return nil, err
		}
		list = append(list, h)
	}
	hung, err := o.hangAll(ctx, c, b, list)
	if err != nil {
		return nil, err
	}
	var out []held
	for i, t := range b.Toiles {
		out = append(out, hold(t, hung[i]))
	}
	return out, nil
}

// tell prints what came out and returns the exit status.
func (o Options) tell(c console.Console, title string, findings []string, result []byte, all []held, out string) error {
	switch {
	case o.JSON:
		if _, err := c.Out.Write(result); err != nil {
			return err
		}
	case !o.Quiet:
		fmt.Fprintf(c.Out, "%s\n\n", title)
		for _, f := range findings {
			fmt.Fprintf(c.Out, "  - %s\n", f)
		}
		fmt.Fprintf(c.Out, "\n%s\nWrote to %s: index.html, table.csv, result.json\n", say.Caution, filepath.Clean(out))
	}
	without := 0
	for _, h := range all {
		if len(h.hands) < len(h.Each) || len(h.Each) == 0 {
			without++
		}
	}
	for _, h := range all {
		if h.Missing != "" {
			fmt.Fprintf(c.Err, "cowl: no pictures of predictions: %s; all else is written\n", h.Missing)
			break
		}
	}
	if without > 0 {
		fmt.Fprintf(c.Err, "cowl: of %s a drape gave no result; the sheet says which\n", say.Several(without, "toile"))
		return console.Silent{Code: console.ExitNotSettled}
	}
	return nil
}

// resultJSON is result.json of the sheet.
type resultJSON struct {
	Book     string          `json:"book"`
	Physics  string          `json:"physics"`
	Placings int             `json:"placings"`
	Findings []string        `json:"findings"`
	Figures  []agreementJSON `json:"figures"`
	Toiles   []toileJSON     `json:"toiles"`
}

// agreementJSON is a kind of figure over all toiles.
type agreementJSON struct {
	Figure string   `json:"figure"`
	N      int      `json:"n"`
	Bias   *float64 `json:"bias"`   // prediction less toile; mm, or folds
	Spread *float64 `json:"spread"` // the same; null for fewer than two
	Unit   string   `json:"unit"`
}

// toileJSON is a toile with its prediction.
type toileJSON struct {
	Key     string              `json:"key"`
	Date    string              `json:"date"`
	Style   string              `json:"style"`
	Fabric  string              `json:"fabric"`
	Laid    *float64            `json:"laid"`
	Without int                 `json:"placings_without_result"`
	Why     string              `json:"why,omitempty"`
	Figures map[string]pairJSON `json:"figures"`
}

// pairJSON is a figure of a toile; its key says the unit.
type pairJSON struct {
	Toile     *float64 `json:"toile"`
	Predicted *float64 `json:"predicted"`
	Spread    *float64 `json:"spread"` // from hand to hand
}

// result fills result.json.
func (s sheet) result(findings []string) resultJSON {
	out := resultJSON{Book: filepath.ToSlash(s.book.Path), Physics: rows.Physics(), Placings: s.placings, Findings: findings}
	for _, a := range agreements(s.all) {
		f := figure{kind: a.kind}
		j := agreementJSON{Figure: a.kind.String(), N: len(a.each), Bias: orNull(f.inFiles(a.bias)), Unit: "mm"}
		if a.kind == Kept {
			j.Unit = "folds"
		}
		if len(a.each) > 1 {
			j.Spread = orNull(f.inFiles(a.spread))
		}
		out.Figures = append(out.Figures, j)
	}
	for _, h := range s.all {
		t := toileJSON{Key: h.Key, Date: h.Date, Style: h.Toile.Style, Fabric: h.Fabric, Laid: orNull(h.Laid), Without: len(h.Each) - len(h.hands), Why: h.Why, Figures: map[string]pairJSON{}}
		for _, f := range figures() {
			mean, deviation := h.predicted(f)
			p := pairJSON{Toile: orNull(f.inFiles(f.of(h.Reading))), Predicted: orNull(f.inFiles(mean))}
			if p.Predicted != nil {
				p.Spread = orNull(f.inFiles(deviation))
			}
			if p.Toile != nil || p.Predicted != nil {
				t.Figures[f.key()] = p
			}
		}
		out.Toiles = append(out.Toiles, t)
	}
	return out
}

// orNull turns what is no number into null.
func orNull(v float64) *float64 {
	if v != v {
		return nil
	}
	v = rounded(v)
	return &v
}

// table is table.csv: a line a toile, of every figure the toile and the prediction.
func (s sheet) table() []byte {
	head := []string{"key", "date", "style", "fabric", "laid"}
	for _, f := range figures() {
		head = append(head, f.key()+"_toile", f.key()+"_mean", f.key()+"_spread")
	}
	lines := [][]string{append(head, "placings", "without_result", "why", "photo", "note")}
	for _, h := range s.all {
		line := []string{h.Key, h.Date, h.Toile.Style, h.Fabric, exact(h.Laid)}
		for _, f := range figures() {
			mean, deviation := h.predicted(f)
			if mean != mean {
				deviation = mean
			}
			line = append(line, exact(f.inFiles(f.of(h.Reading))), exact(f.inFiles(mean)), exact(f.inFiles(deviation)))
		}
		lines = append(lines, append(line, strconv.Itoa(len(h.Each)), strconv.Itoa(len(h.Each)-len(h.hands)), h.Why, h.Photo, h.Note))
	}
	var out bytes.Buffer
	if err := csv.NewWriter(&out).WriteAll(lines); err != nil {
		panic("toile: " + err.Error()) // a buffer takes all
	}
	return out.Bytes()
}

// exact writes a value for a program to read; empty where there is none.
func exact(v float64) string {
	if v != v {
		return ""
	}
	return tidy(v)
}
