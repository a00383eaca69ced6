package materials

import (
	"slices"
	"strings"

	"cowl/materials/infile"

	"github.com/goccy/go-yaml/ast"
)

// SwatchFromFile reads a sheet of tests; see ParseSheet.
func SwatchFromFile(path string) (Swatch, error) {
	data, err := infile.Read(path, "a sheet of tests in YAML, with keys such as square and overhang-warp", infile.YAML)
	if err != nil {
		return Swatch{}, err
	}
	return ParseSwatch(path, data)
}

// ParseSwatch reads the tests of a swatch in YAML; file names the data in
// messages. The keys are those of Trial.Key, and name, title, fibre, weave and
// note; underscores pass for hyphens. Repeats stand in a list, or in text with
// commas between. Every error carries file, line, key and what was wanted.
func ParseSwatch(file string, data []byte) (Swatch, error) {
	r := reader{file: file}
	var s Swatch
	for _, e := range r.document(data) {
		r.trial(&s, e)
	}
	return s, r.wrong()
}

// words returns where the words of a sheet go.
func (s *Swatch) words() map[string]*string {
	return map[string]*string{"name": &s.Name, "title": &s.Title, "fibre": &s.Fibre, "weave": &s.Weave, "note": &s.Note}
}

// trial reads one line of a sheet.
func (r *reader) trial(s *Swatch, e entry) {
	key := strings.ReplaceAll(e.key, "_", "-")
	if word, ok := s.words()[key]; ok {
		*word = r.word(e)
		if key == "name" && !nameForm.MatchString(s.Name) {
			r.fail(e.line, e.key, "name %.120q, %s", s.Name, nameWanted)
		}
		return
	}
	t, err := trialOf(key)
	if err != nil {
		r.refuse(e.line, err)
		return
	}
	if s.done(t) {
		r.fail(e.line, e.key, "%s is set twice", t.Key())
		return
	}
	if err := s.Set(key, r.repeats(e)); err != nil {
		r.fail(e.line, e.key, "%s: %v", t.Key(), err)
	}
}

// repeats returns the readings of an entry as text.
func (r *reader) repeats(e entry) []string {
	list, ok := e.value.(*ast.SequenceNode)
	if !ok {
		return splitReadings(r.word(e))
	}
	var out []string
	for _, v := range list.Values {
		out = append(out, r.word(entry{e.key, e.line, v}))
	}
	return out
}

// splitReadings splits "3.2cm, 3.3cm".
func splitReadings(text string) []string {
	parts := strings.Split(text, ",")
	return slices.DeleteFunc(parts, func(p string) bool { return strings.TrimSpace(p) == "" })
}
