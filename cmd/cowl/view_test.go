package main

import (
	"bytes"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// A back cowl may be viewed, and its pattern is that of a back.
func TestPatternOfBack(t *testing.T) {
	s, err := style.Parse("back.yaml", []byte("name: Nape\ncut: {side: back, extension_cm: 8}\n"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Cowl()
	if err == nil {
		err = viewable(s, p, 1)
	}
	if err != nil {
		t.Fatal(err)
	}
	files, err := patternIn(s, p, "svg")
	if err != nil || len(files) != 1 {
		t.Fatalf("patternIn = %d files, %v, want one", len(files), err)
	}
	if text := string(files[0].Data); !strings.Contains(text, "Cowl back") || ofTheFront.MatchString(text) {
		t.Errorf("the pattern says %q, want a cowl back", ofTheFront.FindString(text))
	}
}

// The window gets the pattern in each format as the command line writes it: by its first
// bytes.
func TestPatternIn(t *testing.T) {
	s := style.Default()
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		format, head, first string
		files               int
	}{{"svg", "<?xml", "draft.svg", 1}, {"pdf", "%PDF-", "draft-a4.pdf", 4}, {"dxf", "999", "draft.dxf", 1}} {
		files, err := patternIn(s, p, c.format)
		if err != nil || len(files) != c.files || files[0].Name != c.first {
			t.Errorf("%s: %d files, error %v, want %d, %s first", c.format, len(files), err, c.files, c.first)
			continue
		}
		for _, f := range files {
			if !bytes.HasPrefix(bytes.TrimSpace(f.Data), []byte(c.head)) {
				t.Errorf("%s begins %.10q, want %q", f.Name, f.Data, c.head)
			}
		}
	}
}
