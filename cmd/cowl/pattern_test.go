package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
)

// names lists the files of a folder.
func names(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

func TestDraftFormats(t *testing.T) {
	all := []string{"cutting-sheet.pdf", "draft-a4.pdf", "draft-letter.pdf", "draft-sheet.pdf", "draft.csv", "draft.dxf",
		"draft.svg"}
	for _, q := range []struct {
		args []string
		want []string
	}{
		{[]string{"--format", "all"}, all},
		{[]string{"--format", "dxf,csv"}, []string{"draft.csv", "draft.dxf"}},
		{[]string{"--format", "pdf", "--paper", "letter"}, []string{"cutting-sheet.pdf", "draft-letter.pdf",
			"draft-sheet.pdf"}},
		{nil, []string{"draft.svg"}},
	} {
		dir := t.TempDir()
		got := call(t.Context(), append([]string{"draft", "--quiet", "--out", dir}, q.args...)...)
		if got.code != console.ExitOK || !slices.Equal(names(t, dir), q.want) {
			t.Errorf("cowl draft %v = %d, %q, left %v, want %v", q.args, got.code, got.err, names(t, dir), q.want)
		}
	}
	first, second := t.TempDir(), t.TempDir()
	call(t.Context(), "draft", "--quiet", "--format", "all", "--out", first)
	call(t.Context(), "draft", "--quiet", "--format", "all", "--out", second)
	for _, name := range all {
		a, errA := os.ReadFile(filepath.Join(first, name))
		b, errB := os.ReadFile(filepath.Join(second, name))
		if errA != nil || errB != nil || !bytes.Equal(a, b) {
			t.Errorf("%s: two runs differ, %v %v", name, errA, errB)
		}
	}
	if got := call(t.Context(), "draft", "--format", "xyz", "--out", t.TempDir()); got.code != console.ExitBadInput {
		t.Errorf("cowl draft --format xyz = %d, want %d", got.code, console.ExitBadInput)
	}
}

// ownBlock is a table of the points of a worked size 10 front, centimetres.
const ownBlock = `name,x_cm,y_cm
cf neck,0,-7.2
neck,6.7,0
shoulder tip,18.439,-3.368
armhole,16.893,-14.115
armhole,19.643,-18.696
underarm,24.248,-18.877
side waist,27.816,-38.127
dart outer,16.115,-41.4
apex,9.85,-25.5
dart inner,8.1,-42.5
cf waist,0,-42.5
`

// A block of one's own, by flag or in the style file, is drafted from, and the
// style that drape writes would stand without its file.
func TestDraftOwnBlock(t *testing.T) {
	table := write(t, "front.csv", ownBlock)
	style := write(t, "s.yaml", "name: Own\nblock: {file: "+table+"}\n")
	for _, args := range [][]string{{"--block", table}, {"--style", style}} {
		got := call(t.Context(), append([]string{"draft", "--json", "--out", t.TempDir()}, args...)...)
		if got.code != console.ExitOK || !strings.Contains(got.out, "own block") ||
			!strings.Contains(got.out, `"dart_angle_deg": 27.3`) {
			t.Errorf("cowl draft %v = %d, %q, %s, want the dart of the table, 27.38°", args, got.code, got.err, got.out)
		}
	}
	for _, q := range []struct {
		args []string
		want string
	}{
		{[]string{"--block", table, "--block-unit", "mm"}, "the file says cm"},
		{[]string{"--block", filepath.Join(t.TempDir(), "none.dxf")}, "no such file"},
		{[]string{"--block-unit", "mm"}, "no --block"},
		{[]string{"--block", write(t, "b.txt", "")}, "file ending"},
		{[]string{"--style", write(t, "bad.yaml", "block: {fille: a.dxf}\n")}, "bad.yaml:1: block: unknown key"},
		{[]string{"--style", write(t, "gone.yaml", "block: {file: gone.dxf, unit: mm}\n")}, "gone.yaml:1: block:"},
	} {
		got := call(t.Context(), append([]string{"draft", "--out", t.TempDir()}, q.args...)...)
		if got.code != console.ExitBadInput || !strings.Contains(got.err, q.want) {
			t.Errorf("cowl draft %v = %d, %q, want %d and %q", q.args, got.code, got.err, console.ExitBadInput, q.want)
		}
	}
}
