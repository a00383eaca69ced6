package toile

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/style"
)

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
		return nil, fmt.Errorf("toile %s of %s: fabric %s, and %s in its style %s, want one of both", t.Key, b.Path,
			t.Fabric, s.Fabric.Name, t.Style)
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
			out = append(out, fmt.Sprintf("toile %s: %s is %s here and %s in %s; kept as here", here.Key, c.name, orNothing(a),
				orNothing(b), from))
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
