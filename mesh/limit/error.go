package limit

import (
	"errors"
	"fmt"
	"strings"
)

// Words are a message that is not written yet. What is in its arguments a
// Quantity, Words or an error is written in the units of the reader.
type Words struct {
	format string
	args   []any
}

// Say is a message as fmt.Sprintf makes it, with %v for an error.
func Say(format string, args ...any) Words { return Words{format, args} }

// In writes the message with its lengths in u.
func (w Words) In(u Units) string {
	args := make([]any, len(w.args))
	for i, a := range w.args {
		switch a := a.(type) {
		case Quantity:
			args[i] = a.in(u)
		case Words:
			args[i] = a.In(u)
		case error:
			args[i] = In(a, u)
		default:
			args[i] = a
		}
	}
	return fmt.Sprintf(w.format, args...)
}

// String writes the message in centimetres.
func (w Words) String() string { return w.In(Centimetres) }

// Error is what is wrong with something of the user's.
type Error struct {
	Field string // that it speaks of, as in Range; empty: no single one
	At    string // where that was set, "file:line" or "--flag"; empty: not known
	Says  Words
}

// Errorf returns an Error about a field.
func Errorf(field, format string, args ...any) error {
	return &Error{Field: field, Says: Say(format, args...)}
}

// Under returns err as what is wrong with what was set at a place.
func Under(at string, err error) error { return &Error{At: at, Says: Say("%v", err)} }

// Error writes the message in centimetres.
func (e *Error) Error() string { return In(e, Centimetres) }

// Unwrap returns the errors among what it says.
func (e *Error) Unwrap() []error {
	var out []error
	for _, a := range e.Says.args {
		if err, ok := a.(error); ok {
			out = append(out, err)
		}
	}
	return out
}

// In writes err with the lengths of every Error in it in u, a line for each of
// joined ones. It sees an Error through Say and errors.Join, not through
// fmt.Errorf.
func In(err error, u Units) string {
	var lines []string
	for _, part := range parts(err) {
		line := ""
		if e, ok := part.(*Error); ok {
			if line = e.Says.In(u); e.At != "" {
				line = e.At + ": " + line
			}
		} else {
			line = part.Error()
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

// Placed returns err with the place where the field of each Error in it was
// set; one that has its place keeps it. Nil stays nil.
func Placed(err error, at func(field string) string) error {
	var out []error
	for _, part := range parts(err) {
		e := Error{Says: Say("%v", part)}
		if one, ok := part.(*Error); ok {
			e = *one
		}
		if e.At == "" {
			e.At = at(e.Field)
		}
		out = append(out, &e)
	}
	if len(out) == 1 {
		return out[0]
	}
	return errors.Join(out...)
}

// Reworded returns err with each Error in it said in other words: reword is given every
// format and string that its message is made of. Nil stays nil.
func Reworded(err error, reword func(string) string) error {
	var out []error
	for _, part := range parts(err) {
		if one, ok := part.(*Error); ok {
			e := *one
			e.Says = e.Says.reworded(reword)
			part = &e
		}
		out = append(out, part)
	}
	if len(out) == 1 {
		return out[0]
	}
	return errors.Join(out...)
}

// reworded is w in other words, as Reworded has them of an error.
func (w Words) reworded(reword func(string) string) Words {
	out := Words{reword(w.format), nil}
	for _, a := range w.args {
		switch b := a.(type) {
		case string:
			a = reword(b)
		case Words:
			a = b.reworded(reword)
		case error:
			a = Reworded(b, reword)
		}
		out.args = append(out.args, a)
	}
	return out
}

// parts returns the errors that err was joined from, itself if it was not.
func parts(err error) []error {
	if err == nil {
		return nil
	}
	many, ok := err.(interface{ Unwrap() []error })
	if _, one := err.(*Error); one || !ok || errors.Join(many.Unwrap()...).Error() != err.Error() {
		return []error{err}
	}
	var out []error
	for _, e := range many.Unwrap() {
		out = append(out, parts(e)...)
	}
	return out
}
