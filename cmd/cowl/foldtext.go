package main

import (
	"fmt"

	"cowl/cmd/cowl/internal/say"
	"cowl/sim/drape"
	"cowl/sim/drape/measure"
	"cowl/sim/fold"
)

// zone lists the folds on one side of the bust.
func zone(o *drape.Outcome, z fold.Zone) []drape.Fold {
	var out []drape.Fold
	for _, f := range o.Folds {
		if f.Zone == z {
			out = append(out, f)
		}
	}
	return out
}

// foldText describes a fold.
func foldText(f drape.Fold) string {
	told := func(m *measure.FoldFigure) string { return m.Amount(m.Value(&f)) }
	text := fmt.Sprintf("%6s deep, %s down the centre front, %s above the waist, %s wide", told(measure.Depth),
		told(measure.Down), told(measure.Height), told(measure.Wide))
	switch {
	case f.Kept && f.Survives >= 0:
		return text + "; laid at " + told(measure.LaidDown) + survivesText(f.Survives)
	case f.Kept:
		return text + "; laid at " + told(measure.LaidDown)
	}
	return text + "; nobody laid it"
}

// survivesText tells how hard a shake a fold survives.
func survivesText(a float64) string {
	if a == 0 {
		return fmt.Sprintf("; lost when the stand goes %s up and down twice a second",
			say.Small(drape.Amplitude(drape.Ladder[0])))
	}
	return fmt.Sprintf("; survives %s up and down twice a second", say.Small(drape.Amplitude(a)))
}

// laidText tells what became of the folds that were laid.
func laidText(o *drape.Outcome) string {
	if len(o.Tried) > 1 {
		return tryText(o.Try()) + "; shown here, of these:"
	}
	return tryText(o.Try())
}

// tryText tells what the cloth made of a number of laid folds.
func tryText(t drape.Try) string {
	text := fmt.Sprintf("%d laid: %d kept, %d extra above the bust", t.Laid, t.Kept, t.Extra)
	if !t.Settled {
		text += ", not settled"
	}
	return text
}

// counted says how many folds lie above the bust, and how sure that is.
func counted(o *drape.Outcome) string {
	text := fmt.Sprintf("%d above the bust", o.FoldCount)
	if o.Placings > 1 {
		text += measure.Say(o, " in {count_share} of {placings} placings; in the one shown")
	}
	return text
}
