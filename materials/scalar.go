package materials

import "cowl/materials/scalar"

// float returns the number of e; anything else is reported.
func (r *reader) float(e entry) (float64, bool) {
	v, ok := scalar.Number(e.value)
	if !ok {
		r.fail(e.line, e.key, "%s is %s, want a number", e.key, scalar.Shown(e.value))
	}
	return v, ok
}

// word returns the text of e on one line; a number is taken as its digits.
func (r *reader) word(e entry) string {
	w, ok := scalar.Word(e.value)
	if !ok {
		r.fail(e.line, e.key, "%s is %s, want text", e.key, scalar.Shown(e.value))
	}
	if len(w) > scalar.MostWord {
		r.fail(e.line, e.key, "%s has %d letters, want at most %d", e.key, len([]rune(w)), scalar.MostWord)
		return ""
	}
	if c, bad := scalar.Control(w); bad {
		r.fail(e.line, e.key, "%s has the control character %U, want plain text", e.key, c)
		return ""
	}
	return w
}
