package read

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"cowl/mesh/draft"
	"cowl/mesh/paper"
	"cowl/mesh/polyline"
	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// uprightFront is a whole front laid with CF at X = 0 and its lower end at Y = 0.
type uprightFront struct {
	outline []r2.Vec // closed, counter-clockwise
	lines   [][]r2.Vec
	holes   []r2.Vec
	grain   float64
}

// newUpright lays a piece so that CF runs up from cf[0] to cf[1].
func newUpright(p paper.Piece, cf [2]r2.Vec) uprightFront {
	up := r2.Unit(r2.Sub(cf[1], cf[0]))
	place := func(points []r2.Vec) []r2.Vec {
		out := make([]r2.Vec, len(points))
		for i, v := range points {
			d := r2.Sub(v, cf[0])
			out[i] = r2.Vec{X: r2.Cross(d, up), Y: r2.Dot(d, up)}
			if math.Abs(out[i].X) < onCF {
				out[i].X = 0
			}
		}
		return out
	}
	l := uprightFront{outline: place(p.Outline)}
	for _, in := range p.Lines {
		l.lines = append(l.lines, place(in.Points))
	}
	for _, h := range p.Holes {
		l.holes = append(l.holes, place([]r2.Vec{h.At})...)
	}
	g := r2.Sub(p.GrainLine[1], p.GrainLine[0])
	l.grain = math.Remainder(math.Atan2(r2.Cross(g, up), r2.Dot(g, up)), math.Pi)
	return l
}

const (
	onCF      = 5e-5 // m, nearer to CF a point lies on it
	samePlace = 1e-4 // m, nearer to a point of a line a mark lies on it
	mostFolds = 8
	level     = 0.02 // a fold line rises by no more of its length
)

// folds lists the lines that may be the fold: straight, square to CF, from edge
// to edge.
func (l uprightFront) folds() [][]r2.Vec {
	var out [][]r2.Vec
	for _, line := range l.lines {
		a, b := line[0], line[len(line)-1]
		if a.X > b.X {
			a, b = b, a
		}
		if a.X < 0 && b.X > 0 && math.Abs(b.Y-a.Y) < level*(b.X-a.X) && straight(line) && touches(l.outline, a) &&
			touches(l.outline, b) && len(out) < mostFolds {
			out = append(out, []r2.Vec{a, b})
		}
	}
	return out
}

// half returns the outline of the wearer's left half, from the lower end of CF
// to the upper.
func (l uprightFront) half() ([]r2.Vec, error) {
	p, n := l.outline, len(l.outline)
	start, runs := 0, 0
	for i := range p {
		if p[i].X <= 0 && p[(i+1)%n].X > 0 {
			start, runs = i, runs+1
		}
	}
	if runs != 1 {
		return nil, fmt.Errorf("the outline meets the centre front %d times, want twice: at the waist and at the top", 2*runs)
	}
	half := []r2.Vec{meetCF(p[start], p[(start+1)%n])}
	for i := (start + 1) % n; ; i = (i + 1) % n {
		if p[i].X <= 0 {
			return append(half, meetCF(p[i], p[(i+n-1)%n])), nil
		}
		half = append(half, p[i])
	}
}

// meetCF returns where the side from a, at or beyond CF, to b meets CF.
func meetCF(a, b r2.Vec) r2.Vec {
	t := a.X / (a.X - b.X)
	return r2.Vec{Y: a.Y + t*(b.Y-a.Y)}
}

// front reads the front with the given fold line, nil for none, and how far it
// lies from the outline.
func (l uprightFront) front(fold []r2.Vec) (Finished, float64, error) {
	half, err := l.half()
	if err != nil {
		return Finished{}, 0, err
	}
	top, low := half[len(half)-1], half[0].Y
	c := Finished{Grain: l.grain}
	at := 0 // of the cowl point
	if fold != nil {
		half, at = pointOn(half, fold[1])
		c.Facing = top.Y - half[at].Y
	} else {
		at = lastBend(half)
	}
	if c.Lines, err = seams(half[:at+1]); err != nil {
		return Finished{}, 0, err
	}
	if c.Facing < 0 || fold == nil && math.Abs(top.Y-half[at].Y) > onSeam || !outwards(c.Lines.Shoulder) {
		return Finished{}, 0, errors.New("no fold line: draw the cowl edge across the piece, square to the centre front, " +
			"on layer 8 (DXF), with an id (SVG) or as line inside (CSV); without a facing the top edge is square to the " +
			"centre " +
			"front")
	}
	l.dart(&c.Lines)
	c.Lines.Apex = l.apex(c.Lines)
	drawn, err := draft.Cowl{Facing: c.Facing}.Redrawn(c.Lines)
	if err != nil {
		return Finished{}, 0, err
	}
	off := max(offOutline(drawn.Outline, l.outline, math.Inf(1)), offOutline(l.outline, drawn.Outline, math.Inf(1)))
	c.Lines = moved(c.Lines, r2.Vec{Y: -low})
	return c, off, nil
}

// seams parts the line from the waist on CF to the cowl point. The armhole is
// the stretch between two corners that bows most; before it lie side seam and
// waist, after it the shoulder.
func seams(line []r2.Vec) (draft.Lines, error) {
	at := []int{0}
	for i := 1; i < len(line)-1; i++ {
		if outline.Bends(line[i-1], line[i], line[i+1]) {
			at = append(at, i)
		}
	}
	at = append(at, len(line)-1)
	most, k := 0.0, 0
	for i := 1; i < len(at); i++ {
		if b := bow(line[at[i-1] : at[i]+1]); b > most {
			most, k = b, i
		}
	}
	if most < leastScoop || k < 3 || k > len(at)-2 {
		return draft.Lines{}, fmt.Errorf("%d corners between the waist on the centre front and the cowl point, want 3, "+
			"with a hollow armhole between the second and the third: side waist, underarm, shoulder tip", len(at)-2)
	}
	part := func(from, to int) []r2.Vec { return polyline.Reversed(line[from : to+1]) }
	l := draft.Lines{Waist: part(0, at[k-2]), Side: part(at[k-2], at[k-1]), Armhole: part(at[k-1], at[k]),
		Shoulder: part(at[k], len(line)-1)}
	if n := len(l.Armhole); n > mostPoints {
		l.Armhole = slices.Concat(l.Armhole[:1], thin(l.Armhole), l.Armhole[n-1:])
	}
	return l, nil
}

// outwards reports whether a line runs from CF to the side all the way: a
// shoulder seam does, and one with the end of a facing before it does not.
func outwards(line []r2.Vec) bool {
	return slices.IsSortedFunc(line, func(a, b r2.Vec) int { return cmp.Compare(a.X, b.X) })
}

const leastScoop = 0.01 // m, an armhole bows by more

// lastBend returns the index of the last corner of a line.
func lastBend(line []r2.Vec) int {
	for i := len(line) - 2; i > 0; i-- {
		if outline.Bends(line[i-1], line[i], line[i+1]) {
			return i
		}
	}
	return 0
}

// pointOn returns a line with a point nearest to v, put in if there is none,
// and its index.
func pointOn(line []r2.Vec, v r2.Vec) ([]r2.Vec, int) {
	least, at := math.Inf(1), 0
	for i := 1; i < len(line); i++ {
		if d := polyline.Off(v, line[i-1], line[i]); d < least {
			least, at = d, i
		}
	}
	for i := at - 1; i <= at; i++ {
		if r2.Norm(r2.Sub(line[i], v)) < samePlace {
			return line, i
		}
	}
	a, d := line[at-1], r2.Sub(line[at], line[at-1])
	t := min(max(r2.Dot(r2.Sub(v, a), d)/r2.Norm2(d), 0), 1)
	return slices.Insert(slices.Clone(line), at, r2.Add(a, r2.Scale(t, d))), at
}

// dart puts an open dart of the left half into the lines.
func (l uprightFront) dart(to *draft.Lines) {
	inner, outer, ok := dartLegs(l.lines, to.Waist)
	if !ok {
		return
	}
	var i, k int
	to.Waist, i = pointOn(to.Waist, outer[0])
	to.Waist, k = pointOn(to.Waist, inner[0])
	to.Dart = []r2.Vec{to.Waist[i], outer[1], to.Waist[k]}
}

// apex returns the bust point: a hole on the left half, or else the point of
// the dart; zero if there is neither.
func (l uprightFront) apex(lines draft.Lines) r2.Vec {
	for _, h := range l.holes {
		if h.X > 0 {
			return h
		}
	}
	if lines.Dart != nil {
		return lines.Dart[1]
	}
	return r2.Vec{}
}

// moved returns lines moved by d; an Apex that is not marked stays so.
func moved(l draft.Lines, d r2.Vec) draft.Lines {
	for _, line := range []*[]r2.Vec{&l.Shoulder, &l.Armhole, &l.Side, &l.Waist, &l.Dart} {
		*line = slices.Clone(*line)
		for i := range *line {
			(*line)[i] = r2.Add((*line)[i], d)
		}
	}
	if l.Apex != (r2.Vec{}) {
		l.Apex = r2.Add(l.Apex, d)
	}
	return l
}
