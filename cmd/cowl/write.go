package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// output is one file to be written.
type output struct {
	name string
	data []byte
}

var errNowhere = fmt.Errorf("%w: --out is empty, want a folder: . is this one", errCannotSave)

// save writes all outputs to dir, or none: first under temporary names in dir,
// then, when all are there, renamed. It makes dir if need be.
func save(dir string, outputs []output) (err error) {
	if dir == "" {
		return errNowhere
	}
	defer heed()()
	var made, temps []string
	defer func() {
		if err == nil {
			return
		}
		for _, t := range temps {
			os.Remove(t) // gone already where it was renamed
		}
		for _, d := range made {
			os.Remove(d) // stays where it is not empty
		}
		err = fmt.Errorf("%w: %w", errCannotSave, err)
	}()
	if made, err = makeDir(dir); err != nil {
		return inTheWay(dir, err)
	}
	for _, o := range outputs {
		t, err := writeTemp(dir, o)
		if err != nil {
			return err
		}
		temps = append(temps, t)
	}
	for i, o := range outputs {
		if err := os.Rename(temps[i], filepath.Join(dir, o.name)); err != nil {
			return err
		}
	}
	return nil
}

// writeTemp writes o under a temporary name in dir.
func writeTemp(dir string, o output) (name string, err error) {
	f, err := os.CreateTemp(dir, ".cowl-*-"+o.name)
	if err != nil {
		return "", err
	}
	_, err = f.Write(o.data)
	err = errors.Join(err, f.Chmod(0o644), f.Close())
	if err != nil {
		os.Remove(f.Name())
	}
	return f.Name(), err
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

// writable tells, before a long run, whether dir can be written to or made. It
// leaves no trace.
func writable(dir string) error {
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
			return fmt.Errorf("%w: %w", errCannotSave, inTheWay(d, err))
		}
		d = filepath.Dir(d)
	}
	f, err := os.CreateTemp(d, ".cowl-*")
	if err != nil {
		return fmt.Errorf("%w: %w", errCannotSave, err)
	}
	return errors.Join(f.Close(), os.Remove(f.Name()))
}
