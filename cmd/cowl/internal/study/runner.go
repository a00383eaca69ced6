package study

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/rows"
)

// Options say how a study is computed, where it is kept and what is told of it.
type Options struct {
	Dir         string       // folder of the study
	Part        rows.Part    // hung here; the zero Part: all
	Jobs        int          // drapes at a time, 1 or more
	Retry       bool         // hang again what failed
	Stage       drawn.Stager // what pictures are drawn on
	JSON, Quiet bool         // print result.json alone; nothing but warnings
}

// runner computes the cases of one study folder.
type runner struct {
	Options
	c      console.Console
	hanger *hanger
	// of a search whose drapes are counted to its end; nil: a line for each round
	tally *tally
	hang  func(context.Context, oneCase, int) (rows.Made[Row], error) // one placing of a case
}

func newRunner(o Options, c console.Console) *runner {
	h := newHanger(o.Stage)
	return &runner{Options: o, c: c, hanger: h, hang: h.hang}
}

// store is where finished rows are kept.
func (w *runner) store() rows.Store { return rows.Store(filepath.Join(w.Dir, "rows")) }

// hangAll hangs what is not yet kept of the cases and returns what is known of
// each. Called off, it says what is kept and returns the exit status.
func (w *runner) hangAll(ctx context.Context, cases []oneCase) ([]caseResult, error) {
	if err := tooLarge(cases, w.Jobs); err != nil {
		return nil, err
	}
	list, at := rowsOf(cases)
	defer console.Heed()()
	results, err := w.rounds(ctx, cases, list, at)
	if errors.Is(err, context.Canceled) {
		done, of := doneOf(results), fmt.Sprint(len(list))
		if w.tally != nil {
			done, of = len(w.tally.done), fmt.Sprintf("at most %d", w.tally.most)
		}
		fmt.Fprintf(w.c.Err, "cowl: cancelled; %d of %s drapes are kept in %s, the same command goes on from there\n", done,
			of, w.Dir)
		return nil, console.Silent{Code: console.ExitCancelled}
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %w", console.ErrCannotSave, err)
	}
	return collect(cases, results, at, w.store()), nil
}

// warn tells of a row that is kept but no good.
func (w *runner) warn(text string) { fmt.Fprintf(w.c.Err, "cowl: %s\n", text) }

// rounds hangs the first hands that find out something, then all that is left: the
// other hands of such a case do as its first has found.
func (w *runner) rounds(ctx context.Context, cases []oneCase, list []rows.Row, at []rowAt) (results []rows.Result[Row],
	err error) {
	found := map[int]rows.Result[Row]{} // by the case
	work := func(ctx context.Context, i int) (rows.Made[Row], error) {
		c, k := cases[at[i].of], at[i].placing
		if c.follows(k) {
			r := found[at[i].of]
			if r.Failed != "" {
				return rows.Made[Row]{}, fmt.Errorf("the first hand gave no result: %s", say.FirstLine(r.Failed))
			}
			c.first = &r.Value.Outcome
		}
		return w.hang(ctx, c, k)
	}
	mine := dealt(cases, list, at, w.Part)
	for _, round := range []struct {
		first bool
		says  string
	}{{true, "first hands done, which try folds or set the edge of a cut"}, {false, "drapes hung"}} {
		here := func(i int) bool { return mine[i] && (cases[at[i].of].finds() && at[i].placing == 0) == round.first }
		tell, done := w.teller(round.says)
		results, err = rows.Run(ctx, w.store(), list, rows.Options{Jobs: w.Jobs, Here: here, Retry: w.Retry, Tell: tell,
			Warn: w.warn}, work)
		done(list, results)
		if err != nil {
			return results, err
		}
		for i, r := range results {
			if at[i].placing == 0 {
				found[at[i].of] = r
			}
		}
	}
	return results, nil
}

// teller tells how far a round has come, and what is to be done at its end.
func (w *runner) teller(says string) (tell func(rows.Pace), done func([]rows.Row, []rows.Result[Row])) {
	if w.tally != nil {
		return w.tally.show, w.tally.add
	}
	line := newPaceLine(w.c.Err, w.Quiet || w.JSON, says)
	return line.show, func([]rows.Row, []rows.Result[Row]) { line.clear() }
}

func doneOf(results []rows.Result[Row]) int {
	n := 0
	for _, r := range results {
		if r.Done {
			n++
		}
	}
	return n
}

// dealt returns which rows belong to a part. Hands that follow a first one go where it
// goes, which no other part then has to hang for them.
func dealt(cases []oneCase, list []rows.Row, at []rowAt, p rows.Part) []bool {
	turn, out := map[string]int{}, make([]bool, len(list))
	for i, r := range list {
		key := r.Key
		if c := cases[at[i].of]; c.finds() {
			key = c.key(0)
		}
		if _, ok := turn[key]; !ok {
			turn[key] = len(turn)
		}
		out[i] = p.Has(turn[key])
	}
	return out
}
