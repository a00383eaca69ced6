package main

import (
	"fmt"
	"iter"
	"reflect"
	"strings"

	"cowl/cmd/cowl/internal/style"

	"github.com/alecthomas/kong"
)

// flagRow is a flag that a table makes. In the grammar, a field of type any
// with a tag like table:"size cut" takes the flags of these sections or single
// fields of the style, table:"tests" those of a swatch.
type flagRow struct {
	name, holder, help, group string
	hidden                    bool
	of                        reflect.Type
}

// fieldValue is what the flag of a field of the style was given, SI.
type fieldValue float64

// styleRows are the flags of fields of the style.
func styleRows(of ...string) []flagRow {
	var out []flagRow
	for _, f := range style.Flags(of...) {
		r := flagRow{name: f.Flag(), holder: f.Holder(), help: f.Help, of: reflect.TypeFor[*fieldValue]()}
		if r.holder == "" {
			r.of = reflect.TypeFor[bool]()
		}
		out = append(out, r)
	}
	return out
}

// makeFlags makes the flags of the tables in the grammar v: each a struct that
// kong reads as any other.
func makeFlags(v reflect.Value) {
	for i := range v.NumField() {
		table, ok := v.Type().Field(i).Tag.Lookup("table")
		switch {
		case table == "tests":
			v.Field(i).Set(flagsOf(testRows()))
		case ok:
			v.Field(i).Set(flagsOf(styleRows(strings.Fields(table)...)))
		case v.Field(i).Kind() == reflect.Struct:
			makeFlags(v.Field(i))
		}
	}
}

// flagsOf is a pointer to a struct with a field for each row.
func flagsOf(rows []flagRow) reflect.Value {
	var out []reflect.StructField
	for i, r := range rows {
		tag := fmt.Sprintf("name:%q placeholder:%q help:%q group:%q", r.name, r.holder, r.help, r.group)
		if r.hidden {
			tag += ` hidden:""`
		}
		out = append(out, reflect.StructField{Name: fmt.Sprintf("Row%d", i), Type: r.of, Tag: reflect.StructTag(tag)})
	}
	return reflect.New(reflect.StructOf(out))
}

// given yields the names and values of the flags that were given.
func given(flags any) iter.Seq2[string, reflect.Value] {
	return func(yield func(string, reflect.Value) bool) {
		if flags == nil {
			return // there was no command line
		}
		v := reflect.ValueOf(flags).Elem()
		for i := range v.NumField() {
			if !v.Field(i).IsZero() && !yield(v.Type().Field(i).Tag.Get("name"), reflect.Indirect(v.Field(i))) {
				return
			}
		}
	}
}

// isGiven reports whether the flag of that name was given.
func isGiven(flags any, name string) bool {
	for n := range given(flags) {
		if n == name {
			return true
		}
	}
	return false
}

// readField reads the value of a flag of the style.
func readField(ctx *kong.DecodeContext, target reflect.Value) error {
	var text string
	if err := ctx.Scan.PopValueInto("value", &text); err != nil {
		return err
	}
	v, err := style.Flag(ctx.Value.Name).Parse(text)
	target.SetFloat(v)
	return err
}

// setFields lets the flags of the style have their say.
func setFields(s *style.Style, flags any) error {
	for name, given := range given(flags) {
		v := 1.0 // true
		if given.CanFloat() {
			v = given.Float()
		}
		if err := s.Set(style.Flag(name).Name, v, "--"+name); err != nil {
			return err
		}
	}
	return nil
}
