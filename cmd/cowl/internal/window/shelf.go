//go:build cgo

package window

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"cowl/cmd/cowl/internal/style"
	"cowl/materials/infile"
)

// shelf is the folder in which styles lie that were changed and not saved, each with
// the pins that were set by hand. A crash, a reset of the driver or a window that is
// closed loses nothing of the last ten.
type shelf struct{ dir string }

// mostKept is how many styles are kept.
const mostKept = 10

// kept is a style on the shelf.
type kept struct {
	file  string // in the folder
	when  time.Time
	style style.Style
	pins  hands
}

// shelfHead says in the file what it is.
const shelfHead = "# Kept safe by cowl view: a style as it was changed last and not yet saved.\n"

// put lays a style on the shelf, into file or, where that is empty, into a new one, and
// returns its name. Of more than ten the oldest go.
func (s shelf) put(file string, now time.Time, st *style.Style, pins hands) (string, error) {
	if file == "" {
		file = free(s.dir, now.Format("2006-01-02-150405")+"-"+stem(st.Name)+".yaml")
	}
	if err := store(s.dir, file, append([]byte(shelfHead), st.YAML()...)); err != nil {
		return file, err
	}
	if err := s.putPins(file, pins); err != nil {
		return file, err
	}
	for _, old := range s.files()[min(mostKept, len(s.files())):] {
		s.drop(old.Name())
	}
	return file, nil
}

func (s shelf) putPins(file string, pins hands) error {
	name := pinsFile(file)
	if pins.none() {
		os.Remove(filepath.Join(s.dir, name))
		return nil
	}
	return store(s.dir, name, pins.csv())
}

// adopt lays the one file on the shelf in which earlier versions kept what was not saved.
func (s shelf) adopt(old string) {
	if _, err := os.Stat(old); err == nil && os.MkdirAll(s.dir, 0o700) == nil {
		_ = os.Rename(old, filepath.Join(s.dir, "earlier.yaml")) // else it stays where it is
	}
}

// drop takes a style off the shelf.
func (s shelf) drop(file string) {
	if file != "" {
		os.Remove(filepath.Join(s.dir, file))
		os.Remove(filepath.Join(s.dir, pinsFile(file)))
	}
}

// files lists what lies on the shelf, newest first.
func (s shelf) files() []os.FileInfo {
	entries, _ := os.ReadDir(s.dir)
	var out []os.FileInfo
	for _, e := range entries {
		if info, err := e.Info(); err == nil && info.Mode().IsRegular() && filepath.Ext(e.Name()) == ".yaml" {
			out = append(out, info)
		}
	}
	slices.SortFunc(out, func(a, b os.FileInfo) int {
		return cmp.Or(b.ModTime().Compare(a.ModTime()), strings.Compare(b.Name(), a.Name()))
	})
	return out
}

// list reads what lies on the shelf, newest first; what cannot be read is left out.
func (s shelf) list() []kept {
	var out []kept
	for _, info := range s.files() {
		if k, err := s.read(info.Name()); err == nil {
			k.when = info.ModTime()
			out = append(out, k)
		}
	}
	return out
}

func (s shelf) read(file string) (kept, error) {
	path := filepath.Join(s.dir, file)
	data, err := infile.Read(path, "a style kept safe", infile.YAML)
	if err != nil {
		return kept{}, err
	}
	st, err := style.Parse(path, data)
	if err != nil {
		return kept{}, err
	}
	pins, err := pinsBeside(path)
	return kept{file: file, style: st, pins: pins}, err
}

// words are the lines of a list: name, what it is, and when it was changed last.
func (k kept) words(now time.Time) (name, note, when string) {
	note = fmt.Sprintf("size %d, %s", k.style.Size, k.style.Fabric.Title)
	if n := len(k.pins.own); n > 0 {
		note += ", " + plural(n, "own pin")
	}
	when = k.when.Format("2 Jan, 15:04")
	if y, m, d := now.Date(); k.when.Year() == y && k.when.Month() == m && k.when.Day() == d {
		when = "today, " + k.when.Format("15:04")
	}
	return k.style.Name, note, when
}

// keeping is how far a pane's style is kept safe.
type keeping struct {
	unsaved bool
	due     float64 // s, when to keep it; 0: nothing to keep
	file    string  // on the shelf, "": none yet
}

// offering is what was not saved in former runs, as it is offered.
type offering struct {
	list []kept
	on   int
	from time.Time
	look float64 // s, when to look at the shelf again
}
