// Package readback reads back what a study has written, for tests, with readers of the
// standard library.
package readback

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"io"
	"os"
	"regexp"
	"testing"
)

// WellFormed fails a test whose sheet is no well-formed page, or says NaN.
func WellFormed(t *testing.T, page []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	d.AutoClose, d.Entity, d.Strict = xml.HTMLAutoClose, xml.HTMLEntity, false
	n := 0
	for {
		_, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("sheet: %v", err)
		}
		n++
	}
	words := regexp.MustCompile(`base64,[^"]*`).ReplaceAll(page, nil) // a picture may spell anything
	if n < 100 || bytes.Contains(words, []byte("NaN")) || bytes.Contains(words, []byte("%!")) {
		t.Errorf("sheet has %d tokens, or says NaN or a wrong format", n)
	}
}

// Table reads a CSV file into rows by the names of its columns.
func Table(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var out []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, k := range records[0] {
			if _, twice := row[k]; twice {
				t.Fatalf("%s has two columns %q", name, k)
			}
			row[k] = r[i]
		}
		out = append(out, row)
	}
	return out
}
