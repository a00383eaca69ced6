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
		return Toile{}, 0, errors.New("--style: none is given, want the style that the toile was cut by: cowl drape leaves it as cowl-out/style.yaml")
	}
	s, err := style.FromFile(e.Style)
	if err != nil {
		return Toile{}, 0, err
	}
	if _, err := s.Piece(); err != nil {
		return Toile{}, 0, err
	}
	t := Toile{Date: e.Date, Fabric: s.Fabric.Name, Note: e.Note}
	if t.Reading, err = e.reading(); err != nil {
		return t, 0, err
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
		return console.File{}, fmt.Errorf("toile %s is in %s already, to the figure and the day: a second one of the same figures is told apart by --note", t.Key, b.Path)
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

// Import takes over what another book has and this one has not, with styles and
// photographs. A toile of both is kept once; where they differ it stays as it is here,
// and how is told in Differ.
func Import(path, from string) (Merged, error) {
	other, err := Read(from)
	if errors.Is(err, fs.ErrNotExist) {
		return Merged{}, fmt.Errorf("--import: %w", err)
	}
	if err != nil {
		return Merged{}, err
	}
	var m Merged
	err = change(path, func(b *Book) (files []console.File, err error) {
		m = Merged{}
		for _, t := range other.Toiles {
			if at := b.find(t.Key); at >= 0 {
				m.Same++
				m.Differ = append(m.Differ, differences(b.Toiles[at], t, from)...)
				continue
			}
			if len(b.Toiles) >= MostToiles {
				return nil, fmt.Errorf("%s and %s together hold more than %d toiles, want a book a year", path, from, MostToiles)
			}
			took, err := other.carry(*b, &t, &m)
			if err != nil {
				return nil, err
			}
			files, b.Toiles = append(files, took...), append(b.Toiles, t)
			m.Taken++
		}
		m.Holds = len(b.Toiles)
		return files, nil
	})
	return m, err
}

// Merged says what an import did.
type Merged struct {
	Taken  int      `json:"taken"`  // came over
	Same   int      `json:"same"`   // were in both
	Holds  int      `json:"holds"`  // in the book now
	Differ []string `json:"differ"` // where both have a toile and do not say the same of it
	Lost   []string `json:"lost"`   // photographs that could not be read

	bytes int // of photographs
}

// mostPhotos is how many bytes of photographs one import takes over.
const mostPhotos = 256 << 20

// carry reads style and photograph of a toile of b and names them as they will lie beside
// the book to.
func (b Book) carry(to Book, t *Toile, m *Merged) ([]console.File, error) {
	s, err := style.FromFile(b.file(t.Style))
	if err != nil {
		return nil, fmt.Errorf("toile %s of %s: %w", t.Key, b.Path, err)
	}
	if s.Fabric.Name != t.Fabric {
		return nil, fmt.Errorf("toile %s of %s: fabric %s, and %s in its style %s, want one of both", t.Key, b.Path, t.Fabric, s.Fabric.Name, t.Style)
	}
	t.Style = to.folder() + "/" + t.Key + ".yaml"
	files := []console.File{{Name: t.Style, Data: s.YAML()}}
	if t.Photo == "" {
		return files, nil
	}
	data, err := readPhoto(b.file(t.Photo))
	if m.bytes += len(data); m.bytes > mostPhotos {
		err = fmt.Errorf("photographs of more than %d MB: import in parts", mostPhotos>>20)
	}
	if err != nil {
		m.Lost = append(m.Lost, fmt.Sprintf("toile %s: %v", t.Key, err))
		t.Photo = ""
		return files, nil
	}
	t.Photo = to.folder() + "/" + t.Key + filepath.Ext(t.Photo)
	return append(files, console.File{Name: t.Photo, Data: data}), nil
}

// differences lists what two rows of a key do not say alike, but for where their files
// lie.
func differences(here, there Toile, from string) []string {
	var out []string
	for _, c := range columns {
		if c.name == "style" || c.name == "photo" {
			continue
		}
		if a, b := c.cell(&here), c.cell(&there); a != b {
			out = append(out, fmt.Sprintf("toile %s: %s is %s here and %s in %s; kept as here", here.Key, c.name, orNothing(a), orNothing(b), from))
		}
	}
	return out
}

func orNothing(cell string) string {
	if cell == "" {
		return "not given"
	}
	return cell
}
