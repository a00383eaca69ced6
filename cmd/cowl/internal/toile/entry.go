package toile

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"cowl/cmd/cowl/internal/style"
)

// Entry is a toile as it is entered: words and figures with their units.
type Entry struct {
	Style       string   // style file
	Drop, Reach string   // "12.5cm"; empty: not measured
	Laid, Kept  *int     // nil: not counted
	Folds       []string // "4.5cm@5cm": depth and place, from the edge down
	Photo       string   // file
	Note, Date  string
}

// reading reads the figures; a message names the flag.
func (e Entry) reading() (Reading, error) {
	r := nothing()
	for _, f := range []struct {
		flag, text string
		to         *float64
	}{{"--drop", e.Drop, &r.Drop}, {"--reach", e.Reach, &r.Reach}} {
		if err := setLength(f.to, f.text); err != nil {
			return r, fmt.Errorf("%s: %w", f.flag, err)
		}
	}
	if e.Laid != nil {
		r.Laid = float64(*e.Laid)
	}
	if e.Kept != nil {
		r.Kept = float64(*e.Kept)
	}
	for _, text := range e.Folds {
		f, err := foldOf(text)
		if err != nil {
			return r, fmt.Errorf("--fold: %w", err)
		}
		r.Folds = append(r.Folds, f)
	}
	return r, r.check()
}

// foldOf reads depth@place; either may be left out.
func foldOf(text string) (Fold, error) {
	depth, at, _ := strings.Cut(text, "@")
	f := Fold{math.NaN(), math.NaN()}
	if err := setLength(&f.Depth, depth); err != nil {
		return f, fmt.Errorf("%.40q, want DEPTH@PLACE like 4.5cm@5cm: %w", text, err)
	}
	if err := setLength(&f.At, at); err != nil {
		return f, fmt.Errorf("%.40q, want DEPTH@PLACE like 4.5cm@5cm: %w", text, err)
	}
	if f.none() {
		return f, fmt.Errorf("%.40q, want DEPTH@PLACE like 4.5cm@5cm: depth of the fold, and where its crest lies down "+
			"the centre front from the edge", text)
	}
	return f, nil
}

// setLength reads a length; an empty text is none. As in the book it has nine figures.
func setLength(to *float64, text string) error {
	if text == "" {
		return nil
	}
	v, err := style.ParseLength(text)
	*to = rounded(v)
	return err
}

// photo is the path of the photograph from the book, which it must lie beside or below.
func (e Entry) photo(b Book) (string, error) {
	if e.Photo == "" {
		return "", nil
	}
	dir, err := filepath.Abs(b.dir())
	if err != nil {
		return "", err
	}
	path, err := filepath.Abs(e.Photo)
	if err != nil {
		return "", err
	}
	rel, err := filepath.Rel(dir, path)
	if err != nil || !filepath.IsLocal(rel) {
		return "", fmt.Errorf("--photo: %s does not lie in the folder of the book, %s: copy it there first, so that both "+
			"can be shared", e.Photo, dir)
	}
	if _, err := readPhoto(path); err != nil {
		return "", fmt.Errorf("--photo: %w", err)
	}
	return filepath.ToSlash(rel), nil
}
