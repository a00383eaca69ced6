package console

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cowl/cmd/cowl/internal/outfile"
)

// File is one file to be written.
type File struct {
	Name string // in its folder, with a slash where it lies in one of that
	Data []byte
}

// errNowhere refuses an empty --out.
var errNowhere = fmt.Errorf("%w: --out is empty, want a folder: . is this one", ErrCannotSave)

// Save writes all outputs to dir, or none, see outfile. It makes dir if need be.
func Save(dir string, outputs []File) error { return SaveSet(dir, outputs, nil) }

// SaveSet is save for a set that takes the place of one of which some files go.
func SaveSet(dir string, outputs []File, remove []string) (err error) {
	if dir == "" {
		return errNowhere
	}
	defer Heed()()
	var made []string
	defer func() {
		if err == nil {
			return
		}
		for _, d := range made {
			os.Remove(d) // stays where it is not empty
		}
		err = fmt.Errorf("%w: %w", ErrCannotSave, err)
	}()
	if made, err = makeDir(dir); err != nil {
		return inTheWay(dir, err)
	}
	set := outfile.Set{Dir: dir, Remove: remove}
	for _, o := range outputs {
		within, err := makeDir(filepath.Join(dir, filepath.Dir(o.Name)))
		made = append(within, made...)
		if err != nil {
			return err
		}
		set.Files = append(set.Files, outfile.File{Name: o.Name, Data: o.Data})
	}
	return set.Save()
}

// makeDir makes dir and returns the folders it had to make, innermost first.
func makeDir(dir string) (made []string, err error) {
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if _, err := os.Stat(d); !errors.Is(err, fs.ErrNotExist) || d == filepath.Dir(d) {
			break
		}
		made = append(made, d)
	}
	return made, os.MkdirAll(dir, 0o755)
}

// inTheWay says which file stands where dir wants a folder; else err.
func inTheWay(dir string, err error) error {
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if info, e := os.Stat(d); e == nil && !info.IsDir() {
			return fmt.Errorf("%s is a file, want a folder: give another --out", d)
		}
		if d == filepath.Dir(d) {
			return err
		}
	}
}

// Writable tells, before a long run, whether dir can be written to or made, and sets
// right what a run that was ended there has left. It leaves no trace.
func Writable(dir string) error {
	if dir == "" {
		return errNowhere
	}
	d := filepath.Clean(dir)
	for {
		info, err := os.Stat(d)
		if err == nil && info.IsDir() {
			break
		}
		if !errors.Is(err, fs.ErrNotExist) || d == filepath.Dir(d) {
			return fmt.Errorf("%w: %w", ErrCannotSave, inTheWay(d, err))
		}
		d = filepath.Dir(d)
	}
	if err := outfile.Recover(d); err != nil {
		return fmt.Errorf("%w: %w", ErrCannotSave, err)
	}
	if err := outfile.Probe(d); err != nil {
		return fmt.Errorf("%w: %w", ErrCannotSave, err)
	}
	return nil
}
