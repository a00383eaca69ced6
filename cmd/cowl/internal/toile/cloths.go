package toile

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/toile/fit"
	"cowl/materials"
)

// sought is a property that a fit looks for.
type sought struct {
	fit.Property
	fields []materials.Field // that it sets
	base   []float64         // what the fields are at 1, SI
	why    string            // where the known range is from
}

// soughtOf lists what is looked for of a cloth: bending, warp and weft together, shear,
// and the friction of bending. A cloth without a loop is tried from none to the usual one.
// What is known exactly is left out.
func soughtOf(f materials.Fabric) []sought {
	warp, weft := study.KnownOf(f, materials.BendWarp), study.KnownOf(f, materials.BendWeft)
	bend := warp
	bend.Least, bend.Most = math.Max(warp.Least, weft.Least), math.Min(warp.Most, weft.Most)
	out := []sought{
		soughtBy("bending, warp and weft together", bend, f, materials.BendWarp, materials.BendWeft),
		soughtBy(materials.Shear.String(), study.KnownOf(f, materials.Shear), f, materials.Shear),
	}
	if f.BendFriction > 0 {
		out = append(out, soughtBy(materials.BendFriction.String(), study.KnownOf(f, materials.BendFriction), f,
			materials.BendFriction))
	} else {
		usual := materials.LoopOverBend / 2 * (f.BendWarp + f.BendWeft) / 2
		out = append(out, sought{
			Property: fit.Property{Name: materials.BendFriction.String(), Least: 0, Most: 1, Linear: true},
			fields:   []materials.Field{materials.BendFriction}, base: []float64{usual},
			why: "none was measured: none to the usual loop of suitings",
		})
	}
	var open []sought
	for _, s := range out {
		if s.Most-s.Least > 1e-6 {
			open = append(open, s)
		}
	}
	return open
}

func soughtBy(name string, k study.Known, f materials.Fabric, fields ...materials.Field) sought {
	s := sought{Property: fit.Property{Name: name, Least: k.Least, Most: k.Most, Bell: k.Bell}, fields: fields, why: k.Why}
	for _, q := range fields {
		s.base = append(s.base, q.Value(f))
	}
	return s
}

// span writes two multiples of a property with the unit of its first field.
func (s sought) span(low, high float64) string {
	f := materials.Fabric{}
	text := func(times float64) string {
		*s.fields[0].In(&f) = times * s.base[0]
		return fmt.Sprintf("%.3g", s.fields[0].InUnits(f))
	}
	return strings.TrimSpace(text(low) + " to " + text(high) + " " + s.fields[0].Unit())
}

// set brings a property of f to a multiple. Bending on the bias that is by rule follows.
func (s sought) set(f *materials.Fabric, times float64, e materials.Evidence) {
	for i, q := range s.fields {
		*q.In(f) = times * s.base[i]
		f.Basis[q], f.Range[q], f.Spread[q] = e, materials.Interval{}, 0
	}
	if s.fields[0] == materials.BendWarp && f.Basis[materials.BendBias].Kind == materials.Assumed {
		f.BendBias = materials.PeirceBias(f.BendWarp, f.BendWeft)
		f.Range[materials.BendBias], f.Spread[materials.BendBias] = materials.Interval{}, 0
	}
	f.Drape = nil // it was of another cloth
}

// How many cloths are drawn, and how many hands place each.
const (
	drawnCloths = 12
	drawnHands  = 2
)

// drawCloths draws cloths within what is known of f: what is looked for spread evenly
// over its range, a cloth in every twelfth of it, all other properties as sure draws them.
func drawCloths(f materials.Fabric, looked []sought) (cloths []materials.Fabric, times [][]float64, err error) {
	r := rand.New(rand.NewPCG(1, 0x746f696c65)) // fixed, so that a cloth is hung once
	var without []materials.Field
	turn := make([][]int, len(looked))
	for i, s := range looked {
		without, turn[i] = append(without, s.fields...), r.Perm(drawnCloths)
	}
	if f.Basis[materials.BendBias].Kind == materials.Assumed {
		without = append(without, materials.BendBias)
	}
	for k := range drawnCloths {
		one := make([]float64, len(looked))
		for i, s := range looked {
			one[i] = s.Least + (s.Most-s.Least)*(float64(turn[i][k])+r.Float64())/drawnCloths
		}
		g, err := drawOne(f, looked, one, without, r)
		if err != nil {
			return nil, nil, err
		}
		cloths, times = append(cloths, g), append(times, one)
	}
	return cloths, times, nil
}

// drawOne makes the cloth of these multiples, which must be one that can be.
func drawOne(f materials.Fabric, looked []sought, times []float64, without []materials.Field,
	r *rand.Rand) (materials.Fabric, error) {
	var err error
	for range 100 {
		g := study.Draw(f, r, without...)
		for i, s := range looked {
			s.set(&g, times[i], materials.Evidence{Kind: materials.Assumed, How: "drawn by cowl toile fit"})
		}
		var read materials.Fabric
		if read, err = materials.Parse(g.Name, g.YAML()); err == nil { // as the style file is read again
			return read, nil
		}
	}
	return f, fmt.Errorf("fabric %s: no cloth within what is known of it can be: %w", f.Name, err)
}

// fitted is the cloth with what the toiles told of it, as a fabric of its own.
func fitted(f materials.Fabric, looked []sought, r fit.Result, toiles string) (materials.Fabric, error) {
	var told []string
	for i, in := range r.Intervals {
		if !in.Tells {
			continue
		}
		s := looked[i]
		before := fmt.Sprintf("%.3g to %.3g times its value", in.Least, in.Most)
		if s.Linear {
			before = "none to the usual loop"
		}
		how := fmt.Sprintf("fitted to %s: middle of what cowl toile fit finds likely, the range is its 90 %% interval; "+
			"known before within %s", toiles, before)
		s.set(&f, in.Middle, materials.Evidence{Kind: materials.Derived, How: how})
		for k, q := range s.fields {
			f.Range[q] = materials.Interval{Low: in.Low * s.base[k], High: in.High * s.base[k]}
		}
		told = append(told, in.Name)
	}
	f.Name = strings.TrimSuffix(f.Name, "-fitted") + "-fitted"
	f.Title += ", fitted to " + toiles
	f.Note = strings.TrimSpace(f.Note + " Fitted to " + toiles + ": " + strings.Join(told, ", ") +
		". The values make cowl's drapes agree with these toiles; they are no test of the cloth.")
	return materials.Parse(f.Name, f.YAML())
}
