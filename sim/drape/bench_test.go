package drape

import (
	"context"
	"testing"
)

// hungDrape keeps the benchmarked work from being optimised away.
var hungDrape *Drape

// The whole way of the demo: placing, letting go, rest.
func BenchmarkHang(b *testing.B) {
	for _, mm := range []struct {
		name    string
		spacing float64
	}{{"spacing=12mm", 0.012}, {"spacing=8mm", 0.008}} {
		b.Run(mm.name, func(b *testing.B) {
			for b.Loop() {
				d, err := Hang(context.Background(), job(b, 0.11, mm.spacing, limp))
				if err != nil {
					b.Fatal(err)
				}
				hungDrape = d
			}
			b.ReportMetric(float64(hungDrape.Steps), "steps")
			b.ReportMetric(float64(len(hungDrape.State.Pos)), "nodes")
		})
	}
}
