//go:build cgo

package window

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// lesson makes a folder with styles in a folder of its own, and what is not to be listed.
func lesson(t testing.TB) string {
	dir := filepath.Join(t.TempDir(), "lesson")
	for name, text := range map[string]string{
		"styles/beta.yaml": "name: Beta\nfabric: polyester-twill\nhang: {spacing_mm: 20}\n",
		"styles/Alpha.YML": "name: Alpha\nfabric: polyester-twill\ncut: {grain_deg: 30}\nhang: {spacing_mm: 20}\n",
		"styles/notes.txt": "no style", "styles/.hidden.yaml": "name: Hidden\n", "gamma.yaml": "name: Gamma\n",
		".git/x.yaml": "name: X\n",
	} {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// Folders come first, then what may be a style or a fabric, by its name; the rest is left
// out. What cannot be read is an error.
func TestListFolder(t *testing.T) {
	dir := lesson(t)
	names := func(dir string) (out []string) {
		list, err := listFolder(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range list {
			out = append(out, l.name)
		}
		return out
	}
	if got, want := names(dir), []string{"styles", "gamma.yaml"}; !slices.Equal(got, want) {
		t.Errorf("the folder lists %v, want %v", got, want)
	}
	if got, want := names(filepath.Join(dir, "styles")), []string{"Alpha.YML", "beta.yaml"}; !slices.Equal(got, want) {
		t.Errorf("the folder lists %v, want %v", got, want)
	}
	if _, err := listFolder(filepath.Join(dir, "none")); err == nil {
		t.Error("a folder that is not there is listed")
	}
}

// A path is remembered once, the newest first, six at most.
func TestRemembered(t *testing.T) {
	var recent []string
	for _, p := range []string{"/a", "/b", "/c", "/a", "/d", "/e", "/f", "/g"} {
		recent = remembered(recent, p)
	}
	if want := []string{"/g", "/f", "/e", "/d", "/a", "/c"}; !slices.Equal(recent, want) {
		t.Errorf("remembered %v, want %v", recent, want)
	}
	if got := forgotten(recent, "/e"); slices.Contains(got, "/e") || len(got) != 5 || len(recent) != 6 {
		t.Errorf("forgotten = %v of %v", got, recent)
	}
}

// Under Files one goes into a folder by clicking it twice, opens a style there, and opens
// what was used before with one click.
func fileChosen(d *drive) {
	dir := lesson(d.TB)
	d.ask(func(a *App) { a.set.Folder, a.folder, a.set.Recent = dir, folder{}, nil })
	d.click("tab/Files")
	row := func(i int, clicks string) {
		r := d.place("files/list")
		d.x("mousemove", px(r.X+60), px(r.Y+42*float64(i)+20))
		d.settle()
		d.x("click", "--repeat", clicks, "--delay", "40", "1")
		d.settle()
	}
	row(0, "2")
	d.until("the folder of styles", func(a *App) bool {
		return a.folder.dir == filepath.Join(dir, "styles") && len(a.folder.list) == 2
	})
	row(1, "1")
	d.until("the second file chosen", func(a *App) bool { return a.path == filepath.Join(dir, "styles", "beta.yaml") })
	d.shot("chooser.png")
	d.click("open")
	d.until("the style", func(a *App) bool { return a.pane().Style.Name == "Beta" })
	row(0, "2")
	d.until("the other style", func(a *App) bool {
		return a.pane().Style.Name == "Alpha" && near(a.pane().cowl.Grain, 30*degree, 1e-9)
	})
	d.x("mousemove", "150", "110", "click", "--repeat", "20", "--delay", "5", "5") // scrolled to its end
	d.settle()
	d.shot("recent.png")
	d.click("recent/" + filepath.Join(dir, "styles", "beta.yaml"))
	d.until("the style used before", func(a *App) bool { return a.pane().Style.Name == "Beta" })
	d.click("files/up")
	d.until("the folder above", func(a *App) bool { return a.folder.dir == dir })
	d.ask(func(a *App) {
		if want := []string{filepath.Join(dir, "styles", "beta.yaml"), filepath.Join(dir, "styles",
			"Alpha.YML")}; !slices.Equal(a.set.Recent, want) {
			d.Errorf("used last: %v, want %v", a.set.Recent, want)
		}
		a.set.Folder, a.folder, a.set.Recent, a.path = d.out, folder{}, nil, ""
		freeze(d.TB, a)
	})
}
