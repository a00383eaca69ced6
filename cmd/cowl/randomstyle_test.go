package main

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/materials"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
)

// choices are the words of the fields that are one of several.
var choices = map[string][]string{
	"how": {"pivot", "shift", "slash"}, "pleats-towards": {"neck", "armhole"}, "waist": {"side", "pinned", "free"},
}

// Numbers that no range of the style bounds, or that would take a night for one drape.
const (
	anySeed    = 1 << 20
	mostHands  = 2
	someShakes = 8 // one in so many is shaken
)

// randomStyle draws a style of which every number lies in its range; that they go
// together nobody has seen to. Of every field one in three is given, one of those in
// four at an end of its range.
func randomStyle(r *rand.Rand) (style.Style, error) {
	s, err := style.Parse("random", []byte(randomBody(r)))
	if err != nil {
		return s, err
	}
	s.Name = "Random"
	fabrics := materials.Library()
	if err := s.UseFabric(fabrics[r.IntN(len(fabrics))].Name); err != nil {
		return s, err
	}
	for _, section := range []string{"cut", "stand", "hang"} { // a range depends on what was drawn before
		fields := style.Flags(section)
		if section == "stand" {
			fields = append(fields, style.Flag("release-waist-at"), style.Flag("release-armhole-at"))
		}
		for _, f := range fields {
			if f.Name == "closure" || f.Name == "strap" || f.Name == "side" || r.IntN(3) > 0 {
				continue // an opening is closed when the cloth hangs, and a strap is not hung; the side is drawn last
			}
			v, ok := randomValue(r, f, s.Ranges())
			if !ok {
				continue // the front cannot be cut any more, so nobody knows
			}
			if err := s.Set(f.Name, v, "--"+f.Flag()); err != nil {
				return s, err
			}
		}
	}
	if err := s.Set("fine", 0, "--fine"); err != nil { // finer lattices take minutes
		return s, err
	}
	if r.IntN(4) == 0 {
		if err := s.Set("side", float64(draft.AtBack), "--side"); err != nil {
			return s, err
		}
	}
	return s, s.Set("spacing", 0.020, "--spacing")
}

// randomValue draws a value of f, SI; not ok: it has no range as the style stands.
func randomValue(r *rand.Rand, f style.Field, ranges []limit.Range) (v float64, ok bool) {
	switch words := choices[f.Flag()]; {
	case f.Name == "shake":
		return float64(r.IntN(someShakes) / (someShakes - 1)), true
	case f.Holder() == "":
		return float64(r.IntN(2)), true
	case isAuto(f) && r.IntN(4) == 0:
		return draft.Auto, true
	case words != nil:
		v, err := f.Parse(words[r.IntN(len(words))])
		return v, err == nil
	case f.Name == "seed":
		return float64(r.IntN(anySeed)), true
	case f.Name == "placings":
		return float64(1 + r.IntN(mostHands)), true
	}
	i := slices.IndexFunc(ranges, func(q limit.Range) bool {
		return q.Field == strings.ReplaceAll(f.Name, "_", " ") || q.Field == f.Flag()
	})
	if i < 0 {
		return 0, false
	}
	return randomIn(r, ranges[i]), true
}

// isAuto reports whether the draft may choose f.
func isAuto(f style.Field) bool {
	_, err := f.Parse("auto")
	return err == nil
}

// randomIn draws from a range, whole where it counts.
func randomIn(r *rand.Rand, q limit.Range) float64 {
	switch {
	case q.Unit == limit.Count:
		return q.Lo + float64(r.IntN(int(q.Hi-q.Lo)+1))
	case r.IntN(8) == 0:
		return q.Lo
	case r.IntN(8) == 0:
		return q.Hi
	}
	return q.Lo + r.Float64()*(q.Hi-q.Lo)
}

// randomBody is a size of the chart with some measurements up to a tenth off it.
func randomBody(r *rand.Rand) string {
	sizes := body.Sizes()
	size := sizes[r.IntN(len(sizes))]
	b, err := body.FromChart(size)
	if err != nil {
		panic(err) // the size is one of the chart
	}
	text := fmt.Sprintf("body:\n  size: %d\n", size)
	for _, m := range body.Measures() {
		if v := *m.In(&b); v > 0 && r.IntN(6) == 0 {
			unit := map[bool]string{true: "deg", false: "cm"}[m.Unit == limit.Angle]
			text += fmt.Sprintf("  %s_%s: %.1f\n", strings.ReplaceAll(m.Name, " ", "_"), unit,
				m.Unit.PerSI*v*(0.9+0.2*r.Float64()))
		}
	}
	return text
}

// Every field of the table is drawn by randomStyle, and with more than one value.
func TestRandomStyleFields(t *testing.T) {
	seen := map[string]map[string]bool{}
	for k := range 120 {
		s, err := randomStyle(rand.New(rand.NewPCG(17, uint64(k))))
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		for line := range strings.Lines(string(s.YAML())) {
			key, value, _ := strings.Cut(strings.TrimSpace(line), ":")
			if seen[key] == nil {
				seen[key] = map[string]bool{}
			}
			seen[key][value] = true
		}
	}
	for _, f := range style.Flags("size", "cut", "stand", "hang") {
		n := 0
		for key, values := range seen {
			if key == f.Name || strings.HasPrefix(key, f.Name+"_") && len(key) <= len(f.Name)+4 {
				n = max(n, len(values))
			}
		}
		// the front goes without saying
		if n < 2 && !slices.Contains([]string{"spacing", "fine", "closure", "strap"}, f.Name) &&
			!(f.Name == "side" && n == 1) {
			t.Errorf("randomStyle draws %d values of %s, want some", n, f.Name)
		}
	}
}
