package scalar

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml"
)

// mostShown is how many letters of a file a message shows at once.
const mostShown = 120

// Brief returns text for a message: on one line, at most 120 letters, and with �
// for what a terminal would obey.
func Brief(text string) string {
	r := []rune(text[:min(len(text), 4*mostShown+4)])
	if len(r) > mostShown {
		r = append(r[:mostShown-1], '…')
	}
	return tame(r)
}

// tame puts � for control characters.
func tame(r []rune) string {
	for i, c := range r {
		if c != '\t' && !unicode.IsPrint(c) {
			r[i] = unicode.ReplacementChar
		}
	}
	return string(r)
}

// Excerpt shows a line of a file with a caret under a column, in up to 120
// letters; nothing where the line is empty or not there. Both count from 1.
func Excerpt(lines []string, line, column int) string {
	if line < 1 || line > len(lines) || strings.TrimSpace(lines[line-1]) == "" {
		return ""
	}
	text := []rune(strings.ReplaceAll(lines[line-1], "\t", " "))
	at := min(max(column-1, 0), len(text))
	if len(text) > mostShown {
		from := min(max(at-mostShown/2, 0), len(text)-mostShown)
		text, at = append([]rune(nil), text[from:from+mostShown]...), at-from
	}
	head := fmt.Sprintf("%6d | ", line)
	return "\n" + head + tame(text) + "\n" + strings.Repeat(" ", len(head)-2) + "| " + strings.Repeat(" ", at) + "^"
}

// syntax says where and what the parser found wrong; line 1 if it does not tell.
func syntax(err error) *Fault {
	var at *yaml.SyntaxError
	if !errors.As(err, &at) || at.Token == nil {
		first, _, _ := strings.Cut(err.Error(), "\n")
		return &Fault{1, 1, Brief(first)}
	}
	return faultAt(at.Token, Brief(at.Message))
}
