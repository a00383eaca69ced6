package materials

import (
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// float returns the number of e; anything else is reported.
func (r *reader) float(e entry) (float64, bool) {
	switch n := e.value.(type) {
	case *ast.FloatNode:
		return n.Value, true
	case *ast.IntegerNode:
		switch v := n.Value.(type) {
		case int64:
			return float64(v), true
		case uint64:
			return float64(v), true
		}
	}
	r.fail(e.line, "%s is %s, want a number", e.key, shown(e.value))
	return 0, false
}

// word returns the text of e on one line; a number is taken as its digits.
func (r *reader) word(e entry) string {
	switch n := e.value.(type) {
	case *ast.StringNode:
		return strings.Join(strings.Fields(n.Value), " ")
	case *ast.LiteralNode:
		return strings.Join(strings.Fields(n.Value.Value), " ")
	case *ast.IntegerNode, *ast.FloatNode:
		return strings.TrimSpace(n.GetToken().Value)
	}
	r.fail(e.line, "%s is %s, want text", e.key, shown(e.value))
	return ""
}

// shown renders a value for a message, short and on one line.
func shown(n ast.Node) string {
	if n == nil || n.Type() == ast.NullType {
		return "empty"
	}
	s := strings.Join(strings.Fields(n.String()), " ")
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return s
}
