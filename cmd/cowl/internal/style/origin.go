package style

import "cowl/mesh/limit"

// placed puts before each part of err the line or flag that set the field it
// speaks of; nil stays nil.
func (s *Style) placed(err error) error { return limit.Placed(err, s.origin) }

// located is placed for errors about the piece, in the words of the side that it is worn at.
func (s *Style) located(err error) error { return limit.Reworded(s.placed(err), s.Cut.Worn.Say) }

// locatedPoint is located for errors about points of the block.
func (s *Style) locatedPoint(err error) error {
	return limit.Placed(err, func(field string) string {
		if at, ok := s.from["block "+field]; ok {
			return at
		}
		return s.from["block"]
	})
}

// origin returns where a field was set, the file if that is not known.
func (s *Style) origin(field string) string {
	if at, ok := s.from[field]; ok {
		return at
	}
	return s.file
}
