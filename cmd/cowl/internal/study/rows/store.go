package rows

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"cowl/cmd/cowl/internal/outfile"
	"cowl/materials/infile"
)

// Store is a folder with one KEY.json a row and the files that belong to it.
// Several programs may work in one store at a time: a file appears whole or not
// at all, and equal keys have equal contents. What is no good row is set aside.
type Store string

// asideFolder is where a store puts what is no good row.
const asideFolder = "set-aside"

// File returns the path of the file of a row with the given ending.
func (s Store) File(key, ending string) string {
	return filepath.Join(string(s), key+"."+ending)
}

// load reads the row of a key; false if there is none. One that is no good is set
// aside and told to warn.
func load[T any](s Store, row Row, warn func(string)) (r record[T], ok bool, err error) {
	r, ok, err = lookAt[T](s, row.Key)
	var d *damage
	if errors.As(err, &d) {
		return record[T]{}, false, s.aside(row, d, warn)
	}
	return r, ok, err
}

// lookAt reads the row of a key, with a *damage where it is no good.
func lookAt[T any](s Store, key string) (r record[T], ok bool, err error) {
	data, err := infile.Read(s.File(key, "json"), "a row of a study", infile.JSON)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return r, false, nil
	case errors.Is(err, fs.ErrPermission):
		return r, false, err
	case err != nil:
		return r, false, &damage{err}
	}
	if r, err = unseal[T](data, key); err != nil {
		return r, false, &damage{err}
	}
	for ending, want := range r.Files {
		file, err := infile.Read(s.File(key, ending), "a file of a row", infile.Picture)
		if errors.Is(err, fs.ErrNotExist) {
			continue // somebody needed the room
		}
		if err != nil || sum(file) != want {
			return r, false, &damage{fmt.Errorf("the checksum of its .%s does not match", ending)}
		}
	}
	return r, true, nil
}

// damage is why a row is no good.
type damage struct{ error }

// aside moves what is no good row out of the way, so that nothing is lost.
func (s Store) aside(row Row, why *damage, warn func(string)) error {
	dir := filepath.Join(string(s), asideFolder)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	files, err := filepath.Glob(s.File(row.Key, "*"))
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := os.Rename(f, filepath.Join(dir, filepath.Base(f))); err != nil {
			return err
		}
	}
	if warn != nil {
		warn(fmt.Sprintf("the row of %s is no good: %v; set aside in %s", row.Name, why, dir))
	}
	return nil
}

// keep writes the files of a row, and its record last: what has a record is whole.
func keep[T any](s Store, r record[T], files map[string][]byte) error {
	r.Version, r.Physics = rowVersion, Physics()
	for ending, data := range files {
		if r.Files == nil {
			r.Files = map[string]string{}
		}
		r.Files[ending] = sum(data)
	}
	data, err := seal(r)
	if err != nil {
		return err
	}
	return s.put(r.Key, data, files)
}

// put writes a sealed record and its files.
func (s Store) put(key string, record []byte, files map[string][]byte) error {
	if err := os.MkdirAll(string(s), 0o755); err != nil {
		return err
	}
	for ending, data := range files {
		if err := outfile.Write(s.File(key, ending), data); err != nil {
			return err
		}
	}
	return outfile.Write(s.File(key, "json"), record)
}

// Gather copies into s the rows of another store that s lacks, and returns how
// many rows came over; one that is no good stays where it is and is told to warn,
// which may be nil. A store that does not exist holds none.
func Gather[T any](s, from Store, warn func(string)) (n int, err error) {
	entries, err := os.ReadDir(string(from))
	if errors.Is(err, fs.ErrNotExist) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	for _, e := range entries {
		key, ending, _ := strings.Cut(e.Name(), ".")
		if len(key) != keyLength || ending != "json" {
			continue
		}
		took, err := take[T](s, from, key, warn)
		if err != nil {
			return n, err
		}
		n += took
	}
	return n, nil
}

// take copies the row of a key, unless it is there already, and returns how many
// came over.
func take[T any](s, from Store, key string, warn func(string)) (int, error) {
	if _, err := os.Stat(s.File(key, "json")); err == nil {
		return 0, nil
	}
	r, _, err := lookAt[T](from, key)
	var d *damage
	if errors.As(err, &d) {
		if warn != nil {
			warn(fmt.Sprintf("the row %s is no good: %v; left there", from.File(key, "json"), d))
		}
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	files := map[string][]byte{}
	for ending := range r.Files {
		data, err := infile.Read(from.File(key, ending), "a file of a row", infile.Picture)
		if err == nil {
			files[ending] = data
		} else if !errors.Is(err, fs.ErrNotExist) {
			return 0, err
		}
	}
	data, err := seal(r)
	if err != nil {
		return 0, err
	}
	return 1, s.put(key, data, files)
}
