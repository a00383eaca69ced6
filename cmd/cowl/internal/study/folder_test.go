package study

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"cowl/cmd/cowl/internal/study/readback"
	"cowl/cmd/cowl/internal/style"
)

// checkFolder reads tables, result and style files back.
func checkFolder(t *testing.T, dir string, spec Spec) {
	t.Helper()
	list := readback.Table(t, filepath.Join(dir, "table.csv"))
	if len(list) < 3 {
		t.Fatalf("table.csv has %d rows, want 3 or more", len(list))
	}
	var result struct {
		Cases []struct {
			Figures map[string]struct{ Mean *float64 }
		}
	}
	data, err := os.ReadFile(filepath.Join(dir, "result.json"))
	if err := errors.Join(err, json.Unmarshal(data, &result)); err != nil || len(result.Cases) != len(list) {
		t.Fatalf("result.json: %v, %d cases, want %d", err, len(result.Cases), len(list))
	}
	placings := readback.Table(t, filepath.Join(dir, "placings.csv"))
	for i, row := range list {
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
		if err != nil || math.Abs(got-mean/float64(n)) > 1e-4 ||
			math.Abs(got-*result.Cases[i].Figures["edge_drop_mm"].Mean) > 1e-4 {
			t.Errorf("%s: mean drop %q, %v, its %d placings give %.5f", row["case"], row["edge_drop_mm_mean"], err, n,
				mean/float64(n))
		}
		s, err := style.FromFile(filepath.Join(dir, row["style"]))
		if err != nil || strconv.Itoa(s.Hang.Placings) != row["placings"] || s.Fabric.Name != row["fabric"] {
			t.Errorf("%s: %v, %d placings of %s, want those of the row", row["style"], err, s.Hang.Placings, s.Fabric.Name)
		}
	}
	if spec.Verb == "sweep" && spec.Vary[0] == "extension=0cm:14cm:2cm" && list[3]["extension_cm"] != "6" {
		t.Errorf("fourth extension %q, want 6", list[3]["extension_cm"])
	}
}
