// Package scalar reads a YAML file as far as it knows nothing of what is in it:
// the syntax tree, refused where it is larger than any file of ours, plain numbers
// and words, and excerpts for messages. The readers of fabrics and of styles
// share it. Start at Parse, Number and Word.
package scalar

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"
)

// Number returns the number that n is, and whether it is one. It is read from
// its digits, so that 010 is ten.
func Number(n ast.Node) (float64, bool) {
	switch n := n.(type) {
	case *ast.FloatNode, *ast.IntegerNode:
		text := strings.ReplaceAll(n.GetToken().Value, "_", "")
		v, err := strconv.ParseFloat(text, 64)
		return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
	}
	return 0, false
}

// Word returns the text of n on one line, and whether it is text; a number is
// taken as its digits.
func Word(n ast.Node) (string, bool) {
	switch n := n.(type) {
	case *ast.StringNode:
		return strings.Join(strings.Fields(n.Value), " "), true
	case *ast.LiteralNode:
		return strings.Join(strings.Fields(n.Value.Value), " "), true
	case *ast.IntegerNode, *ast.FloatNode:
		return strings.TrimSpace(n.GetToken().Value), true
	}
	return "", false
}

// Control returns the first control character in a text, and whether there is one:
// none is part of a name.
func Control(text string) (rune, bool) {
	for _, r := range text {
		if unicode.IsControl(r) {
			return r, true
		}
	}
	return 0, false
}

// MostWord is how many letters a text may have: a note about a fabric, the longest
// there is, takes a quarter.
const MostWord = 4000

// Shown renders a value for a message, short and on one line.
func Shown(n ast.Node) string {
	if n == nil || n.Type() == ast.NullType {
		return "empty"
	}
	s := strings.Join(strings.Fields(n.String()), " ")
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return Brief(s)
}

// Pairs returns the keys and values of a mapping; false of anything else.
func Pairs(n ast.Node) ([]*ast.MappingValueNode, bool) {
	switch n := n.(type) {
	case *ast.MappingNode:
		return n.Values, true
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{n}, true
	}
	return nil, false
}

// Key returns a key of a mapping as text, for messages too: no more than 120
// letters of it.
func Key(v *ast.MappingValueNode) string {
	if s, ok := v.Key.(*ast.StringNode); ok {
		return Brief(s.Value)
	}
	return Brief(v.Key.String())
}
