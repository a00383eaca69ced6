package main

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	"cowl/materials"
	"cowl/sim"
	"cowl/sim/drape"
)

// The measured square has the crossings that were asked for and comes to rest.
func TestBenchSquare(t *testing.T) {
	f, err := materials.Find("polyester-twill")
	if err != nil {
		t.Fatal(err)
	}
	clock, start := new(sim.Clock), time.Now()
	n, r, err := hangSquare(context.Background(), drape.Stiffness(f), 21, clock)
	q := partsOf(clock, time.Since(start).Seconds())
	if sum := q.Listing + q.Layers + q.Yarns + q.Balance + q.Moving; sum > 1 || q.Yarns < sum/3 || q.Layers > q.Yarns/3 {
		t.Errorf("shares of a square in which nothing touches: %+v, want them within 1, yarns a third or more, next to no layers", q)
	}
	if err != nil || n != 21*21 || r.Status != sim.Settled || !(r.Residual > 0 && r.Residual <= 1e-2) ||
		r.Steps == 0 {
		t.Errorf("hangSquare(21) = %d nodes, %+v, %v, want 441 nodes settled at 0.01 or less", n, r, err)
	}
	// Half a sine wave of height h over span s is longer than s by π²h²/4s² of it,
	// for a flat one.
	if h := arcDepth(1.01, 1); math.Abs(h-math.Sqrt(0.04)/math.Pi) > 1e-3 {
		t.Errorf("arcDepth(1.01, 1) = %.4f m, want %.4f", h, math.Sqrt(0.04)/math.Pi)
	}
}

// The table tells how the cost grows, and says so only from the second row of a kind on.
func TestBenchTable(t *testing.T) {
	a, b := benchRow{What: "first", Nodes: 1000, Steps: 10, Seconds: 1}, benchRow{What: "second", Nodes: 4000, Steps: 20,
		Seconds: 8}
	if b.Growth = growth(a, b); math.Abs(b.Growth-1.5) > 1e-12 {
		t.Errorf("growth = %g, want 1.5: eight times the seconds for four times the nodes", b.Growth)
	}
	var out strings.Builder
	benchTable(&out, []benchRow{a, b})
	lines := strings.Split(out.String(), "\n")
	if len(lines) < 3 || !strings.Contains(lines[2], "1.50") || !strings.Contains(lines[2], "100.000") ||
		strings.Contains(lines[1], "NaN") {
		t.Errorf("table:\n%s\nwant a growth of 1.50 and 100.000 µs a node and step in the second row", out.String())
	}
	tasks, err := benchCmd{Quick: true}.tasks()
	if err != nil || len(tasks) != 5 || !tasks[0].first || !tasks[3].first || tasks[1].first {
		t.Errorf("quick: %d tasks, %v, want 3 drapes and 2 squares, the first of each a beginning", len(tasks), err)
	}
}
