//go:build unix

package study

import (
	"sync/atomic"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/study/rows"
	"cowl/materials/worked"
)

// A finished study of 6 fabrics, 8 extensions and 5 placings is shown again
// within 2 s. It is the time of the processor that is measured, which does not
// depend on what else the machine does.
func TestResumeLarge(t *testing.T) {
	dir := t.TempDir()
	spec := asked(t, "sweep", 5, []string{"extension=0cm:14cm:2cm"}, "polyester-twill", "wool-tropical", "cotton-broad",
		"polyester-faille", "silk-chiffon-memory", "denim-memory")
	for _, want := range []int32{240, 0} {
		var calls atomic.Int32
		start := worked.Time(t)
		w, _, errs := faked(dir, rows.Part{}, &calls)
		if err := w.study(t.Context(), spec); err != nil || calls.Load() != want {
			t.Fatalf("%d drapes, %v, %s, want %d", calls.Load(), err, errs, want)
		}
		took := worked.Time(t) - start
		t.Logf("%d drapes: %v", want, took)
		if want == 0 && took > 2*time.Second {
			t.Errorf("the finished study took %v again, want 2 s or less", took)
		}
	}
}
