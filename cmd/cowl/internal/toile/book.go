package toile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"cowl/materials/infile"
	cells "cowl/mesh/read/csv"
)

// Book is a file of toiles.
type Book struct {
	Path   string
	Toiles []Toile // as they stand in the file
}

// Usual is the book where none is named.
const Usual = "toiles.csv"

// MostToiles is how many rows a book may have.
const MostToiles = 2000

// Read reads a book. That the file is not there is an fs.ErrNotExist; all else that is
// wrong is told with its line.
func Read(path string) (Book, error) {
	data, err := infile.Read(path, "a book of toiles, as cowl toile add writes it", infile.YAML)
	if err != nil {
		return Book{Path: path}, err
	}
	b, err := parse(data)
	b.Path = path
	if err != nil {
		return b, fmt.Errorf("%s: %w", path, err)
	}
	return b, nil
}

// readOrNew reads a book, an empty one where there is no file.
func readOrNew(path string) (Book, error) {
	b, err := Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return b, nil
	}
	return b, err
}

// parse reads the text of a book.
func parse(data []byte) (Book, error) {
	var b Book
	c, err := cells.Cells(bytes.NewReader(data))
	if err != nil {
		return b, err
	}
	head, err := c.Read()
	if errors.Is(err, io.EOF) {
		return b, fmt.Errorf("empty file, want a head: %s", columnNames())
	}
	if err != nil {
		return b, err
	}
	cols, err := headed(head)
	if err != nil {
		return b, err
	}
	seen := map[string]int{}
	for {
		row, err := c.Read()
		if errors.Is(err, io.EOF) {
			return b, nil
		}
		if err != nil {
			return b, err
		}
		line, _ := c.FieldPos(0)
		if len(b.Toiles) == MostToiles {
			return b, fmt.Errorf("more than %d toiles, want a book a year", MostToiles)
		}
		t, err := rowOf(cols, row, c.Comma == ';')
		if err == nil && seen[t.Key] > 0 {
			err = fmt.Errorf("key %s stands in line %d too, want each toile once", t.Key, seen[t.Key])
		}
		if err != nil {
			return b, fmt.Errorf("line %d: %w", line, err)
		}
		seen[t.Key] = line
		b.Toiles = append(b.Toiles, t)
	}
}

// headed finds the columns of a head.
func headed(head []string) ([]column, error) {
	var out []column
	for _, h := range head {
		name := strings.ToLower(strings.TrimSpace(h))
		i := slices.IndexFunc(columns, func(c column) bool { return c.name == name })
		switch {
		case i < 0:
			return nil, fmt.Errorf("column %.40q, want %s: what the book does not know would be lost", h, columnNames())
		case slices.ContainsFunc(out, func(c column) bool { return c.name == name }):
			return nil, fmt.Errorf("column %s stands twice", name)
		}
		out = append(out, columns[i])
	}
	for _, need := range columns[:4] {
		if !slices.ContainsFunc(out, func(c column) bool { return c.name == need.name }) {
			return nil, fmt.Errorf("no column %s, want %s", need.name, columnNames())
		}
	}
	return out, nil
}

// rowOf reads the cells of a line.
func rowOf(cols []column, row []string, comma bool) (Toile, error) {
	if len(row) > len(cols) {
		return Toile{}, fmt.Errorf("%d cells under %d heads", len(row), len(cols))
	}
	t := Toile{Reading: nothing()}
	for range MostFolds {
		t.Folds = append(t.Folds, Fold{nothing().Drop, nothing().Drop})
	}
	for i, cell := range row {
		if err := cols[i].set(&t, cell, comma); err != nil {
			return t, err
		}
	}
	for n := len(t.Folds); n > 0 && t.Folds[n-1].none(); n-- {
		t.Folds = t.Folds[:n-1]
	}
	if len(t.Folds) == 0 {
		t.Folds = nil
	}
	return t, t.check()
}

// none reports whether nothing of a fold was measured.
func (f Fold) none() bool { return f.Depth != f.Depth && f.At != f.At }

// CSV writes the book: a head, then a line a toile, with commas and decimal points.
func (b Book) CSV() []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	var head []string
	for _, c := range columns {
		head = append(head, c.name)
	}
	lines := [][]string{head}
	for i := range b.Toiles {
		var line []string
		for _, c := range columns {
			line = append(line, c.cell(&b.Toiles[i]))
		}
		lines = append(lines, line)
	}
	if err := w.WriteAll(lines); err != nil {
		panic("toile: " + err.Error()) // a buffer takes all
	}
	return out.Bytes()
}

// dir is where the book lies, and what its rows name files from.
func (b Book) dir() string { return filepath.Dir(b.Path) }

// folder is the name of the folder beside the book that holds styles and predictions.
func (b Book) folder() string {
	base := filepath.Base(b.Path)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// beside is the path of the folder of the book.
func (b Book) beside() string { return filepath.Join(b.dir(), b.folder()) }

// file is the path of a file that a row names.
func (b Book) file(name string) string { return filepath.Join(b.dir(), filepath.FromSlash(name)) }

// find returns the place of a key; -1: it is not in the book.
func (b Book) find(key string) int {
	return slices.IndexFunc(b.Toiles, func(t Toile) bool { return t.Key == key })
}

// checkName refuses a name that leaves no folder beside it.
func checkName(path string) error {
	b := Book{Path: path}
	if f := b.folder(); f == "" || f == "." || f == filepath.Base(path) {
		return fmt.Errorf("--book %s: want the name of a CSV file, like %s: styles and predictions lie in a folder of "+
			"that name beside it", path, Usual)
	}
	return nil
}
