package style

import (
	"strings"

	"cowl/materials/infile"
	"cowl/materials/scalar"
	"cowl/mesh/draft"
	"cowl/mesh/limit"

	"github.com/goccy/go-yaml/ast"
)

// FromFile reads a style file; see Parse.
func FromFile(path string) (Style, error) {
	data, err := infile.Read(path, "a style file in YAML, such as the style.yaml that a drape leaves", infile.YAML)
	if err != nil {
		return Style{}, err
	}
	return Parse(path, data)
}

// Parse reads a style in YAML; file names the data in messages. What is left
// out is as in Default. The sections are name, body, block, piece, cut, stand, trims,
// fabric and hang. Keys of a length end in _mm, _cm or _in, of an angle in _deg; unknown
// and repeated keys are errors with their line. Ranges are checked by Check,
// Wearer and Cowl, after flags have had their say.
func Parse(file string, data []byte) (Style, error) {
	s := Default()
	s.file = file
	r := &source{file: file}
	entries := r.document(data)
	for _, e := range entries {
		if e.key == "piece" {
			r.piece(&s, e) // first: what the cut says goes before what the piece has
		}
	}
	for _, e := range entries {
		r.group(&s, e)
	}
	if err := r.wrong(); err != nil {
		return Style{}, err
	}
	if at, ok := s.from["bust"]; ok {
		s.scaled(at)
	}
	return s, nil
}

var groups = []string{"name", "body", "block", "piece", "cut", "stand", "trims", "fabric", "hang"}

// group reads one top-level entry.
func (r *source) group(s *Style, e entry) {
	switch e.key {
	case "name":
		s.Name, _ = r.word(e)
	case "block":
		r.block(s, e)
	case "piece": // read before
	case "trims":
		r.trims(s, e)
	case "fabric":
		r.fabric(s, e)
	case "body", "cut", "stand", "hang":
		if e.value.Type() == ast.NullType {
			return // a section with everything commented out
		}
		for _, v := range r.mapping(e.value, e.key) {
			if e.key == "body" && v.key == "chart" {
				r.chart(s, v)
				continue
			}
			r.field(s, e.key, v)
		}
	default:
		r.fail(e.at, "unknown section %q, want one of %s", e.key, strings.Join(groups, ", "))
	}
}

// field reads one key of body, cut, stand or hang.
func (r *source) field(s *Style, section string, e entry) {
	f, unit, err := find(section, e.key)
	if err != nil {
		r.fail(e.at, "%s: %v", section, err)
		return
	}
	s.from[f.spoken()] = r.origin(e.at)
	if w, ok := e.value.(*ast.StringNode); ok && f.auto && w.Value == "auto" {
		f.set(s, draft.Auto)
		return
	}
	v, ok, err := r.value(f, unit, e)
	if !ok {
		return
	}
	if err == nil {
		err = f.refuse(v)
	}
	if err != nil {
		r.fail(e.value, "%s: %v", section, err)
		return
	}
	f.set(s, v)
}

// value reads the value of f, SI. What is no such value at all is reported;
// ok is then false.
func (r *source) value(f Field, unit string, e entry) (v float64, ok bool, err error) {
	switch f.kind {
	case choice:
		w, ok := r.word(e)
		if ok {
			v, err = f.parse(scalar.Brief(w))
		}
		return v, ok, err
	case truth:
		v, ok = r.truth(e)
		return v, ok, nil
	}
	v, ok = r.number(e)
	switch f.kind {
	case length:
		v = toMetres(v, unit)
	case angle:
		v = toRadians(v)
	case mass:
		v /= 1000
	}
	return v, ok, nil
}

// find returns the field that a key names and the unit the key ends in.
func find(section, key string) (Field, string, error) {
	for _, f := range fields {
		if f.group != section {
			continue
		}
		rest, ok := strings.CutPrefix(key, f.Name)
		if !ok {
			continue
		}
		unit, _ := strings.CutPrefix(rest, "_")
		switch {
		case f.kind == length && (rest == "_cm" || rest == "_mm" || rest == "_in"),
			f.kind == angle && rest == "_deg", f.kind == mass && rest == "_g",
			f.unit() == "" && rest == "":
			return f, unit, nil
		case rest == "":
			return f, "", limit.Errorf(f.spoken(), "key %q has no unit, want it in the key: %s", key, f.keys())
		}
	}
	return Field{}, "", limit.Errorf(key, "unknown key %q, want one of %s", key, strings.Join(keysOf(section), ", "))
}

// keys lists the keys f may have.
func (f Field) keys() string {
	if f.kind == angle || f.kind == mass {
		return f.key()
	}
	return f.Name + "_cm, " + f.Name + "_mm or " + f.Name + "_in"
}

// keysOf lists the keys of a section, with the units cowl writes.
func keysOf(section string) []string {
	var out []string
	for _, f := range fields {
		if f.group == section {
			out = append(out, f.key())
		}
	}
	if section == "body" {
		out = append(out, "chart")
	}
	return out
}
