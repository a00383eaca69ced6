package materials

import "cowl/mesh/limit"

// Heights over lengths of heart loops that tell a bending length: at either end
// 1 % of the height is 7 % of it, in the middle 1 %.
const (
	shallowest = 0.14
	deepest    = 0.45
)

// heartLength returns the bending length (m) of a loop of that height and
// length, m. What lies outside the range is taken as its end: checkLoops has
// refused the reading itself, and only its ± can reach there.
func heartLength(height, length float64) float64 {
	c, _ := HeartLength(min(max(height/length, shallowest), deepest))
	return c * length
}

// checkLoops demands heights that tell a bending length.
func (s Swatch) checkLoops() error {
	length, any := s.Readings[LoopLength].Mean, false
	var errs []error
	for _, d := range directions {
		if !s.done(d.loop) {
			continue
		}
		any = true
		share := s.Readings[d.loop].Mean / length
		if !s.done(LoopLength) || share >= shallowest && share <= deepest {
			continue
		}
		why := "the cloth is too stiff for it, want a longer loop"
		if share > deepest {
			why = "the cloth is too limp for it, want a shorter loop"
		}
		errs = append(errs, limit.Errorf(d.loop.Key(), "%s of %s, want %v–%v: %s",
			s.told(d.loop), s.told(LoopLength), withUnit(100*shallowest*length, "cm"), withUnit(100*deepest*length, "cm"), why))
	}
	if s.done(LoopLength) && !any {
		errs = append(errs, limit.Errorf(LoopLength.Key(), "%s without a height, want %s, %s or %s too", LoopLength.Key(),
			LoopWarp.Key(), LoopWeft.Key(), LoopBias.Key()))
	}
	return oneLine(errs)
}
