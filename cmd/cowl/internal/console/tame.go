package console

import (
	"io"
	"os"
	"unicode"
	"unicode/utf8"

	"golang.org/x/term"
)

// tame writes text through with � for every character that a terminal would obey:
// names come from files of others. A new line and a tab pass.
type tame struct {
	w    io.Writer
	rest []byte // of a letter that the last write has cut
}

// Tame returns a tame writer on w.
func Tame(w io.Writer) io.Writer { return &tame{w: w} }

// Write writes p. A letter that p cuts waits for the next write.
func (t *tame) Write(p []byte) (int, error) {
	in := append(t.rest, p...)
	var out []byte
	for len(in) > 0 && utf8.FullRune(in) {
		r, n := utf8.DecodeRune(in)
		if isObeyed(r) {
			r = unicode.ReplacementChar
		}
		out, in = utf8.AppendRune(out, r), in[n:]
	}
	t.rest = append([]byte(nil), in...)
	if _, err := t.w.Write(out); err != nil {
		return 0, err
	}
	return len(p), nil
}

// isObeyed reports whether a terminal acts on r instead of showing it: control
// characters, and those that turn the direction of what follows.
func isObeyed(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\t' || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}

// Terminal returns the terminal that w writes to; nil if it is none.
func Terminal(w io.Writer) io.Writer {
	if t, ok := w.(*tame); ok {
		w = t.w
	}
	if f, ok := w.(*os.File); ok && term.IsTerminal(int(f.Fd())) {
		return f
	}
	return nil
}
