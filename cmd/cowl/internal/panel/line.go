package panel

import (
	"slices"
	"unicode"
)

// line is a text with a caret; what lies between mark and caret is marked.
type line struct {
	text        []rune // never changed in place: former lines share it
	caret, mark int
}

// whole is a text of which everything is marked, so that typing replaces it.
func whole(text string) line {
	rs := []rune(text)
	return line{rs, len(rs), 0}
}

// marked returns what is marked, from and to; both are the caret where nothing is.
func (l line) marked() (from, to int) { return min(l.caret, l.mark), max(l.caret, l.mark) }

// put replaces what is marked by runes.
func (l line) put(rs ...rune) line {
	from, to := l.marked()
	at := from + len(rs)
	return line{slices.Concat(l.text[:from], rs, l.text[to:]), at, at}
}

// rub takes out what is marked, else the runes between the caret and to.
func (l line) rub(to int) line {
	if l.caret == l.mark {
		l.mark = l.within(to)
	}
	return l.put()
}

// move brings the caret to a place; keep leaves the mark where it is.
func (l line) move(to int, keep bool) line {
	l.caret = l.within(to)
	if !keep {
		l.mark = l.caret
	}
	return l
}

func (l line) within(at int) int { return min(max(at, 0), len(l.text)) }

// step returns where the caret goes by one rune, or by one word: −1 back, 1 on.
func (l line) step(by int, word bool) int {
	if !word {
		return l.caret + by
	}
	at := l.caret
	skip := func(letters bool) {
		for {
			next := at
			if by < 0 {
				next--
			}
			if next < 0 || next >= len(l.text) || inWord(l.text[next]) != letters {
				return
			}
			at += by
		}
	}
	skip(false)
	skip(true)
	return at
}

// word marks the word at a place.
func (l line) word(at int) line {
	from, to := l.within(at), l.within(at)
	for from > 0 && inWord(l.text[from-1]) {
		from--
	}
	for to < len(l.text) && inWord(l.text[to]) {
		to++
	}
	return line{l.text, to, from}
}

// inWord reports whether a rune is part of a word; the parts of a path are words.
func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }
