package lab

import (
	"context"
	"errors"
	"math"

	"cowl/mesh"
	"cowl/sim"
	"cowl/sim/contact"

	"gonum.org/v1/gonum/spatial/r3"
)

// SwagSetup is a swag: cloth tacked to a board by its upper edge, its sides laid
// in pleats along either end of the board, which stand forward. Zero values take
// the default; the size is a worked one of 40 × 18 in (workroom articles on window
// swags, read).
type SwagSetup struct {
	Width float64 // m, of the board, 0.2–2; 0 means 1.02
	Depth float64 // m, finished, in the middle, 0.2–0.7 of the width; 0 means 0.45 of the width
	// m of the board that the pleats of a side take, 0.05–0.3 of the width; 0 means 0.15 of the
	// width
	Stack   float64
	Flat    float64        // flat depth over the finished one, 1.2–3; 0 means 2
	Pleats  int            // a side, 1–8; 0 means 5
	Grain   float64        // rad, from the upright of the middle to the warp
	Spacing float64        // m; 0 means an eighth of the flat cloth of a pleat, 12 mm at most
	Gap     float64        // m, kept between layers of the cloth; 0 lets them pass
	Report  func(Progress) // called now and then, may be nil
}

// Facets is what layers of folded cloth want between them beside their thickness,
// m: room for the flat facets of the lattice, as in a cowl (see sim/drape).
const Facets = 2.25e-3

// SwagResult is what a swag shows at rest.
type SwagResult struct {
	Sheet   mesh.Sheet // X = 0 is the middle; the flat upper edge lies at Y = 0, the lower at −FlatDepth
	Pleats  int        // a side
	Upper   float64    // m, half of the upper edge in the flat
	Flat    float64    // m, depth of the flat piece
	Edge    []r3.Vec   // m, the lower edge in space from end to end
	Long    float64    // m, its length in space
	Sag     float64    // m, of its middle below the middle of the line between its ends
	Curve   float64    // m, of a hanging curve of that length through those ends
	Pierced int        // times that cloth passes through cloth
	Run
}

// Swag lays the folds of a swag by hand, one a pleat, lets go and brings it to
// rest. How many folds are left is read by the caller, off the sheet. It fails
// where the setup is out of range.
func Swag(ctx context.Context, s sim.Stiffness, w SwagSetup) (SwagResult, error) {
	w.defaults()
	var out SwagResult
	if err := w.check(); err != nil {
		return out, err
	}
	d := w.draft()
	h, err := w.setUp(s, d)
	if err != nil {
		return out, err
	}
	if h.place(ctx, &out.Run) {
		h.stage = "coming to rest"
		h.relax(ctx, &out.Run, sim.Settings{})
	}
	out.Pleats = w.Pleats
	d.read(h.bench, &out)
	return out, nil
}

func (w *SwagSetup) defaults() {
	if w.Width == 0 {
		w.Width = 1.02
	}
	if w.Depth == 0 {
		w.Depth = 0.45 * w.Width
	}
	if w.Stack == 0 {
		w.Stack = 0.15 * w.Width
	}
	if w.Flat == 0 {
		w.Flat = 2
	}
	if w.Pleats == 0 {
		w.Pleats = 5
	}
	if w.Spacing == 0 {
		w.Spacing = math.Min(0.012, w.Flat*w.Depth/float64(w.Pleats)/8)
	}
}

// check tells what is out of range.
func (w SwagSetup) check() error {
	for _, c := range []struct {
		name         string
		v, low, high float64
	}{
		{"width", w.Width, 0.2, 2}, {"depth", w.Depth, 0.2 * w.Width, 0.7 * w.Width},
		{"stack", w.Stack, 0.05 * w.Width, 0.3 * w.Width},
		{"spacing", w.Spacing, 0.002, w.Flat * w.Depth / float64(w.Pleats) / 6},
		{"gap", w.Gap, 0, 0.005},
	} {
		if err := within(c.name, c.v, c.low, c.high, 1000, "mm"); err != nil {
			return err
		}
	}
	return errors.Join(
		within("flat over finished depth", w.Flat, 1.2, 3, 1, ""),
		within("pleats", float64(w.Pleats), 1, 8, 1, "a side"))
}

// read reads the swag where the last walk left it.
func (d swagDraft) read(k *bench, out *SwagResult) {
	out.Sheet = k.lattice.Skin().Sheet(k.state.Pos, math.Inf(1))
	out.Upper, out.Flat = d.chain(0).half, d.flat
	out.Pierced = contact.Pierced(&out.Sheet)
	half := d.chain(d.flat).half
	n := int(math.Ceil(2 * half / (k.lattice.Spacing / 2)))
	for i := range n + 1 {
		out.Edge = append(out.Edge, k.at(d.at(d.flat, 2*float64(i)/float64(n)-1)))
	}
	out.Long = pathLength(out.Edge)
	a, b := out.Edge[0], out.Edge[n]
	out.Sag = (a.Y+b.Y)/2 - k.at(d.at(d.flat, 0)).Y
	out.Curve, _ = HangingDrop(out.Long, r3.Norm(r3.Sub(b, a)))
}

// pathLength returns the length of a polyline, m.
func pathLength(p []r3.Vec) float64 {
	sum := 0.0
	for i := 1; i < len(p); i++ {
		sum += r3.Norm(r3.Sub(p[i], p[i-1]))
	}
	return sum
}
