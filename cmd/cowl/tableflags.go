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
// fields of the style, table:"tests" those of a swatch and table:"values" those
// of a cloth.
type flagRow struct {
	name, holder, help, group string
	hidden                    bool
	of                        reflect.Type
	reader                    string // of readers, for a number that is kept in SI
}

// readers read the numbers of flags; each knows the flag by its name.
var readers = map[string]func(flag, text string) (float64, error){
	"style": func(flag, text string) (float64, error) { return style.Flag(flag).Parse(text) },
	"value": func(flag, text string) (float64, error) { return valueFields[flag].Parse(text) },
}

// newParser is a parser of the grammar with the flags of all tables.
func newParser(grammar any, o ...kong.Option) (*kong.Kong, error) {
	makeFlags(reflect.ValueOf(grammar).Elem())
	for name, read := range readers {
		o = append(o, kong.NamedMapper(name, kong.MapperFunc(func(ctx *kong.DecodeContext, target reflect.Value) error {
			var text string
			if err := ctx.Scan.PopValueInto("value", &text); err != nil {
				return err
			}
			v, err := read(ctx.Value.Name, text)
			target.Set(reflect.ValueOf(&v))
			return err
		})))
	}
	return kong.New(grammar, append(o, kong.NamedMapper("count", kong.MapperFunc(countFlag)))...)
}

// styleRows are the flags of fields of the style.
func styleRows(of ...string) []flagRow {
	var out []flagRow
	for _, f := range style.Flags(of...) {
		r := flagRow{name: f.Flag(), holder: f.Holder(), help: f.Help, of: reflect.TypeFor[*float64](), reader: "style"}
		if r.holder == "" {
			r.of, r.reader = reflect.TypeFor[bool](), ""
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
		case table == "values":
			v.Field(i).Set(flagsOf(valueRows()))
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
		tag := fmt.Sprintf("name:%q placeholder:%q help:%q group:%q type:%q", r.name, r.holder, r.help, r.group, r.reader)
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
