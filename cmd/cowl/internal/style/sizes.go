package style

import "cowl/mesh/draft"

// OneBody reports whether s holds what is of one body alone and so cannot be cut in other
// sizes of the chart: own measurements, a block or a finished piece.
func (s *Style) OneBody() bool { return s.Taken() > 0 || s.Points != nil || s.Lines != nil }

// HoldDrop gives s the extension by which its edge drops as that of own, by the hanging
// curve and before anything is done on the stand. Neither may be a finished piece. An error
// says which cannot be cut.
func (s *Style) HoldDrop(own Style) error {
	p, err := own.unstood()
	if err != nil {
		return err
	}
	q, err := s.unstood()
	if err != nil {
		return err
	}
	from := q.Block.CowlPoint(q.CowlPoint).X
	_, edge := draft.EdgeForDrop(from, p.Report().DropChain)
	s.Cut.Extension = edge - from
	return nil
}

// ExtensionHeld says what of the extension all sizes share that are cut from s: its length,
// or the drop.
func (s *Style) ExtensionHeld(drop bool) string {
	switch {
	case drop:
		return "extension held as the drop of size " + s.SizeWord()
	case s.Cut.Extension == draft.Auto:
		return "extension is what each dart gives"
	}
	return "extension held as its length"
}

// unstood is the front before anything is done on the stand.
func (s *Style) unstood() (draft.Cowl, error) {
	one := s.Clone()
	one.Stand, one.Trims = draft.DefaultStand(), nil
	return one.Cowl()
}
