package study

import (
	"context"
	"fmt"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/say"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
	"cowl/sim/drape"
)

// Hanging is a style that is hung for another part of the program, by as many hands as
// its Hang.Placings says.
type Hanging struct {
	Name   string // for messages
	Style  style.Style
	Steady bool // of folds auto none are tried: the usual number is laid
	Drawn  bool // the first hand is drawn
}

// Hung is what is known of a Hanging.
type Hung struct {
	Each    []*drape.Outcome // one a hand; nil: it gave no result that counts
	Picture []byte           // of the first hand, JPEG; nil: none
	Missing string           // why there is no picture, where one was wanted
	Why     string           // why the first of those without a result has none
}

// Hang hangs what the rows of o.Dir do not hold yet and returns one Hung a Hanging. A
// style that cannot be cut is no error: its Hung says why.
func Hang(ctx context.Context, o Options, c console.Console, list []Hanging) ([]Hung, error) {
	w := newRunner(o, c)
	defer w.hanger.close()
	rs, err := w.hangAll(ctx, casesOf(list))
	return hungOf(rs), err
}

// Kept is Hang for what the rows of a folder hold already: it hangs nothing. What is no
// good is told to warn, which may be nil.
func Kept(dir string, list []Hanging, warn func(string)) ([]Hung, error) {
	w := newRunner(Options{Dir: dir}, console.Console{})
	cases := casesOf(list)
	rowList, at := rowsOf(cases)
	results, err := rows.Kept[Row](w.store(), rowList, warn)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", console.ErrCannotSave, err)
	}
	return hungOf(collect(cases, results, at, w.store())), nil
}

// casesOf makes a case of every hanging.
func casesOf(list []Hanging) []oneCase {
	var out []oneCase
	for _, h := range list {
		c := newCase(h.Name, h.Style)
		c.steady, c.hide = h.Steady, !h.Drawn
		out = append(out, c)
	}
	return out
}

// hungOf says of every case what others need to know.
func hungOf(rs []caseResult) []Hung {
	var out []Hung
	for _, c := range rs {
		h := Hung{Each: make([]*drape.Outcome, c.style.Hang.Placings), Picture: c.Picture}
		for k, r := range c.Each {
			if settled(r) {
				h.Each[k] = &r.Value.Outcome
			}
		}
		if r, ok := c.shown(); ok {
			h.Missing = say.FirstLine(r.Missing)
		}
		if _, why := c.troubles(); why != "" {
			h.Why = say.FirstLine(why)
		}
		out = append(out, h)
	}
	return out
}
