package toile

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/readback"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
)

// A book of back cowls is told in the words of a back, one of both in words for both; what
// the user wrote stays, and files say which toile is a back.
func TestShowBacks(t *testing.T) {
	s := style.Default()
	s.Cut.Worn, s.Cut.Extension = draft.AtBack, 0.08
	back := filepath.Join(t.TempDir(), "back.yaml")
	if err := os.WriteFile(back, s.YAML(), 0o600); err != nil {
		t.Fatal(err)
	}
	front := styleFile(t, "polyester-twill")
	const note = "the centre front of the toile was crooked"
	for _, q := range []struct {
		styles     []string
		says, side string
		never      *regexp.Regexp
	}{
		{[]string{back}, "on the centre back", "back", regexp.MustCompile(`(?i)centre front|ahead of the form`)},
		{[]string{front, back}, "on the centre front or back", "front", regexp.MustCompile(`(?i)ahead of the form`)},
		{[]string{front}, "Reach ahead of the form", "front", regexp.MustCompile(`(?i)centre back|at the back`)},
	} {
		path, dir := filepath.Join(t.TempDir(), "toiles.csv"), t.TempDir()
		for _, file := range q.styles {
			e := entered(file, "12cm")
			e.Note = note
			if _, _, err := Add(path, e); err != nil {
				t.Fatal(err)
			}
		}
		var out, warn bytes.Buffer
		if err := Show(t.Context(), Options{Book: path, hang: madeUp}, console.Console{Out: &out, Err: &warn}, 2,
			dir); err != nil {
			t.Fatal(err, warn.String())
		}
		page, err := os.ReadFile(filepath.Join(dir, "index.html"))
		if err != nil {
			t.Fatal(err)
		}
		readback.WellFormed(t, page)
		text := string(page)
		if !strings.Contains(text, q.says) || !strings.Contains(text, note) {
			t.Errorf("%d styles: the sheet lacks %q or the note", len(q.styles), q.says)
		}
		if said := q.never.FindString(strings.ReplaceAll(text, note, "") + out.String()); said != "" {
			t.Errorf("%d styles: said %q of a %s", len(q.styles), said, q.side)
		}
		if rows := readback.Table(t, filepath.Join(dir, "table.csv")); rows[0]["side"] != q.side ||
			rows[len(rows)-1]["note"] != note {
			t.Errorf("table.csv = %v, want the side %s", rows, q.side)
		}
	}
}

// What is wrong with a fold of a back cowl is said of its centre back.
func TestAddBackWords(t *testing.T) {
	s := style.Default()
	s.Cut.Worn, s.Cut.Extension = draft.AtBack, 0.08
	back := filepath.Join(t.TempDir(), "back.yaml")
	if err := os.WriteFile(back, s.YAML(), 0o600); err != nil {
		t.Fatal(err)
	}
	e := entered(back, "12cm")
	e.Folds = []string{"@"}
	if _, _, err := Add(filepath.Join(t.TempDir(), "toiles.csv"), e); err == nil ||
		!strings.Contains(err.Error(), "down the centre back from the edge") {
		t.Errorf("Add of a fold with nothing = %v, want the centre back in it", err)
	}
}
