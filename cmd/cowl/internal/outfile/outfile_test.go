package outfile

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// names of a set: two that are replaced, one that is new; one more goes.
var names = []string{"draft.pdf", "draft.dxf", "styles/01-a.yaml"}

// old makes a folder with the old set and a file of the user's own.
func old(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	err := os.Mkdir(filepath.Join(dir, "styles"), 0o700)
	for name, text := range map[string]string{"draft.pdf": "old", "draft.dxf": "old", "styles/02-b.yaml": "old",
		"thesis.txt": "mine", ".cowl-notes": "mine"} {
		err = errors.Join(err, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// fresh is the set that takes its place.
func fresh(dir string) Set {
	s := Set{Dir: dir, Remove: []string{"styles/02-b.yaml"}}
	for _, n := range names {
		s.Files = append(s.Files, File{n, []byte("new")})
	}
	return s
}

// state says which set a folder holds: "old", "new" or what is mixed; files of the
// user's own and nothing else must be there too.
func state(t *testing.T, dir string) string {
	t.Helper()
	found := map[string]string{}
	filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		if err == nil && !e.IsDir() {
			data, _ := os.ReadFile(path)
			name, _ := filepath.Rel(dir, path)
			found[filepath.ToSlash(name)] = string(data)
		}
		return err
	})
	for _, own := range []string{"thesis.txt", ".cowl-notes"} {
		if found[own] != "mine" {
			return own + " was touched"
		}
		delete(found, own)
	}
	is := func(want map[string]string) bool { return fmt.Sprint(found) == fmt.Sprint(want) }
	switch {
	case is(map[string]string{"draft.pdf": "old", "draft.dxf": "old", "styles/02-b.yaml": "old"}):
		return "old"
	case is(map[string]string{"draft.pdf": "new", "draft.dxf": "new", "styles/01-a.yaml": "new"}):
		return "new"
	}
	return fmt.Sprint(found)
}

// killed is the panic by which a test ends the program.
type killed struct{}

// at runs work and fails or ends it before its n-th call of the system, from 1, and
// reports whether there was one. A failing system fails ever after if lasting.
func at(n int, how string, work func() error) (reached bool, err error) {
	calls := 0
	hook = func(op, path string) error {
		calls++
		if calls < n || calls > n && how == "fails once" {
			return nil
		}
		reached = true
		if how == "is killed" {
			panic(killed{})
		}
		return syscall.EIO
	}
	defer func() {
		hook = nil
		if r := recover(); r != nil {
			if _, ok := r.(killed); !ok {
				panic(r)
			}
		}
	}()
	err = work()
	return reached, err
}

// Whichever call of a save fails or is the last, the next start finds the old set or
// the new, and no file of ours beside it. A save that fails says so truly.
func TestEveryCall(t *testing.T) {
	for _, how := range []string{"is killed", "fails once", "fails for good"} {
		tried := 0
		for n := 1; ; n++ {
			dir := old(t)
			reached, err := at(n, how, fresh(dir).Save)
			if !reached {
				break
			}
			tried++
			before := state(t, dir)
			if how == "fails once" && err != nil && before != "old" && !strings.Contains(err.Error(), "next run of cowl") {
				t.Errorf("call %d %s: %v, left %s", n, how, err, before)
			}
			if how != "is killed" && err == nil && before != "new" && !strings.Contains(before,
				"draft.dxf:new draft.pdf:new styles/01-a.yaml:new") {
				t.Errorf("call %d %s: no error, left %s", n, how, before)
			}
			if err := Recover(dir); err != nil {
				t.Errorf("call %d %s: Recover: %v", n, how, err)
			}
			if got := state(t, dir); got != "old" && got != "new" {
				t.Errorf("call %d %s: after the next start %s, want the old set or the new", n, how, got)
			}
		}
		if tried < 30 {
			t.Errorf("%d calls of a save tried, want 30 or more", tried)
		}
		t.Logf("%d calls: %s", tried, how)
	}
}

// A start that is ended itself while it sets right what another left does no harm.
func TestRecoverKilled(t *testing.T) {
	tried := 0
	for n := 1; ; n++ {
		dir := old(t)
		reached, _ := at(n, "is killed", fresh(dir).Save)
		if !reached {
			break
		}
		for m := 1; ; m++ {
			reached, _ := at(m, "is killed", func() error { return Recover(dir) })
			if !reached {
				break
			}
			tried++
		}
		if got := state(t, dir); got != "old" && got != "new" {
			t.Errorf("killed at call %d and at every one of Recover: %s", n, got)
		}
	}
	if tried < 50 {
		t.Errorf("%d ends tried, want 50 or more", tried)
	}
}

// A rename that fails, as onto a file of another owner in a sticky folder, and then
// cannot be undone says which files are new and which old.
func TestMixtureIsSaid(t *testing.T) {
	dir := old(t)
	hook = func(op, path string) error {
		if op == "rename" && (strings.HasSuffix(path, "draft.dxf") || strings.HasSuffix(path, "draft.pdf") &&
			contents(path) == "new") {
			return syscall.EPERM
		}
		return nil
	}
	err := fresh(dir).Save()
	hook = nil
	if err == nil || !strings.Contains(err.Error(), "new are draft.pdf, old are draft.dxf, styles/01-a.yaml") {
		t.Errorf("Save = %v, want what is new and what old", err)
	}
	if err := Recover(dir); err != nil || state(t, dir) != "old" {
		t.Errorf("Recover = %v, %s, want the old set", err, state(t, dir))
	}
}

func contents(path string) string {
	data, _ := os.ReadFile(path)
	return string(data)
}

// Nothing is renamed before it is synced, and the journal goes only when the folders are.
func TestOrder(t *testing.T) {
	dir := old(t)
	synced, renamed, folders := map[string]bool{}, 0, map[string]bool{}
	hook = func(op, path string) error {
		switch {
		case op == "write":
			synced[path] = false
		case op == "sync":
			synced[path] = true
		case op == "sync folder":
			folders[path] = true
		case op == "rename":
			for name, done := range synced {
				if !done {
					t.Errorf("rename to %s before %s is synced", path, name)
				}
			}
			if !folders[dir] && renamed > 0 {
				t.Errorf("rename to %s before the folder is synced", path)
			}
			folders = map[string]bool{dir: renamed == 0 && folders[dir]}
			renamed++
			if strings.Contains(path, journalPrefix) {
				folders = map[string]bool{}
			} else {
				folders[dir] = true // the journal's, seen above
			}
		case op == "remove" && strings.Contains(path, journalPrefix):
			if !folders[filepath.Join(dir, "styles")] {
				t.Errorf("the journal goes before the folders are synced")
			}
		}
		return nil
	}
	err := fresh(dir).Save()
	hook = nil
	if err != nil || renamed != 4 || state(t, dir) != "new" {
		t.Errorf("Save = %v, %d renames, %s, want 4 and the new set", err, renamed, state(t, dir))
	}
}

// Journals of others, of running programs and forged ones are left or let go; none
// reaches out of its folder.
func TestForeignJournals(t *testing.T) {
	dir := old(t)
	outside := filepath.Join(t.TempDir(), "outside")
	j := newJournal(Set{Files: []File{{Name: "../outside"}}, Remove: []string{outside}})
	if err := errors.Join(os.WriteFile(outside, []byte("mine"), 0o600), j.write(dir)); err != nil {
		t.Fatal(err)
	}
	alive := strings.Replace(newJournal(Set{}).name(), fmt.Sprintf("-%d-", os.Getpid()),
		fmt.Sprintf("-%d-", os.Getppid()), 1)
	if err := errors.Join(os.WriteFile(filepath.Join(dir, j.name()+"x"), nil, 0o600),
		os.WriteFile(filepath.Join(dir, alive), nil, 0o600)); err != nil {
		t.Fatal(err)
	}
	if err := Recover(dir); err != nil {
		t.Errorf("Recover = %v", err)
	}
	if contents(outside) != "mine" {
		t.Error("a journal reached out of its folder")
	}
	for name, want := range map[string]bool{j.name(): false, j.name() + "x": true, alive: true} {
		if _, err := os.Stat(filepath.Join(dir, name)); (err == nil) != want {
			t.Errorf("%s is there: %t, want %t", name, err == nil, want)
		}
	}
	if err := Recover(filepath.Join(dir, "none")); err != nil {
		t.Errorf("Recover of no folder = %v", err)
	}
}

// Write and a set of one file need no journal, and leave the old file or the new.
func TestOneFile(t *testing.T) {
	for _, save := range []func(dir string) error{
		func(dir string) error { return Write(filepath.Join(dir, "f"), []byte("new")) },
		func(dir string) error { return Set{Dir: dir, Files: []File{{"f", []byte("new")}}}.Save() },
	} {
		tried := 0
		for n := 1; ; n++ {
			dir := t.TempDir()
			if err := os.WriteFile(filepath.Join(dir, "f"), []byte("old"), 0o600); err != nil {
				t.Fatal(err)
			}
			reached, _ := at(n, "is killed", func() error { return save(dir) })
			if !reached {
				break
			}
			tried++
			if got := contents(filepath.Join(dir, "f")); got != "old" && got != "new" {
				t.Errorf("killed at call %d: %q", n, got)
			}
			if err := Recover(dir); err != nil {
				t.Error(err)
			}
			if left, _ := os.ReadDir(dir); len(left) != 1 {
				t.Errorf("killed at call %d: left %v", n, left)
			}
		}
		if tried < 5 {
			t.Errorf("%d calls tried, want 5 or more", tried)
		}
	}
}
