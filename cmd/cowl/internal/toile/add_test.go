package toile

import (
	"errors"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/style"
)

// styleFile writes a style and returns its path. All toiles of these tests are invented.
func styleFile(t *testing.T, fabric string) string {
	t.Helper()
	s := style.Default()
	if err := s.UseFabric(fabric); err != nil {
		t.Fatal(err)
	}
	s.Cut.Extension = 0.14
	path := filepath.Join(t.TempDir(), "style.yaml")
	if err := os.WriteFile(path, s.YAML(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func two() *int { n := 2; return &n }

// entered is an entry of a toile.
func entered(style, drop string) Entry {
	return Entry{Style: style, Drop: drop, Laid: two(), Kept: two(), Folds: []string{"4.5cm@5cm", "30mm@15cm"},
		Date: "2026-11-29"}
}

// A toile is entered with a copy of its style, once; the book is made where there is none.
func TestAdd(t *testing.T) {
	dir, s := t.TempDir(), styleFile(t, "wool-tropical")
	path := filepath.Join(dir, "mine.csv")
	first, n, err := Add(path, entered(s, "12.5cm"))
	if err != nil || n != 1 {
		t.Fatal(n, err)
	}
	if _, n, err = Add(path, entered(s, "4.75in")); err != nil || n != 2 {
		t.Fatal(n, err)
	}
	if _, _, err = Add(path, entered(s, "125mm")); err == nil || !strings.Contains(err.Error(), first.Key+" is in ") ||
		!strings.Contains(err.Error(), "--note") {
		t.Errorf("the same toile again: %v, want that it is in the book", err)
	}
	b, err := Read(path)
	if err != nil || len(b.Toiles) != 2 {
		t.Fatal(len(b.Toiles), err)
	}
	got := b.Toiles[0]
	if got.Key != first.Key || got.Fabric != "wool-tropical" || got.Drop != 0.125 || got.Folds[1] != (Fold{0.03, 0.15}) ||
		b.Toiles[1].Drop != 0.12065 {
		t.Errorf("the book holds %+v", b.Toiles)
	}
	if again, err := b.styleOf(got); err != nil || again.Fabric.Name != "wool-tropical" || again.Hang.Folds != 2 {
		t.Errorf("its style: folds %d, %v, want the two that were laid", again.Hang.Folds, err)
	}
}

// What cannot be written leaves the book as it was, to the byte, and nothing beside it.
func TestAddAtomic(t *testing.T) {
	dir, s := t.TempDir(), styleFile(t, "wool-tropical")
	path := filepath.Join(dir, "toiles.csv")
	first, _, err := Add(path, entered(s, "12.5cm"))
	if err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(path)
	next := Toile{Date: "2026-11-29", Fabric: "wool-tropical"}
	if next.Reading, err = entered(s, "13cm").reading(); err != nil {
		t.Fatal(err)
	}
	read, _ := style.FromFile(s)
	blocked := filepath.Join(dir, "toiles", keyOf(next, read.YAML())+".yaml", "full")
	if err := os.MkdirAll(blocked, 0o755); err != nil { // a folder where the copy is to go
		t.Fatal(err)
	}
	if _, _, err := Add(path, entered(s, "13cm")); !errors.Is(err, console.ErrCannotSave) {
		t.Errorf("Add where its style cannot be = %v, want that it cannot save", err)
	}
	if after, _ := os.ReadFile(path); string(after) != string(before) {
		t.Errorf("the book changed:\n%s", after)
	}
	for _, e := range []Entry{{Style: s, Drop: "2m", Date: "2026-11-29"}, {Style: s, Drop: "12cm", Date: "today"},
		{Style: s, Date: "2026-11-29"}} {
		if _, _, err := Add(filepath.Join(dir, "new", "b.csv"), e); err == nil {
			t.Errorf("Add %+v = nil, want an error", e)
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "new")); !os.IsNotExist(err) {
		t.Errorf("a refused toile left a folder: %v", err)
	}
	if files, _ := os.ReadDir(filepath.Join(dir, "toiles")); len(files) != 2 {
		t.Errorf("%v beside the book, want the style of %s and the folder in the way", files, first.Key)
	}
}

// Many who enter at once lose nothing.
func TestAddTogether(t *testing.T) {
	path, s := filepath.Join(t.TempDir(), "toiles.csv"), styleFile(t, "wool-tropical")
	var wg sync.WaitGroup
	const n = 8
	errs := make([]error, n)
	for k := range n {
		wg.Go(func() { _, _, errs[k] = Add(path, entered(s, fmt.Sprintf("%dcm", 10+k))) })
	}
	wg.Wait()
	b, err := Read(path)
	if err := errors.Join(append(errs, err)...); err != nil || len(b.Toiles) != n {
		t.Errorf("%d of %d toiles, %v", len(b.Toiles), n, err)
	}
}

// photograph writes a picture of that size.
func photograph(t *testing.T, path string, w, h int) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, image.NewRGBA(image.Rect(0, 0, w, h))); err != nil {
		t.Fatal(err)
	}
}

// An import takes over what is new with style and photograph, keeps what is in both once
// and tells where they differ; again it takes nothing.
func TestImport(t *testing.T) {
	s, here, there := styleFile(t, "wool-tropical"), t.TempDir(), t.TempDir()
	mine, theirs := filepath.Join(here, "mine.csv"), filepath.Join(there, "theirs.csv")
	for _, p := range []string{mine, theirs} {
		if _, _, err := Add(p, entered(s, "12.5cm")); err != nil {
			t.Fatal(err)
		}
	}
	photograph(t, filepath.Join(there, "t.png"), 40, 60)
	e := entered(s, "13cm")
	e.Photo = filepath.Join(there, "t.png")
	added, _, err := Add(theirs, e)
	if err != nil || added.Photo != "t.png" {
		t.Fatal(added.Photo, err)
	}
	text, _ := os.ReadFile(theirs)
	if err := os.WriteFile(theirs, []byte(strings.Replace(string(text), "12.5", "12.9", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	m, err := Import(mine, theirs)
	if err != nil || m.Taken != 1 || m.Same != 1 || m.Holds != 2 || len(m.Differ) != 1 ||
		!strings.Contains(m.Differ[0], "drop_cm is 12.5 here and 12.9 in "+theirs) {
		t.Errorf("Import = %+v, %v", m, err)
	}
	b, err := Read(mine)
	if err != nil || len(b.Toiles) != 2 || b.Toiles[0].Drop != 0.125 || b.Toiles[1].Photo != "mine/"+added.Key+".png" {
		t.Fatalf("mine holds %+v, %v", b.Toiles, err)
	}
	if _, err := b.styleOf(b.Toiles[1]); err != nil {
		t.Error(err)
	}
	if _, err := readPhoto(b.file(b.Toiles[1].Photo)); err != nil {
		t.Error(err)
	}
	before, _ := os.ReadFile(mine)
	if m, err = Import(mine, theirs); err != nil || m.Taken != 0 || m.Same != 2 {
		t.Errorf("Import again = %+v, %v", m, err)
	}
	if after, _ := os.ReadFile(mine); string(after) != string(before) {
		t.Error("the second import changed the book")
	}
	if err := os.Remove(filepath.Join(there, "theirs", added.Key+".yaml")); err != nil {
		t.Fatal(err)
	}
	fresh := filepath.Join(t.TempDir(), "fresh.csv")
	if _, err := Import(fresh, theirs); err == nil || !strings.Contains(err.Error(), added.Key+" of "+theirs) {
		t.Errorf("Import of a toile without its style: %v", err)
	}
	if _, err := os.Stat(fresh); !os.IsNotExist(err) {
		t.Errorf("a refused import left a book: %v", err)
	}
}

// A photograph lies beside the book and is one.
func TestPhotoRefused(t *testing.T) {
	dir, s := t.TempDir(), styleFile(t, "wool-tropical")
	outside := filepath.Join(t.TempDir(), "p.png")
	photograph(t, outside, 4, 4)
	text := filepath.Join(dir, "p.jpg")
	if err := os.WriteFile(text, []byte("no picture"), 0o644); err != nil {
		t.Fatal(err)
	}
	for file, want := range map[string]string{outside: "copy it there first", text: "no JPEG and no PNG",
		filepath.Join(dir, "none.jpg"): "no such file", dir: "is a folder"} {
		e := entered(s, "12cm")
		e.Photo = file
		if _, _, err := Add(filepath.Join(dir, "toiles.csv"), e); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("--photo %s: %v, want %q", file, err, want)
		}
	}
}
