package toile

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/sided"
	"cowl/cmd/cowl/internal/study"
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
	s := overview{book: b, all: all, placings: placings}
	page := s.page()
	html, err := page.HTML()
	if err != nil {
		panic("the sheet of toiles cannot be made\n" + err.Error())
	}
	html = []byte(sided.Words(string(html), s.says))
	for i, f := range page.Findings {
		page.Findings[i] = s.says(f)
	}
	result, err := console.JSON(s.result(page.Findings))
	if err != nil {
		return err
	}
	files := []console.File{{Name: "index.html", Data: html}, {Name: "table.csv", Data: s.table()},
		{Name: "result.json", Data: result}}
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
		out = append(out, hold(t, list[i].Style.Cut.Worn, hung[i]))
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
