package style

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cowl/cmd/cowl/internal/say"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
)

// Wearer returns the body: the size of the chart, or its line at the bust, with the
// vertical measurements scaled by the height and the measurements that were given in
// their place. Apex and bust span follow the rules of the draft unless they were given.
// A measurement out of its range is an error.
func (s *Style) Wearer() (body.Body, error) {
	b, err := s.charted()
	if err != nil {
		return b, s.placed(err)
	}
	for _, f := range fields {
		if f.group == "body" && s.taken[f.Name] {
			*f.measure(&b) = *f.measure(&s.Body)
		}
	}
	b = b.Filled()
	if err := b.Validate(); err != nil {
		return b, s.placed(s.missing(err))
	}
	return b, nil
}

// charted returns the body of the chart, before single measurements.
func (s *Style) charted() (b body.Body, err error) {
	switch {
	case s.Size != draft.Auto:
		b, err = s.Chart.At(s.Size)
	case s.taken["bust"]:
		b, err = s.Chart.AtBust(s.Body.Bust)
	default:
		return b, limit.Errorf("size", "size auto, want a bust with it: the chart is read at the bust; give bust_cm or "+
			"--bust")
	}
	if s.Height == 0 || err != nil {
		return b, err
	}
	if s.Chart.For() == 0 {
		return b, limit.Errorf("height", "height %v, but your chart does not say for which height it is made: give "+
			"height_cm in it, or armscye_depth_cm, nape_to_waist_cm and waist_to_hip_cm in place of a height",
			limit.Metres(s.Height))
	}
	r := limit.Range{Field: "height", Value: s.Height, Lo: body.LeastHeight, Hi: body.MostHeight, Unit: limit.Length,
		Why: limit.Say("beyond, measure armscye depth, nape to waist and waist to hip and give them instead")}
	if err := r.Check(); err != nil {
		return b, err
	}
	tall := b.Tall(s.Height, s.Chart.For())
	tall.BustSpan, tall.ApexDepth = b.BustSpan, 0
	return tall, nil
}

// missing says which measurements the scaled body wants where it cannot be drafted: those
// that err speaks of and nobody took.
func (s *Style) missing(err error) error {
	if s.Size != draft.Auto && s.Height == 0 {
		return err
	}
	var names []string
	for _, m := range body.Measures() {
		key := strings.ReplaceAll(m.Name, " ", "_")
		speaks := func(line string) bool {
			return strings.HasPrefix(line, m.Name+" ") || strings.Contains(line, "+ "+m.Name+" ")
		}
		if !s.taken[key] && slices.ContainsFunc(strings.Split(err.Error(), "\n"), speaks) {
			names = append(names, key)
		}
	}
	if names == nil {
		return err
	}
	return limit.Errorf("bust", "%v\nthe rest is scaled by the chart's line, and this figure is off it: measure and "+
		"give %s", err, strings.Join(names, ", "))
}

// scaled settles whether the chart is read at the bust: it is where a bust was given and
// no size beside it.
func (s *Style) scaled(bustFrom string) {
	flag := strings.HasPrefix(bustFrom, "--")
	if size, ok := s.from["size"]; !ok || flag && !strings.HasPrefix(size, "--") {
		s.Size = draft.Auto
	}
}

// SizeWord is the size in a word: 12, or "bust 94.0 cm".
func (s *Style) SizeWord() string {
	if s.Size == draft.Auto {
		return "bust " + say.Length(s.Body.Bust)
	}
	return strconv.Itoa(s.Size)
}

// SizeLine says what was scaled, empty if nothing was.
func (s *Style) SizeLine() string {
	var out []string
	if s.Size == draft.Auto {
		text := fmt.Sprintf("what was not measured is read off the chart's line at a bust of %s, size %.1f",
			say.Length(s.Body.Bust), s.Chart.SizeAt(s.Body.Bust))
		if n := s.Chart.Numbers(); !s.Chart.Holds(s.Body.Bust) {
			text += fmt.Sprintf(", drawn on beyond the %d to %d of the chart", n[0], n[len(n)-1])
		}
		out = append(out, text)
	}
	if s.Height != 0 {
		out = append(out, fmt.Sprintf("upright measurements by %.2f, a height of %s for the %s of the chart",
			s.Height/s.Chart.For(), say.Round(s.Height), say.Round(s.Chart.For())))
	}
	return strings.Join(out, "; ")
}

// ForWhom says in a few words for whom the piece is.
func (s Style) ForWhom() string {
	text := "chart size " + s.SizeWord()
	if s.Chart != nil {
		text = "own " + text
	}
	own := s.Taken()
	if s.Size == draft.Auto {
		text = s.SizeWord()
		own--
	}
	if s.Height != 0 {
		text += ", height " + say.Round(s.Height)
	}
	if own > 0 {
		text += fmt.Sprintf(" with %d own measurements", own)
	}
	if s.Points != nil {
		text += ", own block"
	}
	if s.Lines != nil {
		text += ", own piece"
	}
	return text
}
