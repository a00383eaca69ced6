//go:build unix

package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/cmd/cowl/internal/study"
	"cowl/materials/worked"
	"cowl/mesh/limit"
	"cowl/sim"
)

var (
	styles    = flag.Int("styles", 4, "random styles that TestRandomStyles hangs")
	fromStyle = flag.Int("from-style", 0, "first case that TestRandomStyles draws")
)

// mostPatience is how long the processor may be at one of them: unlike the time of the
// clock that does not depend on what else the machine does.
const mostPatience = 60 * time.Second

// Styles drawn at random, on 20 mm: each is refused by an error that names its field,
// or hangs within a minute of the processor; then every figure is finite and it has settled or says
// that it has not, or why it is not to be believed. -styles 200 is the whole of it.
func TestRandomStyles(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs some cowls")
	}
	dir := t.TempDir()
	said := map[string]int{}
	hangs, refused := 0, 0
	for k := *fromStyle; hangs < *styles; k++ {
		if k-*fromStyle > 100*(*styles) {
			t.Fatalf("%d of %d styles hang, want more", hangs, k)
		}
		s, err := randomStyle(rand.New(rand.NewPCG(17, uint64(k))))
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		path := filepath.Join(dir, "style.yaml")
		if err := os.WriteFile(path, s.YAML(), 0o600); err != nil {
			t.Fatal(err)
		}
		verdict, took, err := patiently(t, path)
		switch {
		case err == nil:
			hangs++
			said[verdict]++
			t.Logf("case %d: %s, %.0f s", k, verdict, took.Seconds())
		case named(err):
			refused++
			said["refused: "+fieldOf(err)]++
		default:
			hangs++
			kept := filepath.Join(os.TempDir(), fmt.Sprintf("cowl-random-%d.yaml", k))
			os.WriteFile(kept, s.YAML(), 0o600)
			t.Errorf("case %d: %v; the style is kept as %s", k, err, kept)
		}
	}
	for what, n := range said {
		t.Logf("%4d %s", n, what)
	}
	t.Logf("%d styles hung, %d refused by name", hangs, refused)
}

// patiently hangs the style of a file, for mostPatience of the processor at most, and
// tells how much of it that took.
func patiently(t *testing.T, path string) (verdict string, took time.Duration, err error) {
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	start := worked.Time(t)
	go func() {
		for ctx.Err() == nil && worked.Time(t) < start+mostPatience {
			time.Sleep(100 * time.Millisecond)
		}
		cancel()
	}()
	verdict, err = hangRandom(ctx, path)
	return verdict, worked.Time(t) - start, err
}

// named reports whether err is a refusal that names the field of the style and says
// what it may be or what to do.
func named(err error) bool { return fieldOf(err) != "" }

// fieldOf is the field that a refusal names; empty: none.
func fieldOf(err error) string {
	var e *limit.Error
	if !errors.As(err, &e) {
		return ""
	}
	return e.Field
}

// hangRandom hangs the style of a file as cowl drape does and returns what is said of
// it in a word. What is wrong with the drape itself is an error that names no field.
func hangRandom(ctx context.Context, path string) (verdict string, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("panic: %v", r)
		}
	}()
	var d drapeCmd
	flags.Make(&d, nil)
	d.Style, d.Quiet = path, true
	h, err := d.prepare()
	if err != nil {
		return "", err
	}
	if err := d.hang(ctx, console.Console{Out: io.Discard, Err: io.Discard}, h); ctx.Err() != nil {
		return "", fmt.Errorf("hangs for more than %v", mostPatience)
	} else if err != nil {
		return "", err
	}
	return h.kind(), errors.Join(h.finite(), h.untold())
}

// kind is how the drape ended, without figures.
func (h *hung) kind() string {
	words := strings.Fields(strings.Split(h.verdict(), ":")[0])
	if o := h.Run.Outcome; o.Status == sim.Settled && o.Warning != "" {
		words = append(words, strings.Fields(o.Warning)[:3]...)
	}
	return strings.Join(words, " ")
}

// finite checks that all figures, places and files are those of a drape.
func (h *hung) finite() error {
	for _, o := range append(h.Run.Each, h.Run.Outcome) {
		if err := (&study.Row{Outcome: o}).Check(); err != nil {
			return err
		}
	}
	for _, p := range h.Run.Drape.State.Pos {
		if !(math.Abs(p.X+p.Y+p.Z) <= 10) {
			return fmt.Errorf("a crossing lies at %v", p)
		}
	}
	_, solid := h.solid()
	_, flat := patternOf(h.Style, h.Cowl)
	_, result := console.JSON(h.result())
	var report strings.Builder
	h.report(&report)
	if text := report.String(); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
		return fmt.Errorf("reported:\n%s", text)
	}
	return errors.Join(solid, flat, result)
}

// untold checks what a drape that is simply called settled cannot have: the bounds are
// those of the help, and the edge hangs no deeper than in a V of its grown length.
func (h *hung) untold() error {
	o := h.Run.Outcome
	if h.verdict() != "settled" {
		if o.Warning == "" && h.restless() == 0 {
			return fmt.Errorf("%q says no reason", h.verdict())
		}
		return nil
	}
	half := h.Cowl.HalfEdge * (1 + o.EdgeGrowth)
	cowl := h.Cowl.Block.CowlPoint(h.Cowl.CowlPoint)
	v := math.Sqrt(math.Max(0, half*half-cowl.X*cowl.X)) + h.Cowl.Block.Neck.Y - cowl.Y
	for _, q := range []struct {
		what      string
		got, most float64
	}{
		{"residual", o.Residual, 1e-3}, {"strain of a yarn", o.MaxStrain, 0.10}, {"pierced", float64(o.Pierced), 0},
		{"m inside the form", o.Inside, 0.001 + o.Spacing*o.Spacing/(8*0.06)}, {"m of drop", o.EdgeDrop, v + 0.010},
		{"growth of the edge", o.EdgeGrowth, 0.05}, {"growth of the shoulder", o.ShoulderGrow, 0.05},
	} {
		if q.got > q.most {
			return fmt.Errorf("settled, with %g %s, want at most %g", q.got, q.what, q.most)
		}
	}
	return nil
}
