package study

import (
	"slices"

	"cowl/cmd/cowl/internal/study/page"
	"cowl/cmd/cowl/internal/style"
)

// plan is what a spec comes to: the cases and how to make their sheet.
type plan struct {
	spec  Spec
	style style.Style
	cases []oneCase
	vary  []factor                                    // what is varied, for the columns of the table
	pairs func(p *plan, rs []caseResult) []difference // what is compared
	page  func(p *plan, rs []caseResult) page.Page
}

// varies reports whether the sweep varies a quantity.
func (p *plan) varies(name string) bool {
	return slices.ContainsFunc(p.vary, func(f factor) bool { return f.name == name })
}
