package study

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/outfile"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
	"cowl/materials/infile"
	"cowl/mesh/limit"
)

// Spec is study.json: all that was asked, so that the parts of a study and
// cowl gather work from the same words.
type Spec struct {
	Verb    string   `json:"verb"`
	Style   string   `json:"style_yaml"`
	Fabrics []string `json:"fabrics_yaml,omitempty"` // a name of the library or a whole fabric file
	Vary    []string `json:"vary,omitempty"`
	// what all sizes of a sweep share of the extension: length (or empty) or drop
	Hold     string `json:"hold,omitempty"`
	Want     string `json:"want,omitempty"`
	Placings int    `json:"placings"`
	Physics  string `json:"physics"`

	Written map[string]string `json:"written,omitempty"` // what this study wrote beside its rows, with checksums
}

// verbs are the verbs that make studies.
var verbs = []string{"compare", "sweep", "seek", "sure", "teach"}

const specFile = "study.json"

// What one study may ask for at most.
const (
	mostCloths = 99
	mostFiles  = 10000
)

// What the sizes of a sweep share of the extension.
const (
	HoldLength = "length"
	HoldDrop   = "drop"
)

// check refuses what no verb has asked for.
func (a Spec) check() error {
	switch {
	case !slices.Contains(verbs, a.Verb):
		return fmt.Errorf("verb %.40q, want compare, sweep, seek, sure or teach", a.Verb)
	case a.Placings < 1 || a.Placings > style.MostPlacings:
		return fmt.Errorf("placings %d, want 1–%d: 5 or more tell a difference from the scatter", a.Placings,
			style.MostPlacings)
	case len(a.Fabrics) > mostCloths || a.Verb == "compare" && len(a.Fabrics) < 2:
		return fmt.Errorf("%d fabrics, want at most %d, and two or more to compare", len(a.Fabrics), mostCloths)
	case len(a.Vary) > len(quantities) || (a.Verb == "sweep") != (len(a.Vary) > 0):
		return fmt.Errorf("%d quantities to vary, want 1–%d in a sweep and none else", len(a.Vary), len(quantities))
	case a.Hold != "" && a.Hold != HoldLength && a.Hold != HoldDrop:
		return fmt.Errorf("hold %.40q, want length or drop", a.Hold)
	case len(a.Written) > mostFiles:
		return fmt.Errorf("%d files written, want at most %d", len(a.Written), mostFiles)
	}
	return nil
}

// NewSpec pins the style down as text.
func NewSpec(verb string, s style.Style, placings int) (Spec, error) {
	if placings < 1 || placings > style.MostPlacings {
		return Spec{}, fmt.Errorf("--placings: placings %d, want 1–%d: 5 or more tell a difference from the scatter",
			placings, style.MostPlacings)
	}
	s.Hang.Placings = placings
	s.OnLook()
	if err := s.Check(); err != nil {
		return Spec{}, err
	}
	return Spec{Verb: verb, Style: string(s.YAML()), Placings: placings, Physics: rows.Physics()}, nil
}

// steady reports whether the rows of the study lay the same number of folds without
// trying any.
func (a Spec) steady() bool { return a.Verb == "sure" || a.Verb == "teach" || a.Verb == "seek" }

// style reads the pinned style.
func (a Spec) style() (style.Style, error) {
	s, err := style.Parse(specFile, []byte(a.Style))
	if err == nil && s.Hang.Placings != a.Placings {
		err = fmt.Errorf("%s: placings %d in the style, want %d as in the study", specFile, s.Hang.Placings, a.Placings)
	}
	return s, err
}

// fabrics reads the pinned cloths.
func (a Spec) fabrics() ([]materials.Fabric, error) {
	var out []materials.Fabric
	for _, text := range a.Fabrics {
		f, err := pinned(text)
		if err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, nil
}

// pinned reads a cloth as pin writes it.
func pinned(text string) (materials.Fabric, error) {
	if !strings.Contains(text, "\n") {
		return materials.Find(text)
	}
	return materials.Parse(specFile, []byte(text))
}

// Pin turns names of the library and names of fabric files into texts that
// hold without the files.
func Pin(names []string) ([]string, error) {
	if len(names) > mostCloths {
		return nil, fmt.Errorf("--fabrics: %d fabrics, want at most %d", len(names), mostCloths)
	}
	var out []string
	seen := map[string]bool{}
	for _, n := range names {
		text := n
		if strings.ContainsAny(n, "./") {
			f, err := materials.FromFile(n)
			if err != nil {
				return nil, limit.Under("--fabrics", err)
			}
			text = string(f.YAML())
		}
		f, err := pinned(text)
		if err != nil {
			return nil, limit.Under("--fabrics", err)
		}
		if seen[f.Name] {
			return nil, fmt.Errorf("--fabrics: %s is named twice, want each once", f.Name)
		}
		seen[f.Name] = true
		out = append(out, text)
	}
	return out, nil
}

// readSpec reads study.json of a folder; false if there is none.
func readSpec(dir string) (a Spec, ok bool, err error) {
	if err := outfile.Recover(dir); err != nil {
		return a, false, fmt.Errorf("%w: %w", console.ErrCannotSave, err)
	}
	data, err := infile.Read(filepath.Join(dir, specFile), "the file that a study wrote", infile.JSON)
	if errors.Is(err, fs.ErrNotExist) {
		return a, false, nil
	}
	if err != nil {
		return a, false, err
	}
	if err := json.Unmarshal(data, &a); err != nil {
		return a, false, fmt.Errorf("%s: %w: want the file that a study wrote", filepath.Join(dir, specFile), err)
	}
	if err := a.check(); err != nil {
		return a, false, fmt.Errorf("%s: %w", filepath.Join(dir, specFile), err)
	}
	return a, true, nil
}

// same reports whether two studies ask the same, whatever they have written.
func (a Spec) same(b Spec) bool {
	a.Written, b.Written = nil, nil
	x, _ := json.Marshal(a)
	y, _ := json.Marshal(b)
	return string(x) == string(y)
}
