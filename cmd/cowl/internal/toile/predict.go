package toile

import (
	"context"
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/study"
	"cowl/cmd/cowl/internal/style"
	"cowl/sim/drape"
	"cowl/sim/fold"
)

// Options say what book it is about, how its drapes are computed and what is told.
type Options struct {
	Book        string // path
	Jobs        int    // drapes at a time
	Retry       bool   // hang again what failed
	Stage       drawn.Stager
	JSON, Quiet bool

	hang func(context.Context, []study.Hanging) ([]study.Hung, error) // for tests; nil: study.Hang
}

// hangAll hangs what the folder of the book does not hold yet.
func (o Options) hangAll(ctx context.Context, c console.Console, b Book, list []study.Hanging) ([]study.Hung, error) {
	if o.hang != nil {
		return o.hang(ctx, list)
	}
	return study.Hang(ctx, study.Options{Dir: b.beside(), Jobs: o.Jobs, Retry: o.Retry, Stage: o.Stage, JSON: o.JSON,
		Quiet: o.Quiet}, c, list)
}

// styleOf reads the style of a toile as it is hung for it: by as many folds as the hand
// of the toile laid.
func (b Book) styleOf(t Toile) (style.Style, error) {
	s, err := style.FromFile(b.file(t.Style))
	if err != nil {
		return s, fmt.Errorf("toile %s: %w", t.Key, err)
	}
	if s.Fabric.Name != t.Fabric {
		return s, fmt.Errorf("toile %s: fabric %s in the book and %s in its style %s, want one of both", t.Key, t.Fabric,
			s.Fabric.Name, t.Style)
	}
	if !math.IsNaN(t.Laid) {
		s.Hang.Folds = int(t.Laid)
	}
	s.OnLook()
	return s, nil
}

// hanging is a toile as it is predicted.
func (b Book) hanging(t Toile, placings int) (study.Hanging, error) {
	s, err := b.styleOf(t)
	s.Hang.Placings = placings
	return study.Hanging{Name: "toile " + t.Key, Style: s, Drawn: true}, err
}

// readingOf is what a prediction says in the place of a ruler. A drop that was set is no
// prediction, and a free hang has no form that the front could reach ahead of.
func readingOf(o *drape.Outcome) Reading {
	r := Reading{Drop: o.EdgeDrop, Reach: o.Forward, Laid: float64(o.Laid), Kept: float64(o.Kept)}
	if o.SetEdge {
		r.Drop = math.NaN()
	}
	if o.Free {
		r.Reach = math.NaN()
	}
	for _, f := range o.Folds {
		if f.Kept || f.Zone == fold.AboveBust {
			r.Folds = append(r.Folds, Fold{f.Depth, f.CF})
		}
	}
	return r
}

// alongside returns the folds of a prediction that are those of a toile, one a fold of
// the toile: in their order, so that as many as can be are matched and their places are
// nearest; without places the first ones. One that is not there has no figures.
func alongside(toile, predicted []Fold) []Fold {
	if !placed(toile) {
		predicted = predicted[:min(len(toile), len(predicted))]
	}
	out := make([]Fold, len(toile))
	for i := range out {
		out[i] = Fold{math.NaN(), math.NaN()}
	}
	for i, j := range nearest(toile, predicted) {
		if j >= 0 {
			out[i] = predicted[j]
		}
	}
	return out
}

// placed reports whether all folds have their places.
func placed(folds []Fold) bool {
	for _, f := range folds {
		if math.IsNaN(f.At) {
			return false
		}
	}
	return true
}

// nearest matches the folds a with b in their order: for each of a the number of its
// fold in b, or −1.
func nearest(a, b []Fold) []int {
	type best struct {
		count int
		far   float64
		match []int
	}
	better := func(x, y best) best {
		if y.count > x.count || y.count == x.count && y.far < x.far {
			return y
		}
		return x
	}
	table := make([]best, len(b)+1) // of the folds of a so far with the first j of b
	for _, f := range a {
		next := make([]best, len(b)+1)
		next[0] = best{0, 0, append(append([]int{}, table[0].match...), -1)}
		for j := range b {
			skip := best{table[j+1].count, table[j+1].far, append(append([]int{}, table[j+1].match...), -1)}
			d := math.Abs(f.At - b[j].At)
			if math.IsNaN(d) {
				d = 0
			}
			take := best{table[j].count + 1, table[j].far + d, append(append([]int{}, table[j].match...), j)}
			next[j+1] = better(better(take, skip), next[j])
		}
		table = next
	}
	return table[len(b)].match
}
