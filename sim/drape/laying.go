package drape

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Auto lets HangAll try how many folds the cloth keeps.
const Auto = -1

// MostFolds is as many folds as a hand is asked to lay.
const MostFolds = 6

// valleyAhead is how far before the bridged front a hand presses edge and valleys,
// m: a finger (no source gives a figure).
const valleyAhead = 0.010

// laying is where a hand lays folds: in the flat down the centre front, and in
// space. Every line from the centre front to the shoulder hangs in a curve of its own
// length, so the laid cloth is not stretched; what the centre front is longer than
// these curves fall goes forward, to a crest, and back to the next valley.
type laying struct {
	job           Job
	hand          hand
	crest, valley []float64 // m down the flat centre front from the edge, one a fold
	seam          []float64 // m down the folded shoulder seam, where the line of each crest ends
	ahead         []float64 // m before the bridged front, of each crest
}

// DraftedFolds is the number of folds that the draft asks for: one a pleat of a
// shoulder, else one a slash; 0 where it asks for none.
func (j Job) DraftedFolds() int {
	if n := len(j.Cowl.Pleats); n > 0 {
		return n
	}
	return len(j.Cowl.Drapes)
}

// AutoFolds returns how many folds are laid where no number is asked for and none is
// tried: that of the draft, else two if they fit.
func (j Job) AutoFolds() int {
	fit := j.FoldsThatFit()
	if n := j.DraftedFolds(); n > 0 {
		return min(n, fit)
	}
	return min(2, fit)
}

// laid is the number of folds that a single hand lays.
func (j Job) laid() int {
	if j.Folds == Auto {
		return j.AutoFolds()
	}
	return j.Folds
}

// laying divides the surplus into the folds of the job. Where the draft has as many
// slashes, crests lie on their lines; else the folds share the cloth equally. Either
// way a hand lays each a little off its place.
func (j Job) laying(h hand) laying {
	l := laying{job: j, hand: h, seam: j.seamPlaces()}
	l.crest, l.valley = j.wanted(j.zone(h).flat)
	for k, room := 0, l.valley[0]/10; k < j.Folds; k++ {
		if k > 0 {
			room = (l.valley[k] - l.valley[k-1]) / 10
		}
		l.crest[k] += bounded(h.crest[k], room)
		l.valley[k] += bounded(h.valley[k], room)
	}
	l.ahead = make([]float64, j.Folds)
	from := 0.0
	for k, to := range l.valley {
		l.ahead[k] = root(valleyAhead, valleyAhead+(to-from), func(ahead float64) float64 {
			l.ahead[k] = ahead
			return l.way(from, l.crest[k]) + l.way(l.crest[k], to) - (to - from)
		})
		from = to
	}
	return l
}

// wanted returns where crests and valleys belong on so much flat centre front, m.
func (j Job) wanted(flat float64) (crest, valley []float64) {
	d, n := j.Cowl.Drapes, j.Folds
	if len(d) != n || len(j.Cowl.Pleats) > 0 {
		for k := range n {
			each := flat / float64(n)
			crest, valley = append(crest, (float64(k)+0.5)*each), append(valley, float64(k+1)*each)
		}
		return crest, valley
	}
	for k := range d {
		crest = append(crest, j.Cowl.FoldY-d[k].CF.Y)
	}
	if n == 1 {
		return crest, []float64{2 * crest[0]}
	}
	for k := range d {
		valley = append(valley, crest[k]+(crest[min(k+1, n-1)]-crest[max(0, min(k, n-2))])/2)
	}
	return crest, valley
}

// bounded returns v, of a size of most at most.
func bounded(v, most float64) float64 { return math.Max(-most, math.Min(most, v)) }

// way is the length in space of the laid centre front between two places of it, m.
func (l laying) way(from, to float64) float64 {
	const parts = 12
	sum, last := 0.0, l.line(from)
	for k := 1; k <= parts; k++ {
		next := l.line(from + (to-from)*float64(k)/parts)
		sum += math.Hypot(next.y-last.y, next.z-last.z)
		last = next
	}
	return sum
}

// forward is how far before the bridged front a place down the centre front is laid, m.
func (l laying) forward(down float64) float64 {
	from, before := 0.0, 0.0
	for k := range l.crest {
		if down <= l.crest[k] {
			return valleyAhead + (l.ahead[k]-valleyAhead)*(down-from)/(l.crest[k]-from)
		}
		if from, before = l.valley[k], l.ahead[k]; down <= from {
			return valleyAhead + (before-valleyAhead)*(from-down)/(from-l.crest[k])
		}
	}
	return valleyAhead
}

// line hangs the line that begins at a place down the centre front.
func (l laying) line(down float64) hungLine {
	from, to, end := l.flat(down)
	return l.job.hangs(end, r2.Norm(r2.Sub(to, from))*l.hand.sag, l.forward(down))
}

// flat returns the ends of the line that begins at a place down the centre front,
// on the piece (m), and where the second lies on the form.
func (l laying) flat(down float64) (from, to r2.Vec, end r3.Vec) {
	p := l.job.Cowl
	foot := l.foot(down, p.ShoulderLength())
	seam := p.Unfolded(foot)
	return r2.Vec{Y: p.FoldY - down}, along(p.Shoulder, seam), l.job.off(l.job.Form.ShoulderPoint(1, p.CowlPoint+foot),
		l.job.overAt(seam))
}

// seamPlaces returns how far down the folded shoulder seam the line of each fold
// ends, m: at a pleat, at the hinge of a slash, or in equal shares.
func (j Job) seamPlaces() []float64 {
	p := j.Cowl
	var out []float64
	for k := range j.Folds {
		at := p.ShoulderLength() * (float64(k) + 0.5) / float64(j.Folds)
		switch j.Folds {
		case len(p.Pleats):
			at = p.Pleats[k].At
		case len(p.Drapes):
			at = nearest(p.Shoulder, p.Drapes[k].Shoulder)
		}
		out = append(out, at)
	}
	return out
}

// end returns how far down the flat centre front the folds end, m.
func (l laying) end() float64 { return l.valley[len(l.valley)-1] }

// foot returns how far down the folded shoulder seam of length long the line from
// a place down the centre front ends, m. Lines between those of the crests keep
// their shares.
func (l laying) foot(down, long float64) float64 {
	d0, s0 := 0.0, 0.0
	for k, c := range l.crest {
		if down <= c {
			return s0 + (l.seam[k]-s0)*(down-d0)/(c-d0)
		}
		d0, s0 = c, l.seam[k]
	}
	return s0 + (long-s0)*math.Min(1, (down-d0)/(l.end()-d0))
}
