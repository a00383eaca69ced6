package style

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cowl/mesh/read"

	"github.com/goccy/go-yaml/ast"
)

// blockFile reads {file: front.dxf, unit: mm}: a block drawn elsewhere.
func (r *source) blockFile(s *Style, e entry) {
	path, unit, ok := r.drawing("block", e)
	if !ok {
		return
	}
	if err := s.readBlock(path, unit, r.origin(e.at)); err != nil {
		r.fail(e.value, "block: %v", err)
	}
}

// drawing reads {file: front.dxf, unit: mm}; the file is named from where the
// style file lies.
func (r *source) drawing(what string, e entry) (path, unit string, ok bool) {
	for _, v := range r.mapping(e.value, what) {
		switch v.key {
		case "file":
			path = r.word(v)
		case "unit":
			unit = r.word(v)
		default:
			r.fail(v.at, "%s: unknown key %q, want file and unit, or a list of points", what, v.key)
			return "", "", false
		}
	}
	if path == "" {
		r.fail(e.value, "%s has no file, want {file: front.dxf, unit: mm}", what)
		return "", "", false
	}
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(r.file), path)
	}
	return path, unit, true
}

// UseBlockFile takes the block of a DXF, SVG or CSV file. unit is mm, cm, m or
// in, or "" if the file states its own.
func (s *Style) UseBlockFile(path, unit string) error {
	if err := s.readBlock(path, unit, "--block"); err != nil {
		return fmt.Errorf("--block: %w", err)
	}
	return nil
}

// readBlock reads a block and notes where it came from.
func (s *Style) readBlock(path, unit, from string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	points, notes, err := read.Block(path, f, unit)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	s.Points = points
	for name := range s.from {
		if strings.HasPrefix(name, "block ") {
			delete(s.from, name)
		}
	}
	s.from["block"] = from
	s.note("block", path, notes)
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
func isMapping(n ast.Node) bool {
	switch n.(type) {
	case *ast.MappingNode, *ast.MappingValueNode:
		return true
	}
	return false
}
