package ruler

import (
	"strings"
	"sync/atomic"
)

// spoken holds whether the program speaks in inches. Like the language of a program it is
// one for all that is written and is set before the first word.
var spoken atomic.Bool

// Speak sets the units of reports, patterns and sheets. Who runs a verb calls it once
// before anything is written; whatever has units of its own, as the window, takes Units.
func Speak(u Units) { spoken.Store(u == Inches) }

// Spoken are the units of reports, patterns and sheets: centimetres unless Speak said
// otherwise.
func Spoken() Units {
	if spoken.Load() {
		return Inches
	}
	return Centimetres
}

// Capital returns s, which begins with an ASCII letter, with that a capital, as a line begins.
func Capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
