package labs

import (
	"context"
	"fmt"
	"math"

	"cowl/cmd/cowl/internal/console"
	"cowl/cmd/cowl/internal/flags"
	"cowl/materials"
	"cowl/sim"
	"cowl/sim/lab"
)

type loopCmd struct {
	testFlags
	Length *flags.Length  `placeholder:"LEN" help:"Length of the loop between its clamped ends (15cm); 10 to 20 cm tell most of cloth to wear."`
	Width  *flags.Length  `placeholder:"LEN" help:"Width of the strip (25mm)."`
	Grain  *flags.Degrees `aliases:"angle" placeholder:"DEG" help:"From the length of the strip to the warp: 0 warp, 90 weft, 45 bias. Without it all three."`
}

// loopJSON is what lab loop tells programs. What is at the top, beside loops,
// is of the worst run.
type loopJSON struct {
	Length float64        `json:"length_mm"`
	Loops  []hungLoopJSON `json:"loops"`
	computed
}

// hungLoopJSON is one loop.
type hungLoopJSON struct {
	Grain         float64 `json:"grain_deg"`
	Depth         float64 `json:"depth_mm"`
	Elastica      float64 `json:"elastica_depth_mm"` // of the plate at that grain; 0: limper than is worked out
	BendingLength float64 `json:"bending_length_mm"` // by the heavy elastica; 0: too stiff or too limp to tell
	Peirce        float64 `json:"peirce_bending_length_mm"`
	Rigidity      float64 `json:"bend_uNm"` // by the elastica
	Plate         float64 `json:"plate_bend_uNm"`
}

// Run hangs the loops.
func (l loopCmd) Run(ctx context.Context, c console.Console) error {
	return l.test(ctx, c, func(s specimen) (reading, error) {
		set := lab.LoopSetup{Report: s.report}
		if err := lengths(lengthFlag{"length", l.Length, &set.Length}, lengthFlag{"width", l.Width, &set.Width},
			lengthFlag{"spacing", l.Spacing, &set.Spacing}); err != nil {
			return reading{}, err
		}
		var out loopJSON
		var run lab.Run
		lines := []string{line("Heart loop", "%10s %12s %16s %12s %8s %8s", "depth", "elastica", "bending length",
			"by Peirce", "B", "plate")}
		for _, grain := range l.grains() {
			set.Grain = grain
			if err := s.affordable(set, 1); err != nil {
				return reading{}, err
			}
			r, err := lab.Loop(ctx, s.Stiffness, set)
			if err != nil {
				return reading{}, err
			}
			j := loopOf(s.Stiffness, grain, r)
			out.Length, out.Loops = r.Length*1000, append(out.Loops, j)
			lines = append(lines, line(grainName(grain), "%s", j))
			run = worse(run, r.Run)
		}
		return reading{run, func(how computed) any { out.computed = how; return out }, lines, nil}, nil
	})
}

// grains are the angles at which loops are cut.
func (l loopCmd) grains() []float64 {
	if l.Grain != nil {
		return []float64{float64(*l.Grain)}
	}
	return []float64{0, math.Pi / 2, math.Pi / 4}
}

// grainName is what a strip cut at that angle is called.
func grainName(grain float64) string {
	switch deg := inDegrees(grain); deg {
	case 0:
		return "warp"
	case 90:
		return "weft"
	case 45:
		return "bias"
	default:
		return fmt.Sprintf("%.4g°", deg)
	}
}

// loopOf puts a loop beside the plate that it is cut from.
func loopOf(s sim.Stiffness, grain float64, r lab.LoopResult) hungLoopJSON {
	own := lab.GravityLength(s, grain)
	j := hungLoopJSON{
		Grain: inDegrees(grain), Depth: r.Depth * 1000, BendingLength: r.BendingLength * 1000, Peirce: r.Peirce * 1000,
		Rigidity: r.Rigidity * 1e6, Plate: materials.BendFromLength(own, s.Weight) * 1e6,
	}
	if d := materials.HeartDepth(r.Length / own); !math.IsNaN(d) {
		j.Elastica = d * r.Length * 1000
	}
	return j
}

// String writes a row of the table; a dash is not told.
func (j hungLoopJSON) String() string {
	or := func(width int, format string, v float64) string {
		if v == 0 {
			return fmt.Sprintf("%*s", width, "–")
		}
		return fmt.Sprintf("%*s", width, fmt.Sprintf(format, v))
	}
	return or(10, "%.1f mm", j.Depth) + " " + or(12, "%.1f mm", j.Elastica) + " " + or(16, "%.1f mm", j.BendingLength) +
		" " +
		or(12, "%.1f mm", j.Peirce) + " " + or(8, "%.3g", j.Rigidity) + " " + or(8, "%.3g", j.Plate) + " µN·m"
}

// worse joins two runs: nodes of the larger, steps of both, status of the worse.
func worse(a, b lab.Run) lab.Run {
	steps, seconds := a.Steps+b.Steps, a.Seconds+b.Seconds
	if a.Nodes == 0 || b.Status != sim.Settled || a.Status == sim.Settled && b.Residual > a.Residual {
		a = b
	}
	a.Steps, a.Seconds = steps, seconds
	return a
}
