package toile

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/style"
	"cowl/cmd/cowl/internal/toile/fit"
	"cowl/materials"
	"cowl/sim/drape"
)

// rulerError is the standard deviation of one reading, m: a tape on a stand beside soft cloth.
const rulerError = 0.005

// lattice is what the lattice errs by on 12 mm, m, by the kind of figure, taken as one
// standard deviation and as growing with the spacing: what figures of the library's cloths
// moved by from 12 to 8 and from 8 to 4 or 6 mm (sim/drape/README.md, README.md; drops by
// 0 to 10 and by 11 mm, first folds by 7 and 2 mm, their places by 4, reach by 7).
var lattice = [kinds]float64{Drop: 0.020, Depth: 0.007, Place: 0.006, Reach: 0.007}

const latticeAt = 0.012 // m

// group is the toiles of one cut and one number of laid and measured folds.
type group struct {
	style  style.Style // with the fabric as it is known
	toiles []Toile
}

// fitting is what a fit found, with all that it was found from.
type fitting struct {
	fabric  materials.Fabric
	looked  []sought
	groups  []group
	toiles  int
	spacing float64 // m
	result  fit.Result
}

// Fit says within which intervals bending, shear and friction of bending of a fabric agree
// with its toiles, hung on a spacing (m), and writes the fabric to out where that is named.
func Fit(ctx context.Context, o Options, c console.Console, fabric string, spacing float64, out string) error {
	b, err := o.book()
	if err != nil {
		return err
	}
	f := fitting{spacing: spacing}
	if err := f.gather(b, fabric); err != nil {
		return err
	}
	if !(spacing >= drape.Finest && spacing <= drape.Coarsest) {
		return fmt.Errorf("--spacing: spacing %.1f mm, want %.0f–%.0f mm: 12 mm is usual for a fit", spacing*1000,
			drape.Finest*1000, drape.Coarsest*1000)
	}
	if out != "" {
		if err := console.Writable(filepath.Dir(out)); err != nil {
			return err
		}
	}
	if err := f.run(ctx, o, c, b); err != nil {
		return err
	}
	written, err := f.write(out)
	if err != nil {
		return err
	}
	return f.tell(o, c, out, written)
}

// gather takes the toiles of a fabric, by their cuts. The cloth is that of the last one.
func (f *fitting) gather(b Book, fabric string) error {
	var names []string
	at := map[string]int{}
	for _, t := range slices.Backward(b.Toiles) {
		if !slices.Contains(names, t.Fabric) {
			names = append(names, t.Fabric)
		}
		if t.Fabric != fabric {
			continue
		}
		s, err := b.styleOf(t)
		if err != nil {
			return err
		}
		if f.toiles++; f.toiles == 1 {
			f.fabric = s.Fabric
		}
		s.Name, s.Fabric, s.Hang.Spacing, s.Hang.Placings = "", f.fabric, f.spacing, drawnHands
		key := fmt.Sprint(len(t.Folds), " ", string(s.YAML()))
		if _, ok := at[key]; !ok {
			at[key] = len(f.groups)
			f.groups = append(f.groups, group{style: s})
		}
		g := &f.groups[at[key]]
		g.toiles = append(g.toiles, t)
	}
	if f.toiles == 0 {
		return fmt.Errorf("--fabric: %s has no toile of %.80q, want one of %s", b.Path, fabric, strings.Join(names, ", "))
	}
	if f.looked = soughtOf(f.fabric); f.looked == nil {
		return fmt.Errorf("--fabric: all that is looked for of %s is known exactly, there is nothing to fit", fabric)
	}
	return nil
}

// run hangs every cut in every drawn cloth and fits.
func (f *fitting) run(ctx context.Context, o Options, c console.Console, b Book) error {
	cloths, times, err := drawCloths(f.fabric, f.looked)
	if err != nil {
		return err
	}
	var list []study.Hanging
	for i, g := range f.groups {
		for k, cloth := range cloths {
			s := g.style
			s.Fabric = cloth
			list = append(list, study.Hanging{Name: fmt.Sprintf("cut %d, cloth %d", i+1, k+1), Style: s, Steady: true})
		}
	}
	hung, err := o.hangAll(ctx, c, b, list)
	if err != nil {
		return err
	}
	e := fit.Experiment{Cloths: times}
	for _, s := range f.looked {
		e.Properties = append(e.Properties, s.Property)
	}
	for i, g := range f.groups {
		e.Figures = append(e.Figures, g.figures(i, hung[i*drawnCloths:(i+1)*drawnCloths], f.spacing)...)
	}
	if len(e.Figures) == 0 {
		return fmt.Errorf("the toiles of %s have no length to fit, want drop, fold or reach: a number of kept folds "+
			"alone tells no stiffness", f.fabric.Name)
	}
	f.result, err = fit.Fit(e)
	return err
}

// figures are those that were measured on the toiles of a group, in mm, with what the
// drawn cloths make of them.
func (g group) figures(number int, hung []study.Hung, spacing float64) []fit.Figure {
	var out []fit.Figure
	for _, f := range figures() {
		if f.kind == Kept {
			continue
		}
		one := fit.Figure{Name: g.name(f, number), Style: number, Kind: int(f.kind),
			Ruler: 1000 * rulerError, Lattice: 1000 * lattice[f.kind] * spacing / latticeAt}
		for _, t := range g.toiles {
			if v := f.of(t.Reading); !math.IsNaN(v) {
				one.Measured, one.Toiles = one.Measured+1000*v, one.Toiles+1
			}
		}
		if one.Toiles == 0 {
			continue
		}
		one.Measured /= float64(one.Toiles)
		for _, h := range hung {
			one.Drawn = append(one.Drawn, g.drawn(f, h))
		}
		out = append(out, one)
	}
	return out
}

// drawn is a figure of a drawn cloth, mm, a value a hand.
func (g group) drawn(f figure, h study.Hung) []float64 {
	out := make([]float64, len(h.Each))
	for k, o := range h.Each {
		out[k] = math.NaN()
		if o != nil {
			r := readingOf(o)
			r.Folds = alongside(g.toiles[0].Folds, r.Folds)
			out[k] = 1000 * f.of(r)
		}
	}
	return out
}

// name is that of a figure with its cut.
func (g group) name(f figure, number int) string {
	return fmt.Sprintf("%s of cut %d", strings.ToLower(f.name()), number+1)
}

// write writes the fabric where that is asked for and the toiles told anything of it.
func (f *fitting) write(out string) (bool, error) {
	if out == "" || !f.tells() {
		return false, nil
	}
	g, err := fitted(f.fabric, f.looked, f.result, say.Several(f.toiles, "toile"))
	if err != nil {
		return false, err
	}
	return true, console.Save(filepath.Dir(out), []console.File{{Name: filepath.Base(out), Data: g.YAML()}})
}

// tells reports whether the toiles agree with any cloth and tell a property of it.
func (f *fitting) tells() bool {
	return f.result.Agrees() && slices.ContainsFunc(f.result.Intervals, func(in fit.Interval) bool { return in.Tells })
}
