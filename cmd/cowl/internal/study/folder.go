package study

import (
	"crypto/sha256"
	"encoding/hex"
	"maps"
	"path/filepath"
	"regexp"
	"slices"

	"cowl/cmd/cowl/internal/console"
	"cowl/materials/infile"
)

// writtenOf lists files with their checksums, as study.json keeps them.
func writtenOf(files []console.File) map[string]string {
	out := map[string]string{}
	for _, f := range files {
		out[f.Name] = checksum(f.Data)
	}
	return out
}

func checksum(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

// perCase matches the names of the files that a study writes for each of its cases: the
// only ones that a later study has no use for.
var perCase = regexp.MustCompile(`^(styles|pictures)/[0-9]{2,}-[a-z0-9.-]*\.(yaml|jpg)$`)

// stale lists what an earlier study of the folder wrote and this one does not. A file
// is ours only if it is, to the bit, what study.json says was written.
func stale(dir string, old, now map[string]string) []string {
	var out []string
	for _, name := range slices.Sorted(maps.Keys(old)) {
		if _, kept := now[name]; kept || !perCase.MatchString(name) {
			continue
		}
		data, err := infile.Read(filepath.Join(dir, name), "a file of a study", infile.Picture)
		if err == nil && checksum(data) == old[name] {
			out = append(out, name)
		}
	}
	return out
}

// begin writes study.json, so that what is stopped can be gathered.
func (w *runner) begin(spec *Spec) error {
	if err := console.Writable(w.Dir); err != nil {
		return err
	}
	old, _, err := readSpec(w.Dir)
	if err != nil {
		return err
	}
	spec.Written = old.Written
	if spec.same(old) {
		return nil // other parts may be reading it
	}
	return w.saveSpec(*spec)
}

func (w *runner) saveSpec(spec Spec) error {
	b, err := console.JSON(spec)
	if err != nil {
		return err
	}
	return console.Save(w.Dir, []console.File{{Name: specFile, Data: b}})
}
