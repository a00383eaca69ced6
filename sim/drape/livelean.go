package drape

import (
	"context"
	"errors"
	"slices"

	"cowl/mesh/limit"
	"cowl/sim"
)

// errMoving is why a wearer cannot bend.
var errMoving = limit.Errorf("lean", "the cloth has not come to rest: wait until it has, then bend the wearer")

// Lean bends the wearer of a copy of the cloth that rests forward by angle (rad) and up
// again; what hangs stays as it is. It waits for the copy alone and may be called from any
// goroutine; report is told how far it is, 0 to 1, on that of the caller. Cloth that moves or
// hangs free, an angle out of range and the end of ctx or of the Live are errors.
func (l *Live) Lean(ctx context.Context, angle float64, report func(share float64)) (Lean, error) {
	got := make(chan *Drape, 1)
	l.order(func(w *walker) { got <- w.copied() })
	var d *Drape
	select {
	case d = <-got:
	case <-ctx.Done():
		return Lean{}, ctx.Err()
	case <-l.ctx.Done():
		return Lean{}, errors.New("drape: it hangs no more")
	}
	if d == nil {
		return Lean{}, errMoving
	}
	d.Job.Lean, d.Job.Report = angle, func(p Progress) { report(p.Share) }
	if err := d.Job.checkLean(); err != nil {
		return Lean{}, err
	}
	out, err := d.leaned(ctx, angle)
	return out, errors.Join(err, ctx.Err())
}

// copied is what rests, with nothing that the walk changes; nil while it moves.
func (w *walker) copied() *Drape {
	if w.d == nil || w.next != nil || w.busy || w.stage != StageRest || w.d.Result.Status != sim.Settled {
		return nil
	}
	seen := w.seen()
	d, system := seen.snapshot(seen.Result.Residual), *seen.System
	system.Holds, system.Alone = slices.Clone(system.Holds), true
	d.System, d.Result, d.Job.watch = &system, seen.Result, nil
	return d
}
