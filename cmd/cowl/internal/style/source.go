package style

import (
	"errors"
	"fmt"
	"strings"

	"cowl/materials/scalar"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
)

// source walks the syntax tree of a style file and gathers errors with lines.
type source struct {
	file  string
	lines []string
	errs  []error // the first of them,
	more  int     // and how many more there are
}

// entry is one key of a mapping.
type entry struct {
	key   string
	at    ast.Node // the key
	value ast.Node
}

// mostWord is how many letters a name or a path may have.
const mostWord = 1000

// mostErrors are told of one file; who makes more has another sort of file.
const mostErrors = 20

// fail notes an error at node n, with its line and a caret under its column.
func (r *source) fail(n ast.Node, format string, args ...any) {
	line, column := place(n)
	e := &limit.Error{At: r.origin(n), Says: limit.Say("%v%s", limit.Say(format, args...),
		scalar.Excerpt(r.lines, line, column))}
	if n != nil && len(r.errs) < mostErrors {
		e.Field = strings.TrimPrefix(n.GetPath(), "$.")
	}
	r.note(e)
}

// note keeps an error, if it is not one too many.
func (r *source) note(err error) {
	if len(r.errs) < mostErrors {
		r.errs = append(r.errs, err)
	} else {
		r.more++
	}
}

// wrong returns all that is wrong with the file.
func (r *source) wrong() error {
	if r.more > 0 {
		r.errs = append(r.errs, &limit.Error{At: r.file, Says: limit.Say("%d more mistakes, not listed", r.more)})
	}
	return errors.Join(r.errs...)
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
	d, fault := scalar.Parse(data, "one style in YAML: keys and values, one a line")
	r.lines = d.Lines
	if fault != nil {
		at := fmt.Sprintf("%s:%d", r.file, fault.Line)
		r.note(&limit.Error{At: at, Says: limit.Say("%s%s", fault.Says, scalar.Excerpt(d.Lines, fault.Line, fault.Column))})
		return nil
	}
	if d.Body == nil {
		return nil
	}
	return r.mapping(d.Body, "the file")
}

// mapping returns the entries of a YAML mapping, each key once.
func (r *source) mapping(n ast.Node, what string) []entry {
	values, ok := scalar.Pairs(n)
	if !ok {
		r.fail(n, "%s is %s, want keys and values, one a line", what, scalar.Shown(n))
		return nil
	}
	out := make([]entry, 0, len(values))
	seen := map[string]ast.Node{}
	for _, v := range values {
		e := entry{key: scalar.Key(v), at: v.Key, value: v.Value}
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
	if len(w) > mostWord {
		r.fail(e.value, "%s has %d letters, want at most %d", e.key, len([]rune(w)), mostWord)
		return "", false
	}
	if c, bad := scalar.Control(w); bad {
		r.fail(e.value, "%s has the control character %U, want plain text", e.key, c)
		return "", false
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
