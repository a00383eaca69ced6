//go:build cgo

package window

import (
	"strconv"
	"unicode"
	"unicode/utf8"
)

// plural writes a count with its noun.
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}

// says turns words about a cowl at the front into those about the cowl of p. What the user
// has named is not among them.
func (p *Pane) says(text string) string { return p.Style.Cut.Worn.Say(text) }

// says is that of the pane that the controls change.
func (a *App) says(text string) string { return a.pane().says(text) }

// upper begins a line with a capital.
func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
