package scalar

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
)

// Document is the syntax tree of a file and its lines, for messages.
type Document struct {
	Body  ast.Node // nil: the file is empty
	Lines []string
}

// Fault is what is wrong with a file as a whole.
type Fault struct {
	Line, Column int
	Says         string
}

// Parse reads a file that is to hold one document. Want says what, for messages:
// "one style in YAML". What would cost the parser much is refused before it.
func Parse(data []byte, want string) (d Document, fault *Fault) {
	whole := func(format string, args ...any) *Fault {
		return &Fault{1, 1, Brief(fmt.Sprintf(format, args...)) + ", want " + want}
	}
	data = Text(data)
	switch {
	case !utf8.Valid(data):
		return d, whole("not UTF-8 text")
	case len(data) > mostBytes:
		return d, whole("larger than %d MB", mostBytes>>20)
	case quoted(data) > mostWord:
		return d, whole("a word of more than %d kB in quotes", mostWord>>10)
	case marks(data) > mostMarks:
		return d, whole("more than %d lines and signs", mostMarks)
	}
	defer func() {
		if r := recover(); r != nil { // a fault of the parser
			fault = whole("cannot be read as YAML: %v", r)
		}
	}()
	d.Lines = strings.Split(string(data), "\n")
	tokens := lexer.Tokenize(string(data))
	if fault := guard(tokens); fault != nil {
		return d, fault
	}
	tree, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	switch {
	case err != nil:
		return d, syntax(err)
	case len(tree.Docs) > 1:
		return d, whole("%d documents", len(tree.Docs))
	case len(tree.Docs) == 1:
		d.Body = tree.Docs[0].Body
	}
	return d, nil
}

var byteOrder = []byte("\ufeff")

// Text returns a file as the parser counts its lines: without the mark of byte
// order that some editors put first, and with every line ended by \n, whether
// it was \r\n or \r (YAML 1.2.2, 5.2 and 5.4).
func Text(data []byte) []byte {
	data = bytes.TrimPrefix(data, byteOrder)
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	return bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
}
