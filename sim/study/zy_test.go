package study

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"testing"
)

func TestZY(t *testing.T) {
	mm, _ := strconv.ParseFloat(os.Getenv("MM"), 64)
	h, fine := mm/1000, 0.75*mm/1000
	if mm == 20 {
		fine = 0.016
	}
	ctx := context.Background()
	js := []Job{job(t, 0.11, h, stiff), job(t, 0.13, h, stiff), job(t, 0.13, fine, stiff)}
	var want [3]float64
	for k, j := range js {
		f, _ := Hang(ctx, j)
		o, _, _ := f.outcome(0)
		want[k] = o.EdgeDrop
	}
	for _, steps := range []int{1, 20, 60, 150, 400, 1000} {
		j := job(t, 0.11, h, limp)
		l, _ := j.lay(j.leading())
		d, _ := l.place(ctx)
		d.settle(ctx, roughly, steps, true)
		for k, j := range js {
			n, err := d.carry(j)
			if err != nil || n == nil {
				fmt.Println("not carried", err)
				continue
			}
			n.shift(ctx)
			n, _ = n.rest(ctx)
			o, _, _ := n.outcome(0)
			fmt.Printf("after %4d change %d  drop %6.1f want %6.1f  steps %d  %v pierced %d knot %v\n", steps, k, o.EdgeDrop, want[k], n.Steps, n.Result.Status, n.Pierced(), n.knotted(make([]bool, len(n.State.Pos))))
			d = n
		}
	}
}
