package fold

import (
	"math"

	"cowl/mesh"
)

// acrossStep is the distance between the lines on which a fold is followed.
const acrossStep = 5e-3 // m, flat

// steepest is the steepest rise of a crest, down the cloth over across it, that
// is followed. Folds of a cowl rise towards the shoulders; one that rises more
// is cut so much along its length that a section shows no depth of it.
const steepest = 2

// Reach is how far a fold runs across the cloth from CF, m flat.
type Reach struct {
	Left  float64 `json:"left_m"` // to the wearer's left
	Right float64 `json:"right_m"`
}

// Width returns the width of the fold, m flat.
func (r Reach) Width() float64 { return r.Left + r.Right }

// Across returns how far each of the folds that Read found on CF can be
// followed to either side, from upright line to upright line, until its
// prominence falls under MinDepth; len = len(folds). Between two lines the
// place is interpolated. From one line to the next a crest may rise by 2 in 1,
// and wander by a lattice spacing besides: on crumpled cloth the crest of a
// broad roll is not known better. All folds are followed together, in order,
// so that one which ends is not taken for its neighbour; one that is not found
// again, or comes to the rim of the sheet or the cowl point, ends on the last
// line that showed it. It costs some seven times a Read. Errors are those of
// Read.
func Across(s *mesh.Sheet, f Frame, folds []Fold) ([]Reach, error) {
	if err := check(s, f); err != nil {
		return nil, err
	}
	c := comb{sheet: s, frame: f, lattice: spacing(s)}
	out := make([]Reach, len(folds))
	left, err := c.reach(1, folds)
	if err != nil {
		return nil, err
	}
	right, err := c.reach(-1, folds)
	if err != nil {
		return nil, err
	}
	for i := range out {
		out[i] = Reach{left[i], right[i]}
	}
	return out, nil
}

// comb is a sheet to be read on many upright lines side by side.
type comb struct {
	sheet   *mesh.Sheet
	frame   Frame
	lattice float64 // m
}

// trail is a fold followed across so far.
type trail struct {
	at    float64 // m, down the last line
	depth float64 // m, prominence there
	reach float64 // m from CF
	ended bool
}

// reach follows the folds to one side, 1 for the left, and returns how far
// each runs, m.
func (c comb) reach(side float64, folds []Fold) ([]float64, error) {
	trails := make([]trail, len(folds))
	for i, fd := range folds {
		trails[i] = trail{at: fd.CF, depth: fd.Depth}
	}
	cols := c.columns(side)
	for k, tris := range cols {
		x := float64(k+1) * acrossStep
		tr, err := traceOf(c.sheet, tris, upright, side*x, c.frame.FoldY)
		if err != nil || tr.clamp(c.frame.FoldY)-max(c.frame.WaistY, tr.first()) < 2*step {
			break // past the rim of the sheet
		}
		p, err := profileOf(c.sheet, tr, c.frame, line{side * x, c.lattice})
		if err != nil {
			return nil, err
		}
		if !c.follow(trails, p.summits(), x) {
			break
		}
	}
	out := make([]float64, len(folds))
	for i, t := range trails {
		out[i] = t.reach
	}
	return out, nil
}

// columns lists the triangles that meet each line to one side of CF, up to the
// end of the edge.
func (c comb) columns(side float64) [][][3]int32 {
	cols := make([][][3]int32, int(c.frame.HalfEdge/acrossStep+same))
	for _, t := range c.sheet.Tris {
		p, q, r := side*c.sheet.Flat[t[0]].X, side*c.sheet.Flat[t[1]].X, side*c.sheet.Flat[t[2]].X
		first := int(math.Ceil((min(p, q, r)-same)/acrossStep)) - 1
		last := int(math.Floor((max(p, q, r)+same)/acrossStep)) - 1
		for k := max(first, 0); k <= min(last, len(cols)-1); k++ {
			cols[k] = append(cols[k], t)
		}
	}
	return cols
}

// follow leads the trails on to the summits of the line at x from CF, and
// reports whether any goes on.
func (c comb) follow(trails []trail, summits []summit, x float64) bool {
	var from []float64
	var on []*trail
	for i := range trails {
		if t := &trails[i]; !t.ended {
			from, on = append(from, t.at), append(on, t)
		}
	}
	to := make([]float64, len(summits))
	for i, top := range summits {
		to[i] = top.S
	}
	going := false
	for i, j := range match(from, to, steepest*acrossStep+c.lattice) {
		if j < 0 {
			on[i].ended = true
			continue
		}
		on[i].lead(summits[j], x)
		going = going || !on[i].ended
	}
	return going
}

// lead takes the trail on to c on the line at x from CF, or ends it where the
// prominence passes MinDepth on the way there.
func (t *trail) lead(c summit, x float64) {
	t.ended = c.prominence < MinDepth
	t.reach = x
	if t.ended {
		t.reach -= acrossStep * (MinDepth - c.prominence) / (t.depth - c.prominence)
	}
	t.at, t.depth = c.S, c.prominence
}
