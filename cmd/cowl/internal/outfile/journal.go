package outfile

import (
	"bytes"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// journal is what is to be done to a folder, or undone. Its files are found by its name
// and their number in it.
type journal struct {
	ID     string  `json:"id"` // see newID
	Undo   bool    `json:"undo"`
	Files  []entry `json:"files"`
	Remove []entry `json:"remove"`
}

// entry is a file of the set.
type entry struct {
	Name string `json:"name"`
	Had  bool   `json:"had"` // there was one of that name before, kept as old
}

// All names that the package gives begin so; what else begins so is left alone.
const (
	freshPrefix   = ".cowl-new-"
	oldPrefix     = ".cowl-old-"
	journalPrefix = ".cowl-journal-"
)

func newJournal(s Set) *journal {
	j := &journal{ID: newID()}
	for _, f := range s.Files {
		j.Files = append(j.Files, entry{Name: f.Name})
	}
	for _, n := range s.Remove {
		j.Remove = append(j.Remove, entry{Name: n})
	}
	return j
}

// newID names this host and process, and one set of it.
func newID() string {
	var b [6]byte
	rand.Read(b[:])
	return fmt.Sprintf("%s-%d-%s", host(), os.Getpid(), hex.EncodeToString(b[:]))
}

func (j *journal) fresh(k int) string { return fmt.Sprintf("%s%s-%d", freshPrefix, j.ID, k) }
func (j *journal) old(k int) string   { return fmt.Sprintf("%s%s-%d", oldPrefix, j.ID, k) }
func (j *journal) name() string       { return journalPrefix + j.ID }

// each calls do with every entry and the name under which its old file is kept.
func (j *journal) each(do func(e *entry, old string) error) error {
	for k := range j.Files {
		if err := do(&j.Files[k], j.old(k)); err != nil {
			return err
		}
	}
	for k := range j.Remove {
		if err := do(&j.Remove[k], j.old(len(j.Files)+k)); err != nil {
			return err
		}
	}
	return nil
}

// keepOld gives the files that will be replaced or removed a second name.
func (j *journal) keepOld(dir string) error {
	return j.each(func(e *entry, old string) error {
		err := double(filepath.Join(dir, e.Name), filepath.Join(dir, old))
		e.Had = err == nil
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		return err
	})
}

// write puts the journal in place. Whether that happened when an error comes, nobody
// can tell: then it is taken away.
func (j *journal) write(dir string) error {
	body, err := json.Marshal(j)
	if err != nil {
		return err
	}
	path := filepath.Join(dir, j.name())
	next := filepath.Join(dir, fmt.Sprintf("%s%s-journal", freshPrefix, j.ID))
	if err = remove(next); err == nil {
		err = write(next, append(body, "\n"+sum(body)+"\n"...))
	}
	if err == nil {
		err = rename(next, path)
	}
	if err == nil {
		err = syncDir(dir)
	}
	if err != nil && !j.Undo {
		remove(next)
		return errors.Join(err, remove(path))
	}
	return err
}

func sum(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

// readJournal reads a journal; what is none, or names files outside of its folder, is
// an error.
func readJournal(path string) (*journal, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	body, check, _ := bytes.Cut(data, []byte("\n"))
	var j journal
	if string(check) != sum(body)+"\n" || json.Unmarshal(body, &j) != nil || j.name() != filepath.Base(path) {
		return nil, errNoJournal
	}
	err = j.each(func(e *entry, _ string) error {
		if !filepath.IsLocal(e.Name) {
			return errNoJournal
		}
		return nil
	})
	return &j, err
}

var errNoJournal = errors.New("no journal of cowl")

// single renames the only file of a set.
func (j *journal) single(dir string) error {
	if err := rename(filepath.Join(dir, j.fresh(0)), filepath.Join(dir, j.Files[0].Name)); err != nil {
		return err
	}
	if err := syncDirs(dir, j.names()); err != nil {
		return fmt.Errorf("%s is new, but whether it outlasts a power cut is not known: %w", j.Files[0].Name, err)
	}
	return nil
}

// names lists all files of the journal.
func (j *journal) names() []string {
	var out []string
	j.each(func(e *entry, _ string) error { out = append(out, e.Name); return nil })
	return out
}

// carryOut does what the journal says, or has it undone where something fails.
func (j *journal) carryOut(dir string) error {
	err := j.forward(dir)
	if err == nil {
		j.end(dir)
		return nil
	}
	j.Undo = true
	back := j.write(dir)
	if back == nil {
		back = j.backward(dir)
	}
	if back == nil {
		j.end(dir)
		return err
	}
	return fmt.Errorf("%w; %s; the next run of cowl with this folder sets it right", errors.Join(err, back),
		j.mixture(dir))
}

// forward puts the new files in place and removes what is to go. What has been done
// before is not done again.
func (j *journal) forward(dir string) error {
	for k, e := range j.Files {
		fresh := filepath.Join(dir, j.fresh(k))
		if _, err := os.Lstat(fresh); errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err := rename(fresh, filepath.Join(dir, e.Name)); err != nil {
			return err
		}
	}
	for _, e := range j.Remove {
		if err := remove(filepath.Join(dir, e.Name)); err != nil {
			return err
		}
	}
	return syncDirs(dir, j.names())
}

// backward puts the old files back and takes the new ones away.
func (j *journal) backward(dir string) error {
	k := -1
	err := j.each(func(e *entry, old string) error {
		k++
		name := filepath.Join(dir, e.Name)
		if e.Had {
			if _, err := os.Lstat(filepath.Join(dir, old)); errors.Is(err, fs.ErrNotExist) {
				return nil // back already
			}
			return rename(filepath.Join(dir, old), name)
		}
		if k >= len(j.Files) {
			return nil
		}
		if _, err := os.Lstat(filepath.Join(dir, j.fresh(k))); errors.Is(err, fs.ErrNotExist) {
			return remove(name) // it had been renamed to this
		}
		return nil
	})
	if err != nil {
		return err
	}
	return syncDirs(dir, j.names())
}

// mixture says which files of the set are new and which old.
func (j *journal) mixture(dir string) string {
	var fresh, old []string
	for k, e := range j.Files {
		if _, err := os.Lstat(filepath.Join(dir, j.fresh(k))); err == nil {
			old = append(old, e.Name)
		} else {
			fresh = append(fresh, e.Name)
		}
	}
	return fmt.Sprintf("new are %s, old are %s", listed(fresh), listed(old))
}

func listed(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, ", ")
}

// end takes the journal away, and then what it has left. What cannot be, the next start
// takes: to do again what is done changes nothing.
func (j *journal) end(dir string) {
	if remove(filepath.Join(dir, j.name())) == nil && syncDir(dir) == nil {
		j.clean(dir)
	}
}

// clean takes away the files of the journal's own. What cannot be is swept later.
func (j *journal) clean(dir string) {
	for k := range j.Files {
		remove(filepath.Join(dir, j.fresh(k)))
	}
	j.each(func(_ *entry, old string) error { remove(filepath.Join(dir, old)); return nil })
}
