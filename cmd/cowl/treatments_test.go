package main

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drafted"
	"cowl/cmd/cowl/internal/treatment"
)

// What is done to a front stands in cowl draft --json with its sizes: a trim
// with two triangles of half the side seam and 1 cm, a pleat with twice its
// depth of seam, a tape with the shoulder of the chart behind the cowl point.
func TestDraftTreatment(t *testing.T) {
	// Underarm and side waist of the demo's front, mm, as cowl draft --format csv has them.
	ux, uy, wx, wy := 256.811, -262.407, 199.952, -449.752
	side := math.Hypot(ux-wx, uy-wy)
	nx, ny := (wy-uy)/side, (ux-wx)/side // into the piece
	at := func(share, in float64) (x, y float64) {
		return ux + share*(wx-ux) + in*nx, uy + share*(wy-uy) + in*ny
	}
	ax, ay := at(0, -10) // the line meets the seam at a quarter and three quarters
	bx, by := at(0.5, 10)
	cx, cy := at(1, -10)
	trims := fmt.Sprintf("cut: {extension_cm: auto}\ntrims:\n  - line_mm: [[%f, %f], [%f, %f], [%f, %f]]\n", ax, ay, bx,
		by, cx, cy)
	for _, q := range []struct {
		what  string
		args  []string
		field func(*treatment.Figures) float64
		want  float64
		tol   float64
	}{
		{"trim, mm²", []string{"--style", write(t, "s.yaml", trims)},
			func(f *treatment.Figures) float64 { return f.Trims[0].Area }, 2 * side / 2 * 10 / 2, 0.5},
		{"pleats", []string{"--pleats", "3", "--pleat-depth", "1.5cm"},
			func(f *treatment.Figures) float64 { return f.Pleats.Open - f.Pleats.Folded }, 3 * 2 * 15, 1e-6},
		{"pleat depth, mm", []string{"--pleats", "1"},
			func(f *treatment.Figures) float64 { return f.Pleats.Depth }, 20, 1e-9},
		{"shoulder stay, mm", []string{"--stay-shoulder", "--pleats", "2"},
			func(f *treatment.Figures) float64 { return f.Shoulder }, 122.5 - 40, 0.05},
		{"slash, mm", []string{"--release-waist", "6cm"},
			func(f *treatment.Figures) float64 { return f.Slashes[0].Length }, 60, 1e-9},
		{"weight, g", []string{"--cf-weight", "8g"}, func(f *treatment.Figures) float64 { return f.Weight }, 8, 1e-9},
		{"lowered, mm", []string{"--lower", "2cm"}, func(f *treatment.Figures) float64 { return f.Lowered }, 20, 1e-9},
	} {
		var f drafted.Figures
		got := call(t.Context(), append([]string{"draft", "--json", "--out", t.TempDir()}, q.args...)...)
		if err := json.Unmarshal([]byte(got.out), &f); err != nil {
			t.Fatalf("%s: %v, %s", q.what, err, got.err)
		}
		if f.Treatment == nil {
			t.Errorf("%s: no treatment in cowl draft --json %v", q.what, q.args)
			continue
		}
		if is := q.field(f.Treatment); math.Abs(is-q.want) > q.tol {
			t.Errorf("%s: %g, want %g", q.what, is, q.want)
		}
	}
	if got := call(t.Context(), "draft", "--json", "--out", t.TempDir()); strings.Contains(got.out, "treatment") {
		t.Errorf("a front as drafted has a treatment: %s", got.out)
	}
}

// Compared without its stays a drape says what one of its own without them does, to
// the bit, with as many folds laid as the cloth with stays kept when several were tried.
func TestDrapeBefore(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs some cloths")
	}
	type result struct {
		boundsJSON
		Laid   int     `json:"laid"`
		Drop   float64 `json:"edge_drop_mm"`
		Growth float64 `json:"edge_growth_percent"`
		Strain float64 `json:"max_strain_percent"`
	}
	var with, plain result
	drape := func(to *result, args ...string) {
		got := blind(t.Context(), coarse(t.TempDir(), args...)...)
		if err := json.Unmarshal([]byte(got.out), to); err != nil {
			t.Fatalf("cowl drape %v: %v, %s", args, err, got.err)
		}
	}
	drape(&with, "--extension", "3cm", "--stay-edge", "--before", "--json")
	drape(&plain, "--extension", "3cm", "--json", "--folds", strconv.Itoa(with.Laid))
	if with.Stays == nil || with.Lowering != nil || with.Pleats != nil || with.Treatment == nil ||
		with.Treatment.Edge == 0 {
		t.Fatalf("stays %v, pleats %v, treatment %v, want stays compared and told", with.Stays, with.Pleats, with.Treatment)
	}
	for _, q := range []struct {
		what      string
		got, want float64
	}{
		{"edge drop before", with.Stays.DropBefore, plain.Drop},
		{"edge growth before", with.Stays.EdgeBefore, plain.Growth},
		{"strain before", with.Stays.StrainBefore, plain.Strain},
		{"edge drop", with.Stays.DropAfter, with.Drop},
		{"edge growth", with.Stays.EdgeAfter, with.Growth},
	} {
		if q.got != q.want {
			t.Errorf("%s %g, want %g", q.what, q.got, q.want)
		}
	}
	if got := call(t.Context(), coarse(t.TempDir(), "--before")...); got.code != console.ExitBadInput ||
		!strings.Contains(got.err, "no slash, pleat, stay, lowering") {
		t.Errorf("cowl drape --before = %d, %q, want it refused", got.code, got.err)
	}
}

// Lowering says what it does besides: by how much two drafts differ in cowl point,
// extension and drop.
func TestLoweringTold(t *testing.T) {
	plain, got := figuresOf(t, "--out", t.TempDir()), figuresOf(t, "--lower", "2cm", "--out", t.TempDir())
	for what, d := range map[string][2]float64{
		"cowl point": {got.Treatment.CowlPoint, got.CowlPoint - plain.CowlPoint},
		"extension":  {got.Treatment.Extension, plain.Extension - got.Extension},
		"drop":       {got.Treatment.Deeper, got.DropCurve - plain.DropCurve},
	} {
		if d[1] == 0 || d[0]-d[1] > 1e-6 || d[1]-d[0] > 1e-6 {
			t.Errorf("--lower 2cm tells %s %.3f mm, two drafts differ by %.3f mm", what, d[0], d[1])
		}
	}
}
