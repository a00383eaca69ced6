package dxf_test

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// The reader of these tests: it takes nothing but what a plain R12 pattern
// file holds, and shares no code with the writer or the importer.

type pair struct {
	code  int
	value string
}

// pairsOf splits a file into group codes and values.
func pairsOf(t *testing.T, data []byte) []pair {
	t.Helper()
	var out []pair
	s := bufio.NewScanner(bytes.NewReader(data))
	s.Split(bufio.ScanLines)
	n := 0
	var lines []string
	for s.Scan() {
		n++
		if strings.ContainsFunc(s.Text(), func(r rune) bool { return r > '~' || r < ' ' && r != '\r' }) {
			t.Fatalf("line %d: %q is not printable ASCII", n, s.Text())
		}
		lines = append(lines, s.Text())
	}
	if len(lines)%2 != 0 {
		t.Fatalf("%d lines, want pairs", len(lines))
	}
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil || len(strings.TrimRight(lines[i], "\r")) < 3 {
			t.Fatalf("line %d: %q is no group code in three columns", i+1, lines[i])
		}
		out = append(out, pair{code, strings.TrimRight(lines[i+1], "\r")})
	}
	return out
}

// entity is one thing in a block: its place or places, mm.
type entity struct {
	kind, layer, text string
	closed            bool
	points            []r2.Vec
}

// drawing is a file read strictly.
type drawing struct {
	blocks map[string][]entity
	order  []string
	texts  []entity
	shown  []string // names inserted
}

// codes are the group codes an entity may carry.
var codes = map[string][]int{
	"POINT": {8, 10, 20}, "LINE": {8, 10, 20, 11, 21}, "POLYLINE": {8, 66, 70, 10, 20}, "VERTEX": {8, 10, 20},
	"SEQEND": {8},
	"TEXT":   {8, 10, 20, 40, 1}, "INSERT": {8, 2, 10, 20}, "BLOCK": {8, 2, 70, 10, 20}, "ENDBLK": {8},
	"SECTION": {2}, "ENDSEC": {}, "EOF": {},
}

// record is an entity as it stands: its kind and its pairs.
type record struct {
	kind string
	vals map[int]string
}

func records(t *testing.T, data []byte) []record {
	t.Helper()
	var out []record
	for _, p := range pairsOf(t, data) {
		switch {
		case p.code == 999:
		case p.code == 0:
			if _, ok := codes[p.value]; !ok {
				t.Fatalf("entity %q, want one of a plain R12 file", p.value)
			}
			out = append(out, record{p.value, map[int]string{}})
		default:
			r := out[len(out)-1]
			if _, twice := r.vals[p.code]; twice || !slices.Contains(codes[r.kind], p.code) {
				t.Fatalf("group %d twice in, or not of, %s", p.code, r.kind)
			}
			r.vals[p.code] = p.value
		}
	}
	for _, r := range out {
		if len(r.vals) != len(codes[r.kind]) {
			t.Fatalf("%s carries %v, want groups %v", r.kind, r.vals, codes[r.kind])
		}
	}
	return out
}

func (r record) place(t *testing.T, x, y int) r2.Vec {
	t.Helper()
	num := func(code int) float64 {
		v, err := strconv.ParseFloat(r.vals[code], 64)
		if err != nil || math.Abs(v) > 5000 || math.IsNaN(v) {
			t.Fatalf("%s: group %d is %q, want millimetres", r.kind, code, r.vals[code])
		}
		return v
	}
	return r2.Vec{X: num(x), Y: num(y)}
}

var (
	layers    = strings.Fields("1 2 3 4 7 8 13 14 15 84 85 87")
	blockName = regexp.MustCompile(`^[A-Z0-9_]{1,20}$`)
)

// strict reads a file or fails the test.
func strict(t *testing.T, data []byte) drawing {
	t.Helper()
	d := drawing{blocks: map[string][]entity{}}
	rs := records(t, data)
	if rs[len(rs)-1].kind != "EOF" {
		t.Fatal("no EOF at the end")
	}
	section, block := "", ""
	var poly *entity
	add := func(e entity) { d.add(t, e, section, block) }
	for _, r := range rs {
		layer, has := r.vals[8]
		if has && !slices.Contains(layers, layer) {
			t.Fatalf("%s on layer %q, want one of %v", r.kind, layer, layers)
		}
		if poly != nil && r.kind != "VERTEX" && r.kind != "SEQEND" {
			t.Fatalf("%s within a POLYLINE", r.kind)
		}
		switch r.kind {
		case "SECTION":
			section = r.vals[2]
		case "ENDSEC":
			section = ""
		case "BLOCK":
			block = d.begin(t, r.vals[2], section, block)
		case "ENDBLK":
			block = ""
		case "POLYLINE":
			poly = &entity{kind: r.kind, layer: layer, closed: r.vals[70] == "1"}
		case "VERTEX":
			if layer != poly.layer {
				t.Fatalf("VERTEX on layer %s of a POLYLINE on %s", layer, poly.layer)
			}
			poly.points = append(poly.points, r.place(t, 10, 20))
		case "SEQEND":
			add(*poly)
			poly = nil
		case "LINE":
			add(entity{kind: r.kind, layer: layer, points: []r2.Vec{r.place(t, 10, 20), r.place(t, 11, 21)}})
		case "POINT", "TEXT":
			add(entity{kind: r.kind, layer: layer, text: r.vals[1], points: []r2.Vec{r.place(t, 10, 20)}})
		case "INSERT":
			if at := r.place(t, 10, 20); at != (r2.Vec{}) {
				t.Fatalf("INSERT at %v, want 0, 0", at)
			}
			d.shown = append(d.shown, r.vals[2])
		}
	}
	if fmt.Sprint(d.order) != fmt.Sprint(d.shown) {
		t.Fatalf("inserts %v, want every block once: %v", d.shown, d.order)
	}
	return d
}

// add puts an entity into its block, or a text beside all.
func (d *drawing) add(t *testing.T, e entity, section, block string) {
	t.Helper()
	switch {
	case block != "":
		d.blocks[block] = append(d.blocks[block], e)
	case section == "ENTITIES" && e.kind == "TEXT":
		d.texts = append(d.texts, e)
	default:
		t.Fatalf("%s outside a block", e.kind)
	}
}

// begin begins a block and returns its name; within is the one that is open.
func (d *drawing) begin(t *testing.T, block, section, within string) string {
	t.Helper()
	if within != "" || section != "BLOCKS" || !blockName.MatchString(block) {
		t.Fatalf("block %q in section %q within %q", block, section, within)
	}
	if _, twice := d.blocks[block]; twice {
		t.Fatalf("block %s twice", block)
	}
	d.order = append(d.order, block)
	d.blocks[block] = nil
	return block
}

// on returns the entities of a block on a layer.
func (d drawing) on(block, layer string) []entity {
	var out []entity
	for _, e := range d.blocks[block] {
		if e.layer == layer {
			out = append(out, e)
		}
	}
	return out
}
