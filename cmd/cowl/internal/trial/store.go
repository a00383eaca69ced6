package trial

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Store is a folder with one KEY.json a row and the files that belong to it.
// Several programs may work in one store at a time: a file appears whole or not
// at all, and equal keys have equal contents.
type Store string

// File returns the path of the file of a row with the given ending.
func (s Store) File(key, ending string) string {
	return filepath.Join(string(s), key+"."+ending)
}

// load reads the row of a key into v; false if it is not there.
func (s Store) load(key string, v any) (bool, error) {
	name := s.File(key, "json")
	data, err := os.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	if err := json.Unmarshal(data, v); err != nil {
		return false, fmt.Errorf("%s is damaged, delete it to have it computed again: %w", name, err)
	}
	return true, nil
}

// keep writes the files of a row, and its record last: what has a record is whole.
func (s Store) keep(key string, record any, files map[string][]byte) error {
	if err := os.MkdirAll(string(s), 0o755); err != nil {
		return err
	}
	for ending, data := range files {
		if err := s.write(key+"."+ending, data); err != nil {
			return err
		}
	}
	data, err := json.MarshalIndent(record, "", " ")
	if err != nil {
		return err
	}
	return s.write(key+".json", append(data, '\n'))
}

// write puts a file in place under a name of its own first.
func (s Store) write(name string, data []byte) (err error) {
	f, err := os.CreateTemp(string(s), ".row-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name()) // gone already where it was renamed
		}
	}()
	_, err = f.Write(data)
	if err = errors.Join(err, f.Chmod(0o644), f.Close()); err != nil {
		return err
	}
	return os.Rename(f.Name(), filepath.Join(string(s), name))
}

// Gather copies into s the rows of another store that s lacks, and returns how
// many rows came over. A store that does not exist holds none.
func (s Store) Gather(from Store) (int, error) {
	entries, err := os.ReadDir(string(from))
	if errors.Is(err, fs.ErrNotExist) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	byKey := map[string]map[string][]byte{}
	for _, e := range entries {
		key, ending, ok := strings.Cut(e.Name(), ".")
		if !ok || len(key) != keyLength {
			continue
		}
		if byKey[key] == nil {
			byKey[key] = map[string][]byte{}
		}
		if byKey[key][ending], err = os.ReadFile(from.File(key, ending)); err != nil {
			return 0, err
		}
	}
	return s.take(byKey)
}

// take keeps what it lacks of rows given as files.
func (s Store) take(rows map[string]map[string][]byte) (n int, err error) {
	for key, files := range rows {
		record, whole := files["json"]
		if _, err := os.Stat(s.File(key, "json")); !whole || err == nil {
			continue
		}
		delete(files, "json")
		if err := s.keep(key, json.RawMessage(record), files); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}
