package window

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// folder is what a folder holds that can be opened, as it is listed to choose from.
type folder struct {
	dir  string
	list []listed
	err  error   // why it cannot be read
	on   int     // of list, −1: none
	look float64 // s, when to look again
}

// listed is a folder or a file that may be a style or a fabric.
type listed struct {
	name   string
	inside bool // it is a folder
	when   time.Time
}

// mostListed are listed of one folder at most.
const mostListed = 400

// folderLook is how often a folder is looked at while it is shown, s.
const folderLook = 1

// enter goes to another folder.
func (f *folder) enter(dir string) { *f = folder{dir: filepath.Clean(dir), on: -1} }

// refresh looks at the folder again where it is time; the row that is on stays on.
func (f *folder) refresh(now float64) {
	if now < f.look {
		return
	}
	f.look = now + folderLook
	was := f.chosen()
	f.list, f.err = listFolder(f.dir)
	f.on = slices.IndexFunc(f.list, func(l listed) bool { return was != "" && filepath.Join(f.dir, l.name) == was })
}

// chosen is the path of the row that is on, "" for none.
func (f *folder) chosen() string {
	if f.on < 0 || f.on >= len(f.list) {
		return ""
	}
	return filepath.Join(f.dir, f.list[f.on].name)
}

// listFolder lists folders first, then files whose names end as those of YAML do; what is
// hidden is left out.
func listFolder(dir string) ([]listed, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var out []listed
	for _, e := range entries {
		info, err := os.Stat(filepath.Join(dir, e.Name())) // of what a link leads to
		if err != nil || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		ext := strings.ToLower(filepath.Ext(e.Name()))
		if info.IsDir() || info.Mode().IsRegular() && (ext == ".yaml" || ext == ".yml") {
			out = append(out, listed{e.Name(), info.IsDir(), info.ModTime()})
		}
	}
	slices.SortFunc(out, func(a, b listed) int {
		if a.inside != b.inside {
			return map[bool]int{true: -1, false: 1}[a.inside]
		}
		return cmp.Or(cmp.Compare(strings.ToLower(a.name), strings.ToLower(b.name)), cmp.Compare(a.name, b.name))
	})
	return out[:min(len(out), mostListed)], nil
}

// mostRecent files are offered again.
const mostRecent = 6

// remembered puts a path before those used last, each once.
func remembered(recent []string, path string) []string {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	out := []string{path}
	for _, r := range recent {
		if r != path && len(out) < mostRecent {
			out = append(out, r)
		}
	}
	return out
}

// forgotten is recent without a path.
func forgotten(recent []string, path string) []string {
	return slices.DeleteFunc(slices.Clone(recent), func(r string) bool { return r == path })
}
