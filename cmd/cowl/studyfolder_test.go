package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"cowl/cmd/cowl/internal/style"
)

// wellFormed reads the sheet with the parser of the standard library.
func wellFormed(t *testing.T, page []byte) {
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

// checkFolder reads tables, result and style files back.
func checkFolder(t *testing.T, dir string, ask studyAsk) {
	t.Helper()
	rows := table(t, filepath.Join(dir, "table.csv"))
	if len(rows) < 3 {
		t.Fatalf("table.csv has %d rows, want 3 or more", len(rows))
	}
	var result struct {
		Cases []struct {
			Figures map[string]struct{ Mean *float64 }
		}
	}
	data, err := os.ReadFile(filepath.Join(dir, "result.json"))
	if err := errors.Join(err, json.Unmarshal(data, &result)); err != nil || len(result.Cases) != len(rows) {
		t.Fatalf("result.json: %v, %d cases, want %d", err, len(result.Cases), len(rows))
	}
	placings := table(t, filepath.Join(dir, "placings.csv"))
	for i, row := range rows {
		mean, n := 0.0, 0
		for _, p := range placings {
			if p["case"] == row["case"] && p["group"] == row["group"] {
				v, err := strconv.ParseFloat(p["edge_drop_mm"], 64)
				if err != nil {
					t.Fatal(err)
				}
				mean, n = mean+v, n+1
			}
		}
		got, err := strconv.ParseFloat(row["edge_drop_mm_mean"], 64)
		if err != nil || math.Abs(got-mean/float64(n)) > 1e-4 || math.Abs(got-*result.Cases[i].Figures["edge_drop_mm"].Mean) > 1e-4 {
			t.Errorf("%s: mean drop %q, %v, its %d placings give %.5f", row["case"], row["edge_drop_mm_mean"], err, n, mean/float64(n))
		}
		s, err := style.FromFile(filepath.Join(dir, row["style"]))
		if err != nil || strconv.Itoa(s.Hang.Placings) != row["placings"] || s.Fabric.Name != row["fabric"] {
			t.Errorf("%s: %v, %d placings of %s, want those of the row", row["style"], err, s.Hang.Placings, s.Fabric.Name)
		}
	}
	if ask.Verb == "sweep" && ask.Vary[0] == "extension=0cm:14cm:2cm" && rows[3]["extension_cm"] != "6" {
		t.Errorf("fourth extension %q, want 6", rows[3]["extension_cm"])
	}
}

// table reads CSV into rows by the names of its columns.
func table(t *testing.T, name string) []map[string]string {
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
