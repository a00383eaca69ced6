package drawn

import (
	"context"
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"

	"cowl/cmd/cowl/internal/style"
	"cowl/mesh"
	"cowl/mesh/form"
	"cowl/sim/contact"
	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r3"
)

// Twenty quick drapes: five cloths by none to three folds, each with an
// extension (cm), a lattice (mm) and a grain (degrees) of its own.
var quickDrapes = []struct {
	fabric    string
	folds     int
	spacing   float64
	extension float64
	grain     float64
}{
	{"silk-satin-memory", 0, 16, 9, 45}, {"silk-satin-memory", 1, 18, 5, 45},
	{"silk-satin-memory", 2, 12, 10, 45}, {"silk-satin-memory", 3, 15, 6, 45},
	{"silk-chiffon-memory", 0, 18, 11, 0}, {"silk-chiffon-memory", 1, 14, 7, 45},
	{"silk-chiffon-memory", 2, 16, 12, 30}, {"silk-chiffon-memory", 3, 18, 8, 45},
	{"denim-memory", 0, 14, 4, 45}, {"denim-memory", 1, 16, 9, 0},
	{"denim-memory", 2, 18, 5, 45}, {"denim-memory", 3, 20, 10, 45},
	{"polyester-twill", 0, 16, 6, 45}, {"polyester-twill", 1, 18, 11, 30},
	{"polyester-twill", 2, 14, 7, 0}, {"polyester-twill", 3, 16, 12, 45},
	{"wool-winter-suiting-memory", 0, 18, 8, 45}, {"wool-winter-suiting-memory", 1, 12, 4, 45},
	{"wool-winter-suiting-memory", 2, 16, 7, 45}, {"wool-winter-suiting-memory", 3, 18, 5, 0},
}

var looked = flag.Int("drapes", 7, "drapes that TestDrawnLayersStayApart looks at, 20 at most")

// No layer of the cloth that is drawn passes through another, over drapes whose lattices
// do not. Twenty take minutes: a third of them, of each cloth one or two, and all at night.
func TestDrawnLayersStayApart(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs drapes")
	}
	n := 0
	for k := range *looked {
		q := quickDrapes[k*len(quickDrapes) / *looked]
		name := fmt.Sprintf("%s, %d folds, extension %g cm, %g mm, grain %g°", q.fabric, q.folds, q.extension, q.spacing,
			q.grain)
		h := hang(t, fmt.Sprintf("cut: {extension_cm: %g, grain_deg: %g}\nfabric: %s\nhang: {spacing_mm: %g, folds: %d}\n",
			q.extension, q.grain, q.fabric, q.spacing, q.folds))
		if k := h.Run.Drape.Pierced(); k != 0 {
			t.Errorf("%s: the lattice itself is pierced in %d places", name, k)
			continue
		}
		n++
		sheet := besidesDarts(h.Smooth().Sheet, h.Run.Drape.Job)
		if k := passing(&sheet); k != 0 {
			t.Errorf("%s: drawn layers pass through each other in %d places", name, k)
		}
	}
	if n != *looked {
		t.Errorf("looked at %d drapes, want %d", n, *looked)
	}
}

// besidesDarts is a sheet without what lies within a cell of the legs of an open dart,
// whose lips may slide over each other by a rim.
func besidesDarts(s mesh.Sheet, j drape.Job) mesh.Sheet {
	sewn := func(v int32) bool { return j.BesideDart(s.Flat[v], j.Spacing) }
	s.Tris = slices.DeleteFunc(slices.Clone(s.Tris), func(t [3]int32) bool { return slices.ContainsFunc(t[:], sewn) })
	return s
}

// hang hangs a style.
func hang(t testing.TB, yaml string) *Drape {
	t.Helper()
	s, err := style.Parse("quick.yaml", []byte(yaml))
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Cowl()
	if err != nil {
		t.Fatal(err)
	}
	b, err := s.Wearer()
	if err != nil {
		t.Fatal(err)
	}
	f, err := form.FromBody(b)
	if err != nil {
		t.Fatal(err)
	}
	run, err := drape.HangAll(context.Background(), s.Job(p, f), 1)
	if err != nil {
		t.Fatal(err)
	}
	return &Drape{Style: s, Cowl: run.Drape.Job.Cowl, Form: f, Run: run}
}

// passing counts the pairs of triangles of which one passes through the other.
// contact.Pierced finds them. It also finds parts of one flat facet, which meet
// in the last bit; so an edge must have both ends clear of the plane.
func passing(s *mesh.Sheet) (n int) {
	list := contact.PiercedTris(s)
	for _, k := range list {
		for _, m := range list {
			if k != m && clearly(s, s.Tris[k], s.Tris[m]) {
				n++
			}
		}
	}
	return n
}

// clearly reports whether an edge of t passes through u with more than 1 µm of
// it on either side.
func clearly(s *mesh.Sheet, t, u [3]int32) bool {
	a, b, c := s.Pos[u[0]], s.Pos[u[1]], s.Pos[u[2]]
	n := r3.Cross(r3.Sub(b, a), r3.Sub(c, a))
	if r3.Norm(n) == 0 {
		return false
	}
	n = r3.Unit(n)
	for k := range 3 {
		p, q := s.Pos[t[k]], s.Pos[t[(k+1)%3]]
		high, low := r3.Dot(n, r3.Sub(p, a)), r3.Dot(n, r3.Sub(q, a))
		if high*low >= 0 || math.Min(math.Abs(high), math.Abs(low)) < 1e-6 {
			continue
		}
		at := r3.Add(p, r3.Scale(high/(high-low), r3.Sub(q, p)))
		in := func(a, b r3.Vec) bool { return r3.Dot(n, r3.Cross(r3.Sub(b, a), r3.Sub(at, a))) > 0 }
		if in(a, b) && in(b, c) && in(c, a) {
			return true
		}
	}
	return false
}
