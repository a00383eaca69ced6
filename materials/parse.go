package materials

import (
	"errors"
	"fmt"

	"cowl/materials/infile"
	"cowl/materials/scalar"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
)

// keyBendMean sets warp and weft bending at once, for sources that publish the
// mean of the two directions only.
const keyBendMean = "bend_mean_uNm"

// FromFile reads one fabric from a YAML file; see Parse.
func FromFile(path string) (Fabric, error) {
	data, err := infile.Read(path, "a fabric file in YAML, as cowl fabrics NAME prints it", infile.YAML)
	if err != nil {
		return Fabric{}, err
	}
	return Parse(path, data)
}

// Parse reads one fabric in YAML; file names the data in messages. Only name,
// weight_gsm and the bending (bend_warp_uNm and bend_weft_uNm, or
// bend_mean_uNm for both) are required; what else is missing gets a default
// and is flagged Assumed. Every error carries file, line, key, value and what
// was wanted; unknown and repeated keys are errors.
func Parse(file string, data []byte) (Fabric, error) {
	r := reader{file: file}
	return r.finished(r.fabric(r.document(data)))
}

// ParseNode is Parse for a fabric that is a part of another file: n is the
// mapping with its keys, and messages have the lines of that file.
func ParseNode(file string, n ast.Node) (Fabric, error) {
	r := reader{file: file}
	return r.finished(r.fabric(r.mapping(n, "fabric")))
}

// finished returns what was read, or all that is wrong with it.
func (r *reader) finished(f Fabric) (Fabric, error) {
	if err := r.wrong(); err != nil {
		return Fabric{}, err
	}
	return f, limit.Placed(f.Validate(), func(string) string { return r.file })
}

// reader walks the syntax tree of one file and gathers errors with lines.
type reader struct {
	file string
	line map[string]int // of each top-level key
	errs []error        // the first of them,
	more int            // and how many more there are
}

// mostErrors are told of one file; who makes more has another sort of file.
const mostErrors = 20

// wrong returns all that is wrong with the file.
func (r *reader) wrong() error {
	if r.more > 0 {
		r.errs = append(r.errs, &limit.Error{At: r.file, Says: limit.Say("%d more mistakes, not listed", r.more)})
	}
	return errors.Join(r.errs...)
}

func (r *reader) fail(line int, field, format string, args ...any) {
	r.refuse(line, limit.Errorf(field, format, args...))
}

// refuse notes what is wrong with a line.
func (r *reader) refuse(line int, err error) {
	if len(r.errs) == mostErrors {
		r.more++
		return
	}
	r.errs = append(r.errs, limit.Placed(err, func(string) string { return fmt.Sprintf("%s:%d", r.file, line) }))
}

// entry is one key of a mapping.
type entry struct {
	key   string
	line  int
	value ast.Node
}

// fabric reads all entries. It is valid only if r.errs stays empty.
func (r *reader) fabric(entries []entry) (f Fabric) {
	if len(r.errs) > 0 {
		return f
	}
	r.line = map[string]int{}
	var basis *entry
	var limits []entry
	for i, e := range entries {
		r.line[e.key] = e.line
		switch e.key {
		case "basis":
			basis = &entries[i]
		case "range", "spread":
			limits = append(limits, e)
		case "drape":
			r.drape(&f, e)
		case "look":
			r.look(&f, e)
		case keyBendMean:
			r.bendMean(&f, e)
		default:
			r.field(&f, e)
		}
	}
	r.required(&f)
	if basis != nil {
		r.basis(&f, *basis)
	}
	for _, e := range limits {
		r.limits(&f, e)
	}
	if len(r.errs) == 0 {
		fillDefaults(&f)
		r.together(&f)
	}
	return f
}

// document returns the top-level entries of the only document in data.
func (r *reader) document(data []byte) []entry {
	const want = "one fabric: keys and values, one a line, like weight_gsm: 135"
	d, fault := scalar.Parse(data, want)
	if fault != nil {
		r.fail(fault.Line, "", "%s%s", fault.Says, scalar.Excerpt(d.Lines, fault.Line, fault.Column))
		return nil
	}
	if d.Body == nil {
		r.fail(1, "", "empty, want %s", want)
		return nil
	}
	return r.mapping(d.Body, "the file")
}

// mapping returns the entries of a YAML mapping, each key once.
func (r *reader) mapping(n ast.Node, what string) []entry {
	values, ok := scalar.Pairs(n)
	if !ok {
		r.fail(lineOf(n), "", "%s is %s, want keys and values, one a line, like weight_gsm: 135", what, n.Type())
		return nil
	}
	out := make([]entry, 0, len(values))
	seen := map[string]int{} // in which line
	for _, v := range values {
		e := entry{key: scalar.Key(v), line: lineOf(v.Key), value: v.Value}
		if first, ok := seen[e.key]; ok {
			r.fail(e.line, e.key, "%s is set twice, first in line %d", e.key, first)
			continue
		}
		seen[e.key] = e.line
		out = append(out, e)
	}
	return out
}

// lineOf returns the line of n, 1 where the parser gives none.
func lineOf(n ast.Node) int {
	if n == nil || n.GetToken() == nil || n.GetToken().Position == nil {
		return 1
	}
	return n.GetToken().Position.Line
}
