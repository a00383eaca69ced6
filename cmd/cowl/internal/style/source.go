package style

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"cowl/materials/scalar"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// source walks the syntax tree of a style file and gathers errors with lines.
type source struct {
	file  string
	lines []string
	errs  []error
}

// entry is one key of a mapping.
type entry struct {
	key   string
	at    ast.Node // the key
	value ast.Node
}

// fail notes an error at node n, with its line and a caret under its column.
func (r *source) fail(n ast.Node, format string, args ...any) {
	line, column := place(n)
	e := &limit.Error{At: r.origin(n), Says: limit.Say(format, args...)}
	if n != nil {
		e.Field = strings.TrimPrefix(n.GetPath(), "$.")
	}
	if line <= len(r.lines) && strings.TrimSpace(r.lines[line-1]) != "" {
		head := fmt.Sprintf("%6d | ", line)
		e.Says = limit.Say("%v\n%s%s\n%s| %s^", e.Says, head, r.lines[line-1], strings.Repeat(" ", len(head)-2), strings.Repeat(" ", column-1))
	}
	r.errs = append(r.errs, e)
}

// place returns line and column of n, 1, 1 where the parser gives none.
func place(n ast.Node) (line, column int) {
	if n == nil || n.GetToken() == nil || n.GetToken().Position == nil {
		return 1, 1
	}
	p := n.GetToken().Position
	return max(p.Line, 1), max(p.Column, 1)
}

// origin returns "file:line" of n.
func (r *source) origin(n ast.Node) string {
	line, _ := place(n)
	return fmt.Sprintf("%s:%d", r.file, line)
}

// document returns the top-level entries of the only document in data; none
// for an empty file.
func (r *source) document(data []byte) []entry {
	if !utf8.Valid(data) {
		r.fail(nil, "not UTF-8 text, want a style file in YAML")
		return nil
	}
	data = scalar.Text(data)
	r.lines = strings.Split(string(data), "\n")
	tree, err := parser.ParseBytes(data, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		line, what, lines := scalar.Syntax(err)
		r.errs = append(r.errs, &limit.Error{At: fmt.Sprintf("%s:%d", r.file, line), Says: limit.Say("%s\n%s", what, lines)})
		return nil
	}
	if len(tree.Docs) > 1 {
		r.fail(nil, "%d documents, want one", len(tree.Docs))
		return nil
	}
	if len(tree.Docs) == 0 || tree.Docs[0].Body == nil {
		return nil
	}
	return r.mapping(tree.Docs[0].Body, "the file")
}

// mapping returns the entries of a YAML mapping, each key once.
func (r *source) mapping(n ast.Node, what string) []entry {
	var values []*ast.MappingValueNode
	switch n := n.(type) {
	case *ast.MappingNode:
		values = n.Values
	case *ast.MappingValueNode:
		values = []*ast.MappingValueNode{n}
	default:
		r.fail(n, "%s is %s, want keys and values, one a line", what, scalar.Shown(n))
		return nil
	}
	out := make([]entry, 0, len(values))
	seen := map[string]ast.Node{}
	for _, v := range values {
		e := entry{key: v.Key.String(), at: v.Key, value: v.Value}
		if s, ok := v.Key.(*ast.StringNode); ok {
			e.key = s.Value
		}
		if first, ok := seen[e.key]; ok {
			line, _ := place(first)
			r.fail(e.at, "%s is set twice, first in line %d", e.key, line)
			continue
		}
		seen[e.key] = e.at
		out = append(out, e)
	}
	return out
}

// number returns the number of e; anything else is reported.
func (r *source) number(e entry) (float64, bool) {
	v, ok := scalar.Number(e.value)
	if !ok {
		r.fail(e.value, "%s is %s, want a number", e.key, scalar.Shown(e.value))
	}
	return v, ok
}

// word returns the text of e on one line; anything else is reported.
func (r *source) word(e entry) (string, bool) {
	w, ok := scalar.Word(e.value)
	if !ok {
		r.fail(e.value, "%s is %s, want text", e.key, scalar.Shown(e.value))
	}
	return w, ok
}

// truth returns the yes, 1, or no, 0, of e; anything else is reported.
func (r *source) truth(e entry) (float64, bool) {
	switch n, ok := e.value.(*ast.BoolNode); {
	case ok && n.Value:
		return 1, true
	case ok:
		return 0, true
	}
	r.fail(e.value, "%s is %s, want true or false", e.key, scalar.Shown(e.value))
	return 0, false
}
