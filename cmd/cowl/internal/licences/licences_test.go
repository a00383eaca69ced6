package licences

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the notices")

// isNotice matches the names of files that are to be passed on; the fonts of Go have
// theirs in a README.
var isNotice = regexp.MustCompile(`(?i)^(licen[cs]e|copying|patents|notice)(\.[a-z]+)?$|-LICENSE$`)

// noticesIn joins the notices that lie in the folder of a module.
func noticesIn(dir string) ([]byte, error) {
	var b bytes.Buffer
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && (e.Name() == "testdata" || e.Name() == "examples") {
			return fs.SkipDir
		}
		font := strings.HasSuffix(filepath.ToSlash(path), "font/gofont/ttfs/README")
		if e.IsDir() || !font && !isNotice.MatchString(e.Name()) {
			return nil
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		fmt.Fprintf(&b, "%s\n\n%s\n\n", filepath.ToSlash(name),
			bytes.TrimSpace(bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))))
		return err
	})
	return bytes.TrimSpace(b.Bytes()), err
}

// linked returns the folders of the modules that are linked into cowl.
func linked(t *testing.T) map[string]string {
	t.Helper()
	c := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Dir}}{{end}}{{end}}",
		"cowl/cmd/cowl")
	c.Stderr = os.Stderr
	c.Env = append(os.Environ(), "CGO_ENABLED=1")
	text, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for line := range strings.Lines(string(text)) {
		if path, dir, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
			out[path] = dir
		}
	}
	if len(out) < 5 {
		t.Fatalf("%d modules linked, want 5 or more: %v", len(out), out)
	}
	return out
}

// Every module that is linked in has its notices here, to the letter, and no other.
func TestNotices(t *testing.T) {
	want := map[string][]byte{}
	for path, dir := range linked(t) {
		text, err := noticesIn(dir)
		if err != nil || len(text) == 0 {
			t.Errorf("%s has no notice: %v", path, err)
		}
		want[path] = text
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"LICENSE", "PATENTS"} {
		data, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), name))
		if err != nil {
			t.Skip(err) // a Go without its notices
		}
		want["go"] = append(want["go"], fmt.Sprintf("%s\n\n%s\n\n", name, bytes.TrimSpace(data))...)
	}
	want["go"] = bytes.TrimSpace(want["go"])
	if *update {
		old, _ := filepath.Glob("notices/*.txt")
		for _, f := range old {
			os.Remove(f)
		}
		for path, text := range want {
			file := filepath.Join("notices", strings.ReplaceAll(path, "/", "~")+".txt")
			if err := os.WriteFile(file, append(text, '\n'), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		return
	}
	got := map[string]string{}
	for _, n := range All() {
		got[n.Module] = strings.TrimSpace(n.Text)
	}
	for path, text := range want {
		if got[path] != string(text) {
			t.Errorf("the notices of %s are not those of the module: run  go test ./cmd/cowl/internal/licences -update", path)
		}
	}
	if a, b := slices.Sorted(maps.Keys(got)), slices.Sorted(maps.Keys(want)); !slices.Equal(a, b) {
		t.Errorf("notices of %v, linked are %v", a, b)
	}
	if All()[0].Module != "go" {
		t.Errorf("the first notice is that of %s, want go", All()[0].Module)
	}
}
