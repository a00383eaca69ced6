package scalar

import (
	"bytes"

	"github.com/goccy/go-yaml/token"
)

// What a file may hold at most. The largest that cowl writes, a front of 3000
// points, has a half of the marks; its nesting is 4 deep. The time of the parser
// grows with the square of the keys in one mapping.
const (
	mostBytes = 1 << 20
	mostWord  = 1 << 17 // bytes in quotes: they take the square of their length
	mostMarks = 60000   // signs and lines: tokens are no more than twice as many
	mostDepth = 30      // of lists and mappings in one another
	mostKeys  = 1000    // of one mapping
	mostLinks = 100     // anchors, aliases and tags, which no key of cowl takes
	mostHeads = 100     // lines --- that begin a document, of which one is wanted
)

// marks counts the characters that may end a token.
func marks(data []byte) int {
	n := 0
	for _, c := range data {
		if bytes.IndexByte([]byte("\n[]{},:-?&*!#%|>@`'\""), c) >= 0 {
			n++
		}
	}
	return n
}

// quoted returns the bytes of the longest part of a line behind a quotation mark that
// does not end before.
func quoted(data []byte) int {
	most, from := 0, -1
	var mark byte
	for i, c := range data {
		switch {
		case c == '\n' || c == '\r' || from >= 0 && c == mark:
			from = -1
		case from < 0 && (c == '"' || c == '\''):
			from, mark = i, c
		case from >= 0:
			most = max(most, i-from)
		}
	}
	return most
}

// level is a list or a mapping that is open.
type level struct {
	column  int  // of its keys or hyphens; 0: it stands in brackets
	braces  bool // it is a mapping in brackets
	keys    int
	entries int // of a mapping in brackets, with a key or without
}

// levels are those about a token, the outermost first.
type levels []level

// guard refuses what would cost the parser much.
func guard(tokens token.Tokens) *Fault {
	var open levels
	links, heads := 0, 0
	for i, t := range tokens {
		switch t.Type {
		case token.SequenceStartType, token.MappingStartType:
			open = append(open, level{braces: t.Type == token.MappingStartType})
		case token.CollectEntryType:
			if n := len(open) - 1; n >= 0 && open[n].braces {
				open[n].entries++
			}
		case token.SequenceEndType, token.MappingEndType:
			open = open.closed()
		case token.SequenceEntryType, token.MappingKeyType:
			open = open.at(t.Position.Column)
		case token.MappingValueType:
			open = open.at(tokens[max(i-1, 0)].Position.Column)
			open[len(open)-1].keys++
		case token.AnchorType, token.AliasType, token.TagType:
			links++
		case token.DocumentHeaderType:
			heads++
		}
		switch {
		case len(open) > mostDepth:
			return faultAt(t, "nested more than 30 deep, want lists and mappings 4 deep at most")
		case len(open) > 0 && max(open[len(open)-1].keys, open[len(open)-1].entries) > mostKeys:
			return faultAt(t, "more than 1000 keys in one place, want each key once")
		case links > mostLinks:
			return faultAt(t, "more than 100 anchors, aliases and tags, want none: write the values out")
		case heads > mostHeads:
			return faultAt(t, "more than 100 documents, want one")
		}
	}
	return nil
}

func faultAt(t *token.Token, says string) *Fault {
	return &Fault{max(t.Position.Line, 1), max(t.Position.Column, 1), says}
}

// closed leaves the innermost brackets.
func (l levels) closed() levels {
	for k := len(l) - 1; k >= 0; k-- {
		if l[k].column == 0 {
			return l[:k]
		}
	}
	return l
}

// at leaves what is indented further than a column and enters what stands there.
// Within brackets columns mean nothing.
func (l levels) at(column int) levels {
	for len(l) > 0 && l[len(l)-1].column > column {
		l = l[:len(l)-1]
	}
	if len(l) > 0 && (l[len(l)-1].column == 0 || l[len(l)-1].column == column) {
		return l
	}
	return append(l, level{column: column})
}
