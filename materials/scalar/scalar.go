// Package scalar reads the plain values of a YAML file: numbers and words. The
// readers of fabrics and of styles share it. Start at Number and Word.
package scalar

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/printer"
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

// Shown renders a value for a message, short and on one line.
func Shown(n ast.Node) string {
	if n == nil || n.Type() == ast.NullType {
		return "empty"
	}
	s := strings.Join(strings.Fields(n.String()), " ")
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return s
}

// Syntax says where and what the parser found wrong, and shows the lines about
// it; line 1 and no lines if it does not tell.
func Syntax(err error) (line int, what, lines string) {
	var syntax *yaml.SyntaxError
	if !errors.As(err, &syntax) || syntax.Token == nil {
		first, _, _ := strings.Cut(err.Error(), "\n")
		return 1, first, ""
	}
	p := printer.Printer{}
	lines = strings.TrimRight(p.PrintErrorToken(syntax.Token, false), "\n")
	return syntax.Token.Position.Line, syntax.Message, lines
}
