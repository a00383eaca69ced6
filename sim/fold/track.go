package fold

import "math"

// MaxRide is how far a crest may move along the cloth between two looks and be
// the same crest. Two to four folds laid down some 30 cm of CF lie 75 mm apart
// or more, and a new crest between two of them is half of that from either: it
// is taken for neither. It is no less than the diagonal of a 10 mm cell, by
// which a crest so tight that it is read on the section alone may jump.
const MaxRide = 0.015 // m, flat

// maxMissed is how many looks running a fold may be unseen. While cloth falls,
// waves run over it, and a fold near MinDepth is now over and now under; a
// crest that stands a look later within MaxRide of where one stood is to a
// draper the same. Twice unseen, what comes later is another fold.
const maxMissed = 1

// Track follows laid folds from look to look. The zero Track follows none.
// It is a value: Look leaves the Track it is called on as it was.
type Track struct {
	Folds []Laid // from the edge down, as laid
	Extra []int  // crests of the last look that are no laid fold, ascending
}

// Laid is what has become of a laid fold.
type Laid struct {
	From   float64 // m, flat distance from the edge at which its crest was laid
	CF     float64 // m, the same where it was last seen
	Crest  int     // its crest in the last look, −1 if it was not seen there
	Missed int     // looks running in which it was not seen
}

// Kept reports whether the last look showed the fold.
func (l Laid) Kept() bool { return l.Crest >= 0 }

// Lost reports whether the fold is gone for good.
func (l Laid) Lost() bool { return l.Missed > maxMissed }

// TrackPressed starts to follow the folds that a hand presses, fingers on these
// flat distances from the edge, m, and the valley below each on these, both in
// ascending order, where a look shows crests, m: each fold is laid at the crest
// next to its finger of those between its two valleys, so that one which has
// tipped over its finger is still the fold it was. One that is not there under
// the hand was never laid: it is lost. len(valleys) = len(fingers).
func TrackPressed(fingers, valleys, crests []float64) Track {
	mustAscend(fingers)
	mustAscend(valleys)
	mustAscend(crests)
	t := Track{Folds: make([]Laid, len(fingers))}
	above := 0.0
	for i, at := range fingers {
		t.Folds[i] = Laid{From: at, CF: at, Crest: -1, Missed: maxMissed + 1}
		for j, c := range crests {
			if c <= above || c > valleys[i] {
				continue
			}
			if l := &t.Folds[i]; !l.Kept() || math.Abs(c-at) < math.Abs(l.CF-at) {
				*l = Laid{From: c, CF: c, Crest: j}
			}
		}
		above = valleys[i]
	}
	return t
}

// Look returns the track after one more look, which shows crests at these flat
// distances from the edge, m, in ascending order, as Crests returns. Folds
// keep their order, so they never change places, and no two share a crest:
// where two run into one the nearer has it, of two as near the upper. A fold
// that moves by more than MaxRide or misses two looks running is lost and
// never comes back.
func (t Track) Look(crests []float64) Track {
	mustAscend(crests)
	next := Track{Folds: make([]Laid, len(t.Folds))}
	var at []float64
	var alive []int
	for i, l := range t.Folds {
		next.Folds[i] = Laid{l.From, l.CF, -1, l.Missed + 1}
		if !l.Lost() {
			at, alive = append(at, l.CF), append(alive, i)
		}
	}
	held := make([]bool, len(crests))
	for k, j := range match(at, crests, MaxRide) {
		if j >= 0 {
			l := &next.Folds[alive[k]]
			l.CF, l.Crest, l.Missed, held[j] = crests[j], j, 0, true
		}
	}
	for j, h := range held {
		if !h {
			next.Extra = append(next.Extra, j)
		}
	}
	return next
}

// Crests returns the flat distances of the folds from the edge down CF, m, in
// ascending order.
func (r Reading) Crests() []float64 {
	at := make([]float64, len(r.Folds))
	for i, f := range r.Folds {
		at[i] = f.CF
	}
	return at
}

func mustAscend(at []float64) {
	for i := 1; i < len(at); i++ {
		if !(at[i] > at[i-1]) {
			panic("fold: crests do not ascend from the edge down")
		}
	}
}
