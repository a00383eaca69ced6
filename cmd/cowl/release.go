package main

import (
	"context"
	"fmt"
	"io"

	"cowl/sim/study"
)

// releaseJSON tells what release slashes gave: the same hand, without them and
// with them.
type releaseJSON struct {
	WaistBefore  float64 `json:"waist_pull_before_N"` // of all waist pins together
	WaistAfter   float64 `json:"waist_pull_N"`
	SideBefore   float64 `json:"side_pull_before_N"`
	SideAfter    float64 `json:"side_pull_N"`
	StrainBefore float64 `json:"max_strain_before_percent"`
	StrainAfter  float64 `json:"max_strain_percent"`
	DropBefore   float64 `json:"edge_drop_before_mm"`
	DropAfter    float64 `json:"edge_drop_mm"`
}

// compare hangs the piece again without its release slashes.
func (d drapeCmd) compare(ctx context.Context, c console, h *hung) error {
	if len(h.piece.Releases) == 0 {
		return nil
	}
	whole := *h
	whole.piece.Releases = nil
	if err := d.hang(ctx, c, &whole); err != nil {
		return err
	}
	a, b := whole.run, h.run
	pull := func(r *study.Run, pin string) float64 { return r.Drape.PullOf(pin) }
	h.release = &releaseJSON{
		pull(a, "waist"), pull(b, "waist"), pull(a, "side"), pull(b, "side"),
		a.Outcome.MaxStrain, b.Outcome.MaxStrain, a.Outcome.EdgeDrop, b.Outcome.EdgeDrop,
	}
	return nil
}

// report prints what the slashes gave.
func (r *releaseJSON) report(w io.Writer) {
	fmt.Fprintf(w, "  %-13swaist pins pull %.2f N together, without the slashes %.2f N; side pins %.2f N, without %.2f N\n", "Released", r.WaistAfter, r.WaistBefore, r.SideAfter, r.SideBefore)
	fmt.Fprintf(w, "  %-13syarns change length by %.1f %% at most, without %.1f %%; edge drop %.1f cm, without %.1f cm\n", "", r.StrainAfter, r.StrainBefore, r.DropAfter/10, r.DropBefore/10)
}
