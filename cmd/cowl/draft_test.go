package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drafted"
)

// elements counts the elements of an XML file; it fails where it does not parse.
func elements(t *testing.T, data []byte) map[string]int {
	t.Helper()
	n := map[string]int{}
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return n
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if e, ok := tok.(xml.StartElement); ok {
			n[e.Name.Local]++
		}
	}
}

func TestDraftDemo(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "folder")
	got := call(t.Context(), "draft", "--out", dir)
	if got.code != console.ExitOK || got.err != "" {
		t.Fatalf("cowl draft = %d, %q, want 0", got.code, got.err)
	}
	data, err := os.ReadFile(filepath.Join(dir, "draft.svg"))
	if err != nil {
		t.Fatal(err)
	}
	if n := elements(t, data); n["svg"] != 1 || n["text"] < 10 {
		t.Errorf("draft.svg has elements %v, want one svg with 10 texts or more", n)
	}
	files, err := os.ReadDir(dir)
	if err != nil || len(files) != 1 {
		t.Errorf("cowl draft left %v, %v, want draft.svg alone", files, err)
	}
	unit := regexp.MustCompile(`^ (°|%|cm²|cm|mm)|^(°|%)`)
	number := regexp.MustCompile(`\d+(\.\d+)?`)
	figures := 0
	for _, line := range strings.Split(got.out, "\n")[1:] { // the first line names the size, the last a path
		if strings.HasPrefix(line, "Wrote") {
			continue
		}
		for _, at := range number.FindAllStringIndex(line, -1) {
			figures++
			if !unit.MatchString(line[at[1]:]) {
				t.Errorf("figure %s has no unit in %q", line[at[0]:at[1]], line)
			}
		}
	}
	if figures < 20 {
		t.Errorf("cowl draft prints %d figures, want 20 or more", figures)
	}
}

// The extension is what the two ways add, and the cloth holds the piece.
func TestDraftJSON(t *testing.T) {
	for _, args := range [][]string{nil, {"--extension", "6cm"}, {"--extension", "14cm", "--how", "slash"},
		{"--how", "shift", "--dart-share", "0", "--extension", "80mm"}} {
		got := call(t.Context(), append([]string{"draft", "--json", "--out", t.TempDir()}, args...)...)
		var f drafted.Figures
		d := json.NewDecoder(strings.NewReader(got.out))
		d.DisallowUnknownFields()
		if err := d.Decode(&f); err != nil || d.More() {
			t.Fatalf("cowl draft --json %v = %d, %q, %v, want one object", args, got.code, got.out, err)
		}
		if math.Abs(f.FromDart+f.FromOther-f.Extension) > 1e-6 {
			t.Errorf("%v: extension %.3f mm = %.3f + %.3f, want a sum", args, f.Extension, f.FromDart, f.FromOther)
		}
		if f.Across*f.Along < f.AreaFront+f.AreaFacing || f.DropCurve > f.DropV || f.HalfEdge < f.Extension {
			t.Errorf("%v: figures contradict each other: %+v", args, f)
		}
	}
}

func TestFabrics(t *testing.T) {
	list := call(t.Context(), "fabrics")
	asJSON := call(t.Context(), "fabrics", "--json")
	var all struct{ Fabrics []map[string]any }
	if err := json.Unmarshal([]byte(asJSON.out), &all); err != nil || len(all.Fabrics) < 11 {
		t.Fatalf("cowl fabrics --json = %v, %d fabrics, want 11 or more", err, len(all.Fabrics))
	}
	published := 0
	for _, f := range all.Fabrics {
		name := f["name"].(string)
		if !strings.Contains(list.out, name) {
			t.Errorf("cowl fabrics lacks %s", name)
		}
		if f["known"] == "memory" != strings.HasSuffix(name, "-memory") {
			t.Errorf("%s is known by %v", name, f["known"])
		}
		if f["known"] == "measured" {
			published++
		}
		one := call(t.Context(), "fabrics", name)
		path := write(t, "f.yaml", one.out)
		s := call(t.Context(), "draft", "--style", write(t, "s.yaml", "fabric: {file: "+path+"}\n"), "--out", t.TempDir())
		if one.code != console.ExitOK || s.code != console.ExitOK {
			t.Errorf("cowl fabrics %s does not read back: %d, %q", name, s.code, s.err)
		}
	}
	if published == 0 {
		t.Error("no fabric is measured throughout")
	}
}
