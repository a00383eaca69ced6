package style

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"cowl/materials/infile"
	"cowl/materials/scalar"
	"cowl/mesh/limit"
	"cowl/mesh/read"

	"github.com/goccy/go-yaml/ast"
)

// Drawing is a block or a piece in a file drawn elsewhere.
type Drawing struct {
	File string
	Unit string // mm, cm, m or in; "": the file states its own
	Name string // of the piece in it; "": there is one, or one that is called front
}

// blockFile reads {file: front.dxf, unit: mm}: a block drawn elsewhere.
func (r *source) blockFile(s *Style, e entry) {
	d, ok := r.drawing("block", e)
	if !ok {
		return
	}
	if err := s.readBlock(d, r.origin(e.at)); err != nil {
		r.fail(e.value, "block: %v", err)
	}
}

// drawing reads {file: front.dxf, unit: mm, name: front}; the file is named from
// where the style file lies.
func (r *source) drawing(what string, e entry) (d Drawing, ok bool) {
	for _, v := range r.mapping(e.value, what) {
		switch v.key {
		case "file":
			d.File, _ = r.word(v)
		case "unit":
			d.Unit, _ = r.word(v)
		case "name":
			d.Name, _ = r.word(v)
		default:
			r.fail(v.at, "%s: unknown key %q, want file, unit and name, or a list of points", what, v.key)
			return Drawing{}, false
		}
	}
	if d.File == "" {
		r.fail(e.value, "%s has no file, want {file: front.dxf, unit: mm}", what)
		return Drawing{}, false
	}
	d.File = r.beside(d.File)
	return d, true
}

// UseBlockFile takes the block of a DXF, SVG or CSV file.
func (s *Style) UseBlockFile(d Drawing) error {
	if err := s.readBlock(d, "--block"); err != nil {
		return limit.Under("--block", err)
	}
	return nil
}

// readBlock reads a block and notes where it came from.
func (s *Style) readBlock(d Drawing, from string) error {
	f, err := infile.Open(d.File, "a .dxf, .svg or .csv file")
	if err != nil {
		return err
	}
	defer f.Close()
	points, notes, err := read.Block(d.File, f, d.Unit, d.Name)
	if err != nil {
		return fmt.Errorf("%s: %w", d.File, err)
	}
	s.Points = points
	for name := range s.from {
		if strings.HasPrefix(name, "block ") {
			delete(s.from, name)
		}
	}
	s.from["block"] = from
	s.note("block", d.File, notes)
	return nil
}

// note keeps what reading the file of block or piece left out or straightened,
// in place of what was noted of one before.
func (s *Style) note(what, path string, notes []string) {
	s.Notes = slices.DeleteFunc(slices.Clone(s.Notes), func(n string) bool { return strings.HasPrefix(n, what+" ") })
	for _, n := range notes {
		s.Notes = append(s.Notes, fmt.Sprintf("%s %s: %s", what, path, n))
	}
}

// isMapping reports whether a value is keys and values.
func isMapping(n ast.Node) bool { _, ok := scalar.Pairs(n); return ok }

// beside is where a file lies that the style file names from where it lies itself.
func (r *source) beside(path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(filepath.Dir(r.file), path)
}
