package study

import (
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
