// Package study hangs one style in many ways and says what truly differs: compare, sweep,
// seek, sure and teach. A [Spec] pins down what is asked for; from it come cases, each
// hung by one or more hands, whose rows are kept; then a sheet, tables and style files.
// Start at [Run].
package study

import (
	"context"
	"errors"
	"fmt"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
)

// Run hangs what is asked for and publishes the sheet, or, of a part, only keeps
// its rows.
func Run(ctx context.Context, o Options, c console.Console, spec Spec) error {
	return newRunner(o, c).study(ctx, spec)
}

// Seek looks for the cut that comes nearest to what is wanted.
func Seek(ctx context.Context, o Options, c console.Console, spec Spec, w Want) error {
	return newRunner(o, c).seek(ctx, spec, w)
}

// Gather makes the sheet of rows that are kept, from one folder or several. What
// no part has hung is marked as missing.
func Gather(o Options, c console.Console, dirs []string) error {
	return newRunner(o, c).gather(dirs)
}

// planners make the plan of a verb whose rows are known beforehand.
var planners = map[string]func(Spec, style.Style) (*plan, error){
	"compare": planCompare, "sweep": planSweep, "sure": planSure, "teach": planTeach,
}

// plan works the spec out. It is an error if nothing can be cut.
func (a Spec) plan() (*plan, error) {
	s, err := a.style()
	if err != nil {
		return nil, err
	}
	make, ok := planners[a.Verb]
	if !ok {
		return nil, fmt.Errorf("%s: a study by %q has no parts to gather", specFile, a.Verb)
	}
	p, err := make(a, s)
	if err != nil {
		return nil, err
	}
	var errs []error
	for _, c := range p.cases {
		if c.wrong == nil {
			return p, nil
		}
		errs = append(errs, fmt.Errorf("%s: %w", c.Name, c.wrong))
	}
	return nil, fmt.Errorf("none of the %d rows can be cut: %w", len(p.cases), errors.Join(errs[:min(3, len(errs))]...))
}

// study hangs what is asked for and publishes the sheet, or, of a part, only
// keeps its rows.
func (w *runner) study(ctx context.Context, spec Spec) error {
	defer w.hanger.close()
	p, err := spec.plan()
	if err != nil {
		return err
	}
	if err := w.begin(&p.spec); err != nil {
		return err
	}
	rs, err := w.hangAll(ctx, p.cases)
	if err != nil {
		return err
	}
	if !w.Part.Whole() {
		return w.partDone(rs)
	}
	return w.publish(p, rs)
}

// partDone says what a part has done.
func (w *runner) partDone(rs []caseResult) error {
	done, all, bad := 0, 0, 0
	for _, c := range rs {
		for _, r := range c.Each {
			all++
			if r.Done {
				done++
			}
			if r.Done && !settled(r) {
				bad++
			}
		}
	}
	if !w.Quiet && !w.JSON {
		fmt.Fprintf(w.c.Out, "Part %v done: %d of all %d drapes are in %s, %d of them without a result.\nWhen all parts "+
			"are done:  cowl gather %s\n", w.Part, done, all, w.Dir, bad, w.Dir)
	}
	return nil
}

// gather makes the sheet of rows that are kept, from one folder or several.
func (w *runner) gather(dirs []string) error {
	defer w.hanger.close()
	spec, err := commonSpec(dirs)
	if err != nil {
		return err
	}
	p, err := spec.plan()
	if err != nil {
		return err
	}
	if err := w.begin(&p.spec); err != nil {
		return err
	}
	for _, d := range dirs {
		from := newRunner(Options{Dir: d}, w.c)
		if from.store() == w.store() {
			continue
		}
		if _, err := rows.Gather[Row](w.store(), from.store(), w.warn); err != nil {
			return fmt.Errorf("%w: %w", console.ErrCannotSave, err)
		}
	}
	list, at := rowsOf(p.cases)
	results, err := rows.Kept[Row](w.store(), list, w.warn)
	if err != nil {
		return fmt.Errorf("%w: %w", console.ErrCannotSave, err)
	}
	return w.publish(p, collect(p.cases, results, at, w.store()))
}

// commonSpec reads what the folders of a study ask; they must ask the same.
func commonSpec(dirs []string) (Spec, error) {
	var first Spec
	for i, d := range dirs {
		a, ok, err := readSpec(d)
		switch {
		case err != nil:
			return a, err
		case !ok:
			return a, fmt.Errorf("gather: %s holds no %s, want the folder of a study", d, specFile)
		case i > 0 && !a.same(first):
			return a, fmt.Errorf("gather: %s asks something else than %s, want parts of one study", d, dirs[0])
		}
		if i == 0 {
			first = a
		}
	}
	if first.Physics != rows.Physics() {
		return first, fmt.Errorf("gather: %s was hung with physics %s, this cowl has %s: gather with the program that "+
			"hung it, or hang it again", dirs[0], first.Physics, rows.Physics())
	}
	return first, nil
}
