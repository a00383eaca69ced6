package main

import (
	"io"
	"testing"

	"cowl/cmd/cowl/internal/console"
	"cowl/sim/fold"

	"gonum.org/v1/gonum/spatial/r2"
)

// What is drawn of a real drape: the facing runs from the edge of the front to
// the free edge of the drawn cloth, every counted fold has its number in the views
// where the section has it.
func TestSectionOfADrape(t *testing.T) {
	if testing.Short() {
		t.Skip("hangs a cloth")
	}
	d := drapeCmd{}
	d.Quiet = true
	h, err := d.prepare()
	if err != nil {
		t.Fatal(err)
	}
	// On 16 mm the radius, which is read from a smoothed section, is twice that of a crest.
	h.Style.Hang.Spacing, h.Style.Hang.Folds = 0.012, 2
	if err := d.hang(t.Context(), console.Console{Out: io.Discard, Err: io.Discard}, h); err != nil {
		t.Fatal(err)
	}
	sec, marks := h.Section(), h.Scene().Marks
	if gap := r2.Norm(r2.Sub(sec.Facing[0], sec.Cloth[0])); gap > 0.001 {
		t.Errorf("the facing starts %.4f m from the edge of the front, want none", gap)
	}
	sheet, free := h.Smooth().Sheet, r2.Vec{Y: h.Cowl.FoldY + h.Cowl.Facing}
	near := 0
	for i, q := range sheet.Flat {
		if r2.Norm(r2.Sub(q, free)) < r2.Norm(r2.Sub(sheet.Flat[near], free)) {
			near = i
		}
	}
	last := sec.Facing[len(sec.Facing)-1]
	off := r2.Norm(r2.Sub(last, r2.Vec{X: sheet.Pos[near].Z, Y: sheet.Pos[near].Y}))
	if apart := r2.Norm(r2.Sub(sheet.Flat[near], free)); off > apart+0.002 {
		t.Errorf("the facing ends %.4f m from the free edge of the drawn cloth, want at most %.4f m", off, apart+0.002)
	}
	n, crests := 0, zone(&h.Run.Outcome, fold.AboveBust)
	for _, f := range sec.Folds {
		if !f.Counted {
			continue
		}
		if n++; n > len(marks) {
			break
		}
		// A crest is read between the points of the section, on a patch; the mark lies on
		// a facet. On the bias that is the diagonal of a cell, a chord √2·h that misses
		// a crest of radius r by 2h²/8r.
		h := h.Style.Hang.Spacing
		m, facet := marks[n-1], 2*h*h/(8*crests[n-1].Radius)
		if off := r2.Norm(r2.Sub(f.At, r2.Vec{X: m.At.Z, Y: m.At.Y})); m.Number != n || off > 0.001+facet {
			t.Errorf("fold %d of the section has mark %d in the views, %.4f m away, want %d at most %.4f m from the crest", n,
				m.Number, off, n, 0.001+facet)
		}
	}
	if n != len(marks) || n != h.Run.Each[0].FoldCount {
		t.Errorf("%d folds are numbered in the section and %d in the views, want %d", n, len(marks), h.Run.Each[0].FoldCount)
	}
	if n == 0 {
		t.Error("the cowl of the demo shows no fold, want one or more")
	}
}
