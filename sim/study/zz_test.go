package study

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"testing"
)

func TestZZ(t *testing.T) {
	mm, _ := strconv.ParseFloat(os.Getenv("MM"), 64)
	h := mm / 1000
	if h == 0 {
		h = 0.020
	}
	ctx := context.Background()
	type chg struct {
		ext float64
		fab string
	}
	ways := [][]chg{
		{{0.11, limp}, {0.11, stiff}, {0.13, stiff}, {0.09, stiff}, {0.06, limp}, {0.12, limp}},
		{{0.14, stiff}, {0.10, limp}, {0.03, limp}, {0.10, stiff}},
	}
	for w, way := range ways {
		for _, half := range []bool{false, true} {
			var d *Drape
			for k, c := range way {
				j := job(t, c.ext, h, c.fab)
				j.Seed = uint64(w + 1)
				fresh, err := Hang(ctx, j)
				if err != nil {
					t.Fatal(err)
				}
				r, _, _ := fresh.outcome(0)
				if k == 0 {
					d = fresh
					if half {
						l, _ := j.lay(j.leading())
						d, _ = l.place(ctx)
					}
					continue
				}
				n, err := d.carry(j)
				if err != nil || n == nil {
					fmt.Println("not carried", err)
					d = fresh
					continue
				}
				n.shift(ctx)
				n, _ = n.rest(ctx)
				o, _, _ := n.outcome(0)
				fmt.Printf("way %d half %v %.2f %-24s drop %6.1f want %6.1f  steps %d / %d  %v pierced %d knot %v folds %d/%d\n", w, half, c.ext, c.fab, o.EdgeDrop, r.EdgeDrop, n.Steps, fresh.Steps, n.Result.Status, n.Pierced(), n.knotted(make([]bool, len(n.State.Pos))), o.FoldCount, r.FoldCount)
				d = n
			}
		}
	}
}
