package style

import "cowl/mesh/draft"

// Gap returns how the closure of s lies in its front p and the back b; a slit is as long as
// a head of that girth (m) needs. A seam that is too short for it is an error.
func (s *Style) Gap(p draft.Cowl, b draft.Back, head float64) (draft.Gap, error) {
	g, err := s.Closure.GapIn(p, b, head)
	return g, s.located(err)
}
