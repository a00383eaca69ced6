// Package flags makes flags of the command line from tables: those of the style, and others.
// Start at [NewParser].
package flags

import (
	"fmt"
	"iter"
	"reflect"
	"strings"

	"cowl/cmd/cowl/internal/style"

	"github.com/alecthomas/kong"
)

// Row is a flag that a table makes.
type Row struct {
	Name, Holder, Help, Group string
	Hidden                    bool
	Of                        reflect.Type
}

// Table is the flags that a field of type any takes in the grammar, by the name of
// the table in its tag: table:"tests". A tag like table:"size cut" that names no table
// takes those of these sections or single fields of the style.
type Table struct {
	Rows []Row
	Read func(flag, text string) (float64, error) // of rows that are a *float64, in SI
}

// Tables are tables by their names.
type Tables map[string]Table

// ofStyle is the name of the reader of numbers of the style.
const ofStyle = "style"

// NewParser is a parser of the grammar with the flags of the style and of all tables.
func NewParser(grammar any, tables Tables, o ...kong.Option) (*kong.Kong, error) {
	Make(grammar, tables)
	readers := map[string]func(flag, text string) (float64, error){
		ofStyle: func(flag, text string) (float64, error) { return style.Flag(flag).Parse(text) },
	}
	for name, t := range tables {
		if t.Read != nil {
			readers[name] = t.Read
		}
	}
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
func styleRows(of ...string) []Row {
	var out []Row
	for _, f := range style.Flags(of...) {
		r := Row{Name: f.Flag(), Holder: f.Holder(), Help: f.Help, Of: reflect.TypeFor[*float64]()}
		if r.Holder == "" {
			r.Of = reflect.TypeFor[bool]()
		}
		out = append(out, r)
	}
	return out
}

// Make makes the flags of the tables in the grammar, a pointer to a struct: each a
// struct that kong reads as any other.
func Make(grammar any, tables Tables) {
	makeIn(reflect.ValueOf(grammar).Elem(), tables)
}

func makeIn(v reflect.Value, tables Tables) {
	for i := range v.NumField() {
		name, ok := v.Type().Field(i).Tag.Lookup("table")
		switch t, named := tables[name]; {
		case named:
			v.Field(i).Set(flagsOf(t.Rows, name))
		case ok:
			v.Field(i).Set(flagsOf(styleRows(strings.Fields(name)...), ofStyle))
		case v.Field(i).Kind() == reflect.Struct:
			makeIn(v.Field(i), tables)
		}
	}
}

// flagsOf is a pointer to a struct with a field for each row. Reader is the name of the
// one that reads its numbers.
func flagsOf(rows []Row, reader string) reflect.Value {
	var out []reflect.StructField
	for i, r := range rows {
		kind := ""
		if r.Of == reflect.TypeFor[*float64]() {
			kind = reader
		}
		tag := fmt.Sprintf("name:%q placeholder:%q help:%q group:%q type:%q", r.Name, r.Holder, r.Help, r.Group, kind)
		if r.Hidden {
			tag += ` hidden:""`
		}
		out = append(out, reflect.StructField{Name: fmt.Sprintf("Row%d", i), Type: r.Of, Tag: reflect.StructTag(tag)})
	}
	return reflect.New(reflect.StructOf(out))
}

// Given yields the names and values of the flags that were given.
func Given(flags any) iter.Seq2[string, reflect.Value] {
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

// IsGiven reports whether the flag of that name was given.
func IsGiven(flags any, name string) bool {
	for n := range Given(flags) {
		if n == name {
			return true
		}
	}
	return false
}

// SetFields lets the flags of the style have their say.
func SetFields(s *style.Style, flags any) error {
	for name, given := range Given(flags) {
		v := 1.0 // true
		if given.CanFloat() {
			v = given.Float()
		}
		if err := s.SetFlag(name, v); err != nil {
			return err
		}
	}
	return nil
}
