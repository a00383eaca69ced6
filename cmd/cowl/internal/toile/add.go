package toile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/outfile"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
)

// Add enters a toile in the book at a path, which is made where there is none, and
// returns it and how many the book then holds. The book with the toile and the copy of
// its style are written together or not at all.
func Add(path string, e Entry) (Toile, int, error) {
	if e.Style == "" {
		return Toile{}, 0, errors.New("--style: none is given, want the style that the toile was cut by: cowl drape " +
			"leaves it as cowl-out/style.yaml")
	}
	s, err := style.FromFile(e.Style)
	if err != nil {
		return Toile{}, 0, err
	}
	if _, err := s.Cowl(); err != nil {
		return Toile{}, 0, err
	}
	t := Toile{Date: e.Date, Fabric: s.Fabric.Name, Note: e.Note}
	if t.Reading, err = e.reading(); err != nil {
		return t, 0, errors.New(s.Cut.Worn.Say(err.Error()))
	}
	n := 0
	err = change(path, func(b *Book) ([]console.File, error) {
		if t.Photo, err = e.photo(*b); err != nil {
			return nil, err
		}
		n = len(b.Toiles) + 1
		copied, err := b.enter(&t, s)
		return []console.File{copied}, err
	})
	return t, n, err
}

// enter puts a new toile in the book and returns the copy of its style.
func (b *Book) enter(t *Toile, s style.Style) (console.File, error) {
	text := s.YAML()
	t.Key = keyOf(*t, text)
	t.Style = b.folder() + "/" + t.Key + ".yaml"
	switch at := b.find(t.Key); {
	case at >= 0:
		return console.File{}, fmt.Errorf("toile %s is in %s already, to the figure and the day: a second one of the "+
			"same figures is told apart by --note", t.Key, b.Path)
	case len(b.Toiles) >= MostToiles:
		return console.File{}, fmt.Errorf("%s holds %d toiles, want no more: begin another --book", b.Path, len(b.Toiles))
	}
	if err := t.check(); err != nil {
		return console.File{}, err
	}
	b.Toiles = append(b.Toiles, *t)
	return console.File{Name: t.Style, Data: text}, nil
}

// keyOf names a toile by all that was entered. It stays when the row is corrected later.
func keyOf(t Toile, styleText []byte) string {
	t.Key, t.Style, t.Photo = "", "", ""
	inputs := []string{"toile 1", string(styleText)}
	for _, c := range columns {
		inputs = append(inputs, c.cell(&t))
	}
	return rows.KeyOf(inputs...)[:12]
}

// change reads a book, lets do change it, and writes it with the files that do gives, all
// or none; other runs that change it wait. Where do fails nothing is written.
func change(path string, do func(*Book) ([]console.File, error)) error {
	if err := checkName(path); err != nil {
		return err
	}
	b := Book{Path: path}
	if err := console.Writable(b.dir()); err != nil {
		return err
	}
	defer sweep(missing(b.beside()))
	if err := os.MkdirAll(b.beside(), 0o755); err != nil {
		return fmt.Errorf("%w: %w", console.ErrCannotSave, err)
	}
	defer outfile.Lock(b.beside())()
	b, err := readOrNew(path)
	if err != nil {
		return err
	}
	files, err := do(&b)
	if err != nil {
		return err
	}
	return console.Save(b.dir(), append(files, console.File{Name: filepath.Base(path), Data: b.CSV()}))
}

// missing lists the folders on the way to dir that are not there, the deepest first.
func missing(dir string) []string {
	var out []string
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if _, err := os.Stat(d); !errors.Is(err, fs.ErrNotExist) || d == filepath.Dir(d) {
			return out
		}
		out = append(out, d)
	}
}

// sweep takes folders away that were made and not used: one that is not empty stays.
func sweep(dirs []string) {
	for _, d := range dirs {
		os.Remove(d)
	}
}
