package window

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

func TestSettingsReadBack(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "cowl")
	s, err := loadSettings(dir)
	if err != nil || !reflect.DeepEqual(s, defaults()) {
		t.Fatalf("first start: %+v, %v, want the defaults", s, err)
	}
	s.Units, s.Large, s.Scale, s.Folder = Inches, true, 2, "/somewhere"
	s.Recent = []string{"/somewhere/a.yaml"}
	if err := s.save(dir); err != nil {
		t.Fatal(err)
	}
	if got, err := loadSettings(dir); err != nil || !reflect.DeepEqual(got, s) {
		t.Errorf("read back %+v, %v, want %+v", got, err, s)
	}
}

// Settings that make no sense are those of the first start; a file that cannot
// be read says so and stops nothing.
func TestSettingsOutOfRange(t *testing.T) {
	dir := t.TempDir()
	write := func(text string) {
		if err := os.WriteFile(filepath.Join(dir, settingsFile), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("units: furlongs\nscale: 900\nwide: 3\ntall: -1\nfolder: \"\"\n")
	got, err := loadSettings(dir)
	want := defaults()
	if err != nil || got.Units != want.Units || got.Scale != 0 || got.Wide != want.Wide || got.Tall != want.Tall ||
		got.Folder != want.Folder {
		t.Errorf("read %+v, %v, want what is out of range as at the first start", got, err)
	}
	write("units: [")
	if got, err := loadSettings(dir); err == nil || !strings.Contains(err.Error(), "cannot be read") ||
		!reflect.DeepEqual(got, defaults()) {
		t.Errorf("a broken file gave %+v, %v, want the defaults and why", got, err)
	}
}
