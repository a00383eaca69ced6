package study

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"

	"cowl/cmd/cowl/internal/study/readback"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/sim/drape"
)

// Cloths whose wearer bends are told in a table of their own, in the mean of the hands, and
// in the columns of table.csv; where nobody bends there is neither table nor figure.
func TestLeanTable(t *testing.T) {
	for _, lean := range []float64{0, math.Pi / 6} {
		var calls atomic.Int32
		dir := t.TempDir()
		w, _, errs := faked(dir, rows.Part{}, &calls)
		hang := w.hang
		w.hang = func(ctx context.Context, c oneCase, k int) (rows.Made[Row], error) {
			made, err := hang(ctx, c, k)
			if c.style.Hang.Lean > 0 {
				at := func(off, open float64, kept int) drape.Posture {
					return drape.Posture{StandOff: off + 0.002*float64(k), Opening: open, Kept: kept, Settled: true}
				}
				made.Value.Outcome.Lean = &drape.Lean{Angle: c.style.Hang.Lean, Upright: at(0.019, 0.0022, 2),
					Bent: at(0.025, 0.003, 2), Back: at(0.021, 0.0025, 1)}
			}
			return made, err
		}
		spec := asked(t, "compare", 2, nil, "polyester-twill", "wool-tropical")
		s, err := spec.style()
		if err != nil {
			t.Fatal(err)
		}
		s.Hang.Lean = lean
		spec.Style = string(s.YAML())
		if err := w.study(t.Context(), spec); err != nil {
			t.Fatalf("lean %g: %v, %s", lean, err, errs)
		}
		sheet, err := os.ReadFile(filepath.Join(dir, "index.html"))
		if err != nil {
			t.Fatal(err)
		}
		readback.WellFormed(t, sheet)
		table, err := os.ReadFile(filepath.Join(dir, "table.csv"))
		if err != nil {
			t.Fatal(err)
		}
		bent := strings.Contains(string(sheet), "Bent forward by 30° and up again")
		figure := strings.Contains(strings.Split(string(table), "\n")[1], ",26,") // 25 and 27 mm
		if bent != (lean > 0) || figure != (lean > 0) {
			t.Errorf("lean %g: on the sheet %t, in table.csv %t, want both or none", lean, bent, figure)
		}
		cells := regexp.MustCompile(`<[^>]*>\s*`).ReplaceAllString(string(sheet), "|")
		row := regexp.MustCompile(`wool-tropical\|+20\|+22\|+26\|+30\|+22\|+25\|+2, 2, 1\|`)
		if lean > 0 && !row.MatchString(cells) {
			t.Errorf("no row %v in %s, want the means of two hands", row, cells[strings.Index(cells, "Bent forward by"):])
		}
	}
}
