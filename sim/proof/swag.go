package proof

import (
	"context"
	"fmt"
	"strings"
	"sync"

	"cowl/materials"
	"cowl/sim"
	"cowl/sim/drape"
	"cowl/sim/fold"
	"cowl/sim/lab"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	onePleat = "common practice: window-swag workroom articles, each pleat makes one fold; size 40 × 18 in from the same"
	hemChain = "closed form: catenary; workrooms measure the lower edge of a swag with a hung weight chain (common " +
		"practice)"
)

// swag is a window swag of the default size that is hung once, however many
// checks read it.
type swag struct {
	pleats int

	once   sync.Once
	result lab.SwagResult
	folds  []fold.Fold
	err    error
}

// swags are laid with three, four and five pleats a side.
func swags() []Pending {
	var folds, edges []Pending
	for _, pleats := range []int{5, 4, 3} {
		s := &swag{pleats: pleats}
		folds, edges = append(folds, s.count()), append(edges, s.edge())
	}
	return append(folds, edges...)
}

// hang hangs the swag on the true bias and reads the folds on its middle line. One
// that has not settled, or passes through itself, has no figures.
func (s *swag) hang(ctx context.Context) error {
	s.once.Do(func() {
		var f materials.Fabric
		if f, s.err = materials.Find("polyester-twill"); s.err != nil {
			return
		}
		s.result, s.err = lab.Swag(ctx, drape.Stiffness(f), lab.SwagSetup{Pleats: s.pleats, Grain: rad(45), Gap: lab.Facets +
			f.Thickness})
		switch r := s.result; {
		case s.err != nil:
		case r.Status != sim.Settled || r.Pierced > 0:
			s.err = fmt.Errorf("%s after %d steps, cloth passes through cloth %d times", r.Status, r.Steps, r.Pierced)
		default:
			s.folds, s.err = SwagFolds(r)
		}
	})
	return s.err
}

// SwagFolds reads the folds on the middle line of a swag, before the upright plane
// of the board.
func SwagFolds(r lab.SwagResult) ([]fold.Fold, error) {
	cut, err := fold.Line(&r.Sheet, fold.Frame{
		HalfEdge: r.Upper, WaistY: -r.Flat, NeckL: r3.Vec{X: r.Upper}, NeckR: r3.Vec{X: -r.Upper}, BustY: -r.Flat,
	}, 0)
	return cut.Folds, err
}

// name says which swag it is.
func (s *swag) name() string {
	return fmt.Sprintf("swag of 102 × 46 cm, %d pleats a side: ", s.pleats)
}

// count compares the folds on the middle line with the pleats of a side.
func (s *swag) count() Pending {
	c := Check{Name: s.name() + "folds on the middle line", Want: float64(s.pleats), Tolerance: 0.5, Source: onePleat}
	return Pending{c, func(ctx context.Context) (float64, string, error) {
		if err := s.hang(ctx); err != nil {
			return 0, "", err
		}
		var deep []string
		for _, f := range s.folds {
			deep = append(deep, fmt.Sprintf("%.0f", f.Depth*1000))
		}
		return float64(len(s.folds)), strings.Join(deep, ", ") + " mm deep, laid by a hand that has let go", nil
	}}
}

// edge compares how deep the lower edge hangs with the chain of its length
// between its ends, within 3 %; a V of that length hangs an eighth deeper.
func (s *swag) edge() Pending {
	c := Check{Name: s.name() + "depth of the lower edge over that of a chain of its length", Want: 1, Tolerance: 0.03,
		Source: hemChain}
	return Pending{c, func(ctx context.Context) (float64, string, error) {
		if err := s.hang(ctx); err != nil {
			return 0, "", err
		}
		r := s.result
		return r.Sag / r.Curve, fmt.Sprintf("%.0f mm of %.0f mm, the edge %.0f mm long", r.Sag*1000, r.Curve*1000,
			r.Long*1000), nil
	}}
}
