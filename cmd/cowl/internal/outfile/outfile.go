// Package outfile writes sets of files: all of a set or none, and so that a power cut
// or kill -9 at any moment leaves, from the next start on, the old set or the new.
//
// New files are written beside the old under names of their own and synced, and the old
// ones linked to names of their own. Then a journal is put in place: from here on the
// set counts as written. The files are renamed, the folders synced, the journal and
// what is left of the old set taken away. A start that finds a journal without its
// process goes on with it; a rename that fails has all renamed back. Nothing that is
// not of the set is touched. Start at Set.Save and Recover.
package outfile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
)

// File is one file of a set; its name is local to the folder of the set.
type File struct {
	Name string
	Data []byte
}

// Set is what a folder is to hold, and what it is to hold no more.
type Set struct {
	Dir    string // is there already, and so are the folders in it that names tell
	Files  []File
	Remove []string
}

// saving lets one set be written at a time in this process, so that its own journals
// are always left ones to Recover.
var saving sync.Mutex

// Save writes the set. An error says that all is as before; only if what was renamed
// cannot be renamed back, it says which files are new and which old.
func (s Set) Save() error {
	saving.Lock()
	defer saving.Unlock()
	unlock := lock(s.Dir)
	defer unlock()
	if err := recoverDir(s.Dir); err != nil {
		return err
	}
	if err := s.check(); err != nil {
		return err
	}
	j := newJournal(s)
	err := s.prepare(j)
	if err == nil && len(j.Files) == 1 && len(j.Remove) == 0 {
		err = j.single(s.Dir) // a rename alone is all or nothing
	} else if err == nil {
		if err = j.write(s.Dir); err == nil {
			return j.carryOut(s.Dir)
		}
		if _, gone := os.Lstat(filepath.Join(s.Dir, j.name())); !errors.Is(gone, fs.ErrNotExist) {
			return fmt.Errorf("%w; the next run of cowl with this folder writes the files", err)
		}
	}
	j.clean(s.Dir)
	return err
}

// check refuses what cannot be replaced, before anything is written.
func (s Set) check() error {
	for _, f := range s.Files {
		if !filepath.IsLocal(f.Name) {
			return fmt.Errorf("%q is no name in a folder", f.Name)
		}
		if info, err := os.Lstat(filepath.Join(s.Dir, f.Name)); err == nil && info.IsDir() {
			return fmt.Errorf("%s is a folder, want a file there or nothing", filepath.Join(s.Dir, f.Name))
		}
	}
	return nil
}

// prepare writes all new files and keeps the old ones by links, and syncs both.
func (s Set) prepare(j *journal) error {
	for k, f := range s.Files {
		if err := write(filepath.Join(s.Dir, j.fresh(k)), f.Data); err != nil {
			return err
		}
	}
	if len(s.Files) > 1 || len(s.Remove) > 0 {
		if err := j.keepOld(s.Dir); err != nil {
			return err
		}
	}
	return syncDir(s.Dir)
}

// Write writes one file, whole and synced or not at all.
func Write(path string, data []byte) error {
	dir, name := filepath.Split(path)
	if dir == "" {
		dir = "."
	}
	j := newJournal(Set{Files: []File{{Name: name}}})
	err := write(filepath.Join(dir, j.fresh(0)), data)
	if err == nil {
		err = j.single(dir)
	}
	if err != nil {
		j.clean(dir)
	}
	return err
}

// Probe tells whether files can be written to a folder. It leaves no trace.
func Probe(dir string) error {
	path := filepath.Join(dir, newJournal(Set{}).fresh(0))
	err := write(path, nil)
	return errors.Join(err, remove(path))
}

// Recover brings a folder, if it is there, to the old or the new set where a run was
// ended while it wrote, and sweeps what such runs have left.
func Recover(dir string) error {
	saving.Lock()
	defer saving.Unlock()
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	defer lock(dir)()
	return recoverDir(dir)
}

// Lock keeps other runs that lock the same folder waiting, for whoever reads a file,
// changes it and writes it back. Files of sets are not written to a locked folder but
// beside or below it: Save locks its own. Where nothing can be locked, or another takes
// ten seconds, it goes without.
func Lock(dir string) (unlock func()) { return lock(dir) }
