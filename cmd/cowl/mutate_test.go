//go:build unix

package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/materials"
	"cowl/materials/worked"
)

var mutations = flag.Int("mutations", 400, "files changed at random that TestMutations tries")

// morsels are put into files.
var morsels = []string{"1e308", "-1e308", "1e999", "nan", "NaN", ".inf", "-0", "0", "-1", "99999999999999999999",
	"1e-308", "{", "}", "[", "]", "[[[[[[[[", "{a: ", "- ", "? ", "&a ", "*a", "!a ",
	"\"", "'", "|\n", ">-\n", "\n", "\r", "\r\n", "\t", "\x00", "\x1b[2J", "\ufeff", "é", "\xff", "<<: ", "---\n", "#",
	":", ": ", ",", "auto", "true", "null", "~", "../../x", "/dev/zero", "file: x", "<g>", "</g>", "Z", "M0 0",
	"0\nSECTION\n", "\"sum\"", "\\u0000"}

// mutate changes data in one place, or in up to eight.
func mutate(r *rand.Rand, data []byte, others [][]byte) []byte {
	out := bytes.Clone(data)
	places := 1
	if r.IntN(2) == 0 {
		places = 1 + r.IntN(8)
	}
	for range places {
		at := r.IntN(len(out) + 1)
		end := min(len(out), at+1+r.IntN(40))
		switch r.IntN(12) {
		case 9, 10, 11:
			out = number(r, out)
		case 0:
			if at < len(out) {
				out[at] ^= 1 << r.IntN(8)
			}
		case 1:
			out = append(out[:at:at], append([]byte(morsels[r.IntN(len(morsels))]), out[at:]...)...)
		case 2:
			out = append(out[:at:at], out[end:]...)
		case 3:
			out = append(out[:end:end], out[at:]...)
		case 4:
			out = number(r, out)
		case 5:
			lines := bytes.SplitAfter(out, []byte("\n"))
			i, j := r.IntN(len(lines)), r.IntN(len(lines))
			lines[i], lines[j] = lines[j], lines[i]
			out = bytes.Join(lines, nil)
		case 6:
			o := others[r.IntN(len(others))]
			from := r.IntN(len(o) + 1)
			out = append(out[:at:at], append(bytes.Clone(o[from:min(len(o), from+r.IntN(200))]), out[at:]...)...)
		case 7:
			if r.IntN(4) == 0 {
				out = append(out[:end:end], append(bytes.Repeat(out[at:end], r.IntN(20000)), out[end:]...)...)
			}
		case 8:
			if r.IntN(4) == 0 {
				out = out[:at]
			}
		}
		if len(out) > 9<<20 {
			out = out[:9<<20]
		}
	}
	return out
}

// number puts another number in the place of one.
func number(r *rand.Rand, data []byte) []byte {
	var at []int
	for i, c := range data {
		if c >= '0' && c <= '9' && (i == 0 || data[i-1] < '0' || data[i-1] > '9') {
			at = append(at, i)
		}
	}
	if at == nil {
		return data
	}
	from := at[r.IntN(len(at))]
	to := from
	for to < len(data) && (data[to] >= '0' && data[to] <= '9' || data[to] == '.') {
		to++
	}
	var v []byte
	switch r.IntN(3) {
	case 0:
		v = fmt.Appendf(nil, "%.4g", 200*r.Float64())
	case 1:
		v = fmt.Appendf(nil, "%d", r.IntN(30)-3)
	default:
		v = []byte(morsels[r.IntN(11)])
	}
	return append(data[:from:from], append(v, data[to:]...)...)
}

// target is a reader with the good file that it is tried on.
type target struct {
	name, file string
	data       []byte
	run        func(path string) int
}

// targets are all readers, as the user calls them.
func targets(t *testing.T) []target {
	t.Helper()
	dir, out := t.TempDir(), t.TempDir()
	if got := call(t.Context(), "draft", "--format", "all", "--quiet", "--out", dir); got.code != console.ExitOK {
		t.Fatal(got.err)
	}
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	cowl := func(args ...string) func(string) int {
		return func(path string) int {
			return call(context.Background(), append(args, path, "--quiet", "--out", out)...).code
		}
	}
	own := mustDemo(t)
	own.Fabric.Note = "changed"
	s := own.YAML()
	all := []byte("block:\n" + strings.SplitN(agreeBlock, "\n", 2)[1] +
		"trims:\n  - line_mm: [[600, -90], [235, -150], [600, -160]]\nstand: {stay_edge: true}\ncut: {pleats: 2, " +
		"pleat_depth_mm: 20, grain_deg: 30}\n")
	sheet := []byte("name: mine\nweight: 135gsm\noverhang_warp: 3.2cm, 3.3cm, 3.1cm\noverhang_weft: [2.9cm, " +
		"3.0cm]\nthickness: 0.31mm\nkes_g: 0.6\n")
	fabric := func(path string) int {
		_, err := materials.FromFile(path)
		return map[bool]int{true: console.ExitOK, false: console.ExitBadInput}[err == nil]
	}
	return []target{
		{"draft", "s.yaml", s, cowl("draft", "--style")}, {"draft", "s.yaml", all, cowl("draft", "--style")},
		{"draft", "s.yaml", demo, cowl("draft", "--style")},
		{"chart", "c.yaml", []byte(ownChart), cowl("draft", "--size", "38", "--chart")},
		{"lay", "s.yaml", demo, cowl("lay", "--style")}, {"fabric", "f.yaml", own.Fabric.YAML(), fabric},
		{"swatch", "w.yaml", sheet, func(path string) int {
			return call(context.Background(), "swatch", "--quiet", "--sheet", path).code
		}},
		{"block dxf", "b.dxf", read("draft.dxf"), cowl("draft", "--block")},
		{"piece dxf", "p.dxf", read("draft.dxf"), cowl("draft", "--piece")},
		{"piece svg", "p.svg", read("draft.svg"), cowl("draft", "--piece")},
		{"piece csv", "p.csv", read("draft.csv"), cowl("draft", "--piece")},
		{"block csv", "b.csv", read("draft.csv"), cowl("draft", "--block")},
	}
}

// agreeBlock is a block of one's own.
const agreeBlock = `block:
  - {name: cf neck, x_cm: 0, y_cm: -7.2}
  - {name: neck, x_cm: 6.7, y_cm: 0}
  - {name: shoulder tip, x_cm: 18, y_cm: -5}
  - {name: underarm, x_cm: 23, y_cm: -21}
  - {name: side waist, x_cm: 22, y_cm: -43}
  - {name: dart outer, x_cm: 14, y_cm: -43}
  - {name: apex, x_cm: 10, y_cm: -25}
  - {name: dart inner, x_cm: 6, y_cm: -43}
  - {name: cf waist, x_cm: 0, y_cm: -43}
`

// gathered is a target of a study's file, study.json or a row.
func gathered(t *testing.T) []target {
	t.Helper()
	from := t.TempDir()
	if got := call(t.Context(), "sweep", "--vary", "extension=4cm,8cm", "--folds", "1", "--placings", "1", "--spacing",
		"20mm", "--quiet", "--out", from); got.code != console.ExitOK {
		t.Fatalf("cowl sweep = %d, %s", got.code, got.err)
	}
	rows, _ := filepath.Glob(filepath.Join(from, "rows", "*"))
	var out []target
	for _, name := range append(rows[:2:2], filepath.Join(from, "study.json")) {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		local, _ := filepath.Rel(from, name)
		out = append(out, target{"gather " + filepath.Ext(name), filepath.Base(name), data, func(path string) int {
			dir := filepath.Join(filepath.Dir(path), "study")
			defer os.RemoveAll(dir)
			if err := os.CopyFS(dir, os.DirFS(from)); err != nil {
				return console.ExitFault
			}
			bad, _ := os.ReadFile(path)
			if err := os.WriteFile(filepath.Join(dir, local), bad, 0o600); err != nil {
				return console.ExitFault
			}
			return call(context.Background(), "gather", dir, "--quiet").code
		}})
	}
	return out
}

// Files that were changed at random in every way: no crash, and an answer within a
// second and 100 MB. -mutations 20000 is the whole of it.
func TestMutations(t *testing.T) {
	if testing.Short() {
		t.Skip("drafts hundreds of pieces")
	}
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	all := append(targets(t), gathered(t)...)
	var data [][]byte
	for _, a := range all {
		data = append(data, a.data)
	}
	r := rand.New(rand.NewPCG(17, 20000))
	dir := t.TempDir()
	good, crashes := 0, 0
	var slowest time.Duration
	var largest uint64
	for _, q := range all {
		path := filepath.Join(dir, q.file)
		if err := os.WriteFile(path, q.data, 0o600); err != nil {
			t.Fatal(err)
		}
		// which hold a front
		if code := q.run(path); code != console.ExitOK && q.name != "block dxf" && q.name != "block csv" {
			t.Errorf("%s of the good file = %d, want 0:\n%s", q.name, code, call(t.Context(), "draft", "--style", path, "--out",
				dir).err)
		}
	}
	for n := range *mutations {
		q := all[n%len(all)]
		text := mutate(r, q.data, data)
		path := filepath.Join(dir, q.file)
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		code := 0
		took, grew := worked.Watched(t, func() { code = q.run(path) })
		if code == console.ExitOK {
			good++
		}
		keep := func(why string) {
			name := filepath.Join(os.TempDir(), fmt.Sprintf("cowl-mutation-%d-%s", n, q.file))
			os.WriteFile(name, text, 0o600)
			t.Errorf("case %d, %s: %s; the file is kept as %s", n, q.name, why, name)
		}
		switch {
		case code == console.ExitFault:
			crashes++
			keep("crashed")
		case took > time.Second:
			keep(fmt.Sprintf("took %v", took))
		case grew > 100<<20:
			keep(fmt.Sprintf("took %d MB", grew>>20))
		}
		slowest, largest = max(slowest, took), max(largest, grew)
	}
	t.Logf("%d files, %d of them taken: %d crashes, the slowest %v, the largest %d MB", *mutations, good, crashes,
		slowest, largest>>20)
	if good == 0 || good == *mutations {
		t.Errorf("%d of %d files taken, want some", good, *mutations)
	}
}
