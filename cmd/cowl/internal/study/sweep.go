package study

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/style"
)

// planSweep makes a case of every combination: fabric by fabric, then by the
// further factors, the first factor running fastest.
func planSweep(a Spec, s style.Style) (*plan, error) {
	p := &plan{spec: a, style: s, page: sweepPage, pairs: sweepDiffs}
	for _, text := range a.Vary {
		f, err := parseFactor(text)
		if err != nil {
			return nil, err
		}
		if err := f.fits(s); err != nil {
			return nil, err
		}
		for _, g := range p.vary {
			if g.name == f.name {
				return nil, fmt.Errorf("--vary %s is given twice, want each once", f.name)
			}
		}
		p.vary = append(p.vary, f)
	}
	if err := p.holds(); err != nil {
		return nil, err
	}
	starts, err := sweepStarts(a, s)
	if err != nil {
		return nil, err
	}
	if n := linesOf(len(starts), p.vary); n > page.MostLines {
		return nil, fmt.Errorf("%d lines in one chart, want %d at most: fewer fabrics or fewer values of the further --vary",
			n, page.MostLines)
	}
	for _, start := range starts {
		if err := p.combine(start, len(p.vary)-1); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// linesOf counts the lines of the chart before anything is cut: a fabric each, by
// the values of the further factors.
func linesOf(fabrics int, vary []factor) int {
	n := fabrics
	for _, f := range vary[1:] {
		n = min(n*len(f.values), 1e6)
	}
	return n
}

// sweepStarts returns one start a fabric.
func sweepStarts(a Spec, s style.Style) ([]oneCase, error) {
	cloths, err := a.fabrics()
	if err != nil {
		return nil, err
	}
	if len(cloths) == 0 {
		return []oneCase{{style: s}}, nil
	}
	var out []oneCase
	for _, f := range cloths {
		one := s
		one.Fabric = f
		out = append(out, oneCase{style: one, Group: f.Name})
	}
	return out, nil
}

// combine runs through factor k and those before it.
func (p *plan) combine(from oneCase, k int) error {
	f := p.vary[k]
	for _, v := range f.values {
		one := from
		if err := f.apply(&one.style, v); err != nil {
			return err
		}
		one.Values = append([]float64{f.shown(v)}, from.Values...)
		if k > 0 {
			one.Group = strings.TrimPrefix(from.Group+", "+f.spokenValue(v), ", ")
			if err := p.combine(one, k-1); err != nil {
				return err
			}
			continue
		}
		c := p.held(f.said(v), one.style)
		c.Group, c.Values = one.Group, one.Values
		c.lined = slices.ContainsFunc(p.vary, func(f factor) bool { return f.name == "grain" })
		p.cases = append(p.cases, c)
	}
	return nil
}

// holds refuses to hold a drop where nothing comes of it.
func (p *plan) holds() error {
	switch {
	case p.spec.Hold != HoldDrop:
		return nil
	case !p.varies("size"):
		return errors.New("--hold drop: one size is hung, want --vary size=8,10,12 with it")
	case p.varies("extension"):
		return errors.New("--hold drop and --vary extension: want one of them, for a drop that is held sets the extension")
	}
	return nil
}

// held makes the case of s, with the extension by which the edge drops as in the style's
// own size, all else alike, where that is held.
func (p *plan) held(name string, s style.Style) oneCase {
	if p.spec.Hold == HoldDrop {
		own := s.Clone()
		own.Size = p.style.Size
		if err := s.HoldDrop(own); err != nil {
			return oneCase{Name: name, style: s, wrong: err}
		}
	}
	return newCase(name, s)
}

// spokenValue names a value in the name of a line: "cowl point 4 cm".
func (f factor) spokenValue(v float64) string {
	if f.unit == "" {
		return f.said(v)
	}
	return f.label + " " + f.said(v)
}

// sweepDiffs compares, line by line, each value with the one before and the
// last with the first.
func sweepDiffs(p *plan, rs []caseResult) []difference {
	var out []difference
	for _, g := range groupsOf(p.cases) {
		line := g.pick(rs)
		for _, m := range leadingFigures {
			for k := 1; k < len(line); k++ {
				out = append(out, differ(m, line[k-1], line[k], len(line)))
			}
			if len(line) > 2 {
				out = append(out, differ(m, line[0], line[len(line)-1], len(line)))
			}
		}
	}
	return append(out, lineDiffs(p, rs)...)
}
