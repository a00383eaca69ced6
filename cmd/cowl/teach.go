package main

import (
	"context"
	"errors"
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/style"
)

type teachCmd struct {
	Grain teachGrainCmd `cmd:"" help:"Class sheet on warp, weft and bias: one page of pictures and figures, one of questions and answers."`
}

type teachGrainCmd struct {
	hangFlags
	Placings int `type:"count" least:"1" most:"99" placeholder:"N" default:"5" help:"Hands that place every cut (5)."`
	partFlag
	Out string `short:"o" default:"cowl-grain" placeholder:"DIR" help:"Folder of the sheet (cowl-grain)."`
}

// taught are the angles of the class sheet, degrees from the centre front to
// the warp.
var taught = []float64{0, 22.5, 45, 67.5, 90}

// Run hangs the piece at the five angles and makes the sheet.
func (d teachGrainCmd) Run(ctx context.Context, c console.Console) error {
	if isGiven(d.Cut, "grain") {
		return errors.New("--grain: the class sheet shows 0, 22.5, 45, 67.5 and 90°; for one angle there is cowl drape, for others cowl sweep --vary grain=…")
	}
	s, err := d.styled()
	if err != nil {
		return err
	}
	ask, err := newAsk("teach", s, d.Placings)
	if err != nil {
		return err
	}
	return newWorkshop(d.Out, d.benchFlags, d.Part, c).study(ctx, ask)
}

// planTeach makes one case an angle. All lay the same number of folds.
func planTeach(a studyAsk, s style.Style) (*studyPlan, error) {
	f, err := parseFactor("grain=0,22.5,45,67.5,90")
	if err != nil {
		return nil, err
	}
	p := &studyPlan{ask: a, style: s, vary: []factor{f}, sheet: teachSheet, pairs: teachDiffs}
	for _, deg := range taught {
		one := s
		one.Cut.Grain = deg * math.Pi / 180
		c := newCase(fmt.Sprintf("%.4g°", deg), one)
		c.Values, c.steady, c.lined = []float64{deg}, true, true
		p.cases = append(p.cases, c)
	}
	return p, nil
}

// bias is the place of 45° among the angles.
const bias = 2

// teachDiffs compares every angle with the true bias.
func teachDiffs(_ *studyPlan, rs []caseResult) []studyDifference {
	var out []studyDifference
	for i, c := range rs {
		if i == bias {
			continue
		}
		for _, m := range figuresOnSheet {
			out = append(out, differ(m, rs[bias], c, len(rs)-1))
		}
	}
	return out
}
