package drape

import (
	"context"
	"math"

	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/sim"
)

// EdgeNear is how near to the wanted depth the edge is set, m.
const EdgeNear = 0.005

// On the stand a draper lifts the cloth over the shoulder points, or lets it down,
// until the edge lies as wanted.
const (
	edgeGoes = 6 // times that the cloth is hung for it at most
	// by how much the edge rises for cloth taken up, first guess: of both bounds, V and hanging
	// curve, for mid-depth cowls
	dropPerUp = 1.1
)

// EdgeRange returns how far below the front neck point the edge of the job may be
// set, m.
func (j Job) EdgeRange() (limit.Range, error) {
	p := j.Cowl
	down, err := p.TakenUp(p.TakeUpRange(0).Lo)
	if err != nil {
		return limit.Range{}, err
	}
	high := p.Block.CFNeck.Y - p.Block.CowlPoint(p.CowlPoint).Y // of an edge straight from cowl point to cowl point
	return limit.Range{
		Field: "edge depth", Value: j.EdgeDepth, Lo: high, Hi: down.DeepestBelowNeck(), Unit: limit.Length,
		Why: limit.Say("from an edge taken up straight to one that hangs in a V with all of its allowance let down; a " +
			"wider extension reaches deeper"),
	}, nil
}

// CheckEdge refuses an edge depth that no taking up or letting down reaches.
func (j Job) CheckEdge() error {
	if !j.SetEdge {
		return nil
	}
	r, err := j.EdgeRange()
	if err != nil {
		return err
	}
	return r.Check()
}

// setting is how the edge of a job is brought to its depth, from one drape to the
// next. The zero setting begins.
type setting struct {
	goes  int
	step  float64 // m to be taken up for each by which the edge rests too deep
	by    float64 // m, taken up last; 0: nothing yet
	below float64 // m, where the edge rested before that
}

// next returns by how much more p is to be taken up, whose edge rests so far below
// the front neck point, m; 0: it rests where it is wanted, or was tried often enough.
func (s *setting) next(j Job, p draft.Cowl, below float64) (float64, error) {
	if s.step == 0 {
		s.step = 1 / dropPerUp
	}
	if rise := s.below - below; s.by != 0 && rise/s.by > 0.3 {
		s.step = s.by / rise
	}
	off := below - j.EdgeDepth // m, too deep
	if math.Abs(off) <= EdgeNear || s.goes == edgeGoes {
		return 0, nil
	}
	r := p.TakeUpRange(0)
	by := math.Max(r.Lo, math.Min(r.Hi, off*s.step))
	switch {
	case math.Abs(by) >= 1e-4:
	case off > 0:
		return 0, limit.Errorf("edge depth", "edge depth %v, want at least %v in this cloth: the edge rests there, taken "+
			"up straight",
			limit.Metres(j.EdgeDepth), limit.Metres(below))
	default:
		return 0, limit.Errorf("edge depth", "edge depth %v, want at most %v in this cloth: the edge rests there with "+
			"all of the allowance let down; a wider extension reaches deeper",
			limit.Metres(j.EdgeDepth), limit.Metres(below))
	}
	s.goes++
	s.by, s.below = by, below
	return by, nil
}

// setEdge takes the cloth up or lets it down until the edge of a drape of the job rests
// where it is wanted, and hangs it anew each time. It returns the drape of the
// piece that was found.
func (j Job) setEdge(ctx context.Context, h hung) (hung, error) {
	var s setting
	for h.outcome.Status == sim.Settled {
		by, err := s.next(j, h.drape.Job.Cowl, h.outcome.EdgeBelowNeck)
		if err != nil || by == 0 {
			return h, err
		}
		if h, err = j.hangTaken(ctx, h.drape.Job.Cowl, by); err != nil {
			return h, err
		}
	}
	return h, nil
}

// hangTaken hangs the piece of the job as p, of which it is the beginning, with
// its cloth taken up by a length more, m. It is taken up at one go: the outcome
// tells by how much, and another hand that does so gets the same piece to the bit.
func (j Job) hangTaken(ctx context.Context, p draft.Cowl, by float64) (hung, error) {
	j, err := j.taken(p.Taken + by)
	if err != nil {
		return hung{}, err
	}
	all, err := hangEach(ctx, []Job{j})
	if err != nil {
		return hung{}, err
	}
	return all[0], nil
}

// taken returns the job with its cloth taken up to a length in all, m.
func (j Job) taken(up float64) (Job, error) {
	var err error
	j.Cowl, err = j.Cowl.TakenUp(up - j.Cowl.Taken)
	return j, err
}
