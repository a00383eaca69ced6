package main

import (
	"cowl/cmd/cowl/internal/report"
	"cowl/cmd/cowl/internal/style"
)

// studyPlan is what an ask comes to: the cases and how to make their sheet.
type studyPlan struct {
	ask   studyAsk
	style style.Style
	cases []studyCase
	vary  []factor                                              // what is varied, for the columns of the table
	pairs func(p *studyPlan, rs []caseResult) []studyDifference // what is compared
	sheet func(p *studyPlan, rs []caseResult) report.Page
}
