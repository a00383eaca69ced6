package style

import (
	"errors"
	"strings"
)

// located puts before each part of err the line or flag that set the field it
// speaks of, in place of the package it comes from; nil stays nil. Messages
// begin "package: field value, want …".
func (s *Style) located(err error) error {
	return s.each(err, func(words string) string { return s.origin("", words) })
}

// locatedPoint is located for messages about points of the block.
func (s *Style) locatedPoint(err error) error {
	return s.each(err, func(words string) string {
		if at := s.origin("block ", words); at != s.file {
			return at
		}
		return s.from["block"]
	})
}

// each rewrites the parts of a joined error.
func (s *Style) each(err error, origin func(words string) string) error {
	if err == nil {
		return nil
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		var out []error
		for _, e := range many.Unwrap() {
			out = append(out, s.each(e, origin))
		}
		return errors.Join(out...)
	}
	_, words, ok := strings.Cut(err.Error(), ": ")
	if !ok {
		words = err.Error()
	}
	if at := origin(words); at != "" {
		return errors.New(at + ": " + words)
	}
	return err
}

// origin returns where the field that words begin with was set: of several the
// one with the longest name; the file if there is none.
func (s *Style) origin(prefix, words string) string {
	best, at := "", s.file
	for name, from := range s.from {
		short, ok := strings.CutPrefix(name, prefix)
		if ok && len(short) > len(best) && strings.HasPrefix(words, short+" ") {
			best, at = short, from
		}
	}
	return at
}
