package main

import (
	"bytes"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

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
