package main

import (
	"iter"
	"reflect"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/style"

	"github.com/alecthomas/kong"
)

// A field of type any with a tag like fields:"size cut" holds the flags of these
// sections or single fields of the style: a struct made of the table.

// fieldValue is what such a flag was given, SI; a flag not given is nil.
type fieldValue float64

// makeFlags makes the flags of every field with that tag in the grammar v.
func makeFlags(v reflect.Value) {
	for i := range v.NumField() {
		of, isOurs := v.Type().Field(i).Tag.Lookup("fields")
		switch field := v.Field(i); {
		case isOurs:
			field.Set(reflect.New(flagsOf(style.Flags(strings.Fields(of)...))))
		case field.Kind() == reflect.Struct:
			makeFlags(field)
		}
	}
}

// flagsOf is a struct with a flag for each of the fields, by the name of the
// field of the style.
func flagsOf(fields []style.Field) reflect.Type {
	var out []reflect.StructField
	for _, f := range fields {
		as := reflect.StructField{Name: "Of_" + f.Name(), Type: reflect.TypeFor[*fieldValue](), Tag: reflect.StructTag("name:" + strconv.Quote(f.Flag()) + " help:" + strconv.Quote(f.Help()))}
		if f.Holder() == "" {
			as.Type = reflect.TypeFor[bool]()
		} else {
			as.Tag += reflect.StructTag(" placeholder:" + strconv.Quote(f.Holder()))
		}
		out = append(out, as)
	}
	return reflect.StructOf(out)
}

// readField reads the value of a flag made by flagsOf.
func readField(ctx *kong.DecodeContext, target reflect.Value) error {
	var text string
	if err := ctx.Scan.PopValueInto("value", &text); err != nil {
		return err
	}
	v, err := style.Flag(ctx.Value.Name).Parse(text)
	target.SetFloat(v)
	return err
}

// given yields the names and values of the fields whose flags were given.
func given(flags any) iter.Seq2[string, float64] {
	return func(yield func(string, float64) bool) {
		if flags == nil {
			return // there was no command line
		}
		r := reflect.ValueOf(flags).Elem()
		for i := range r.NumField() {
			v, is := 0.0, false
			switch flag := r.Field(i).Interface().(type) {
			case bool:
				v, is = 1, flag
			case *fieldValue:
				if is = flag != nil; is {
					v = float64(*flag)
				}
			}
			if is && !yield(strings.TrimPrefix(r.Type().Field(i).Name, "Of_"), v) {
				return
			}
		}
	}
}

// setFields lets the flags have their say.
func setFields(s *style.Style, flags any) error {
	for name, v := range given(flags) {
		if err := s.Set(name, v, "--"+strings.ReplaceAll(name, "_", "-")); err != nil {
			return err
		}
	}
	return nil
}

// isGiven reports whether the flag of that field of the style was given.
func isGiven(flags any, field string) bool {
	for name := range given(flags) {
		if name == field {
			return true
		}
	}
	return false
}
