package window

import (
	"image/color"
	"math"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// tape is a tape measure laid on the cloth: from place to place along lines that are
// straight on the flat piece, so that what hangs can be held against what was cut.
type tape struct {
	at      []r2.Vec // m, on the flat piece
	version int      // grows with every change
}

// add lays the tape on to a place.
func (t *tape) add(q r2.Vec) { t.at, t.version = append(t.at[:len(t.at):len(t.at)], q), t.version+1 }

// back takes the last place back, and clear takes the tape off.
func (t *tape) back() {
	if n := len(t.at); n > 0 {
		t.at, t.version = t.at[:n-1], t.version+1
	}
}
func (t *tape) clear() { t.at, t.version = nil, t.version+1 }

// taped is what a tape says of one sheet, m.
type taped struct {
	along  float64 // on the cloth as it hangs
	cut    float64 // on the flat piece
	chord  float64 // straight through the air, from the first place to the last
	broken bool    // the tape leaves the cloth, where nothing is measured
}

// tapeStep is how finely a tape follows the cloth, m.
const tapeStep = 0.002

// measure follows the tape over a sheet and returns the runs of places on it as well.
func (t *tape) measure(s *mesh.Sheet) (out taped, runs [][]r3.Vec) {
	var run []r3.Vec
	guess := len(s.Tris)
	for k := 1; k < len(t.at); k++ {
		from, to := t.at[k-1], t.at[k]
		out.cut += r2.Norm(r2.Sub(to, from))
		n := max(int(math.Ceil(r2.Norm(r2.Sub(to, from))/tapeStep)), 1)
		for i := range n + 1 {
			f, ok := foot(s, r2.Add(from, r2.Scale(float64(i)/float64(n), r2.Sub(to, from))), guess)
			if !ok {
				out.broken = true
				if len(run) > 1 {
					runs = append(runs, run)
				}
				run = nil
				continue
			}
			guess = f.tri
			run = append(run, f.at(s))
			if m := len(run); m > 1 {
				out.along += r3.Norm(r3.Sub(run[m-1], run[m-2]))
			}
		}
	}
	if len(run) > 1 {
		runs = append(runs, run)
	}
	if n := len(t.at); n > 1 {
		a, okA := inSpace(s, t.at[0])
		b, okB := inSpace(s, t.at[n-1])
		if okA && okB {
			out.chord = r3.Norm(r3.Sub(b, a))
		}
	}
	return out, runs
}

// tapeInk is the colour of the tape, yellow as tapes are; its rim is dark.
var tapeInk = color.RGBA{0xF2, 0xC1, 0x1D, 0xFF}

// laidTape is a tape as it lies on the cloth of a pane. It holds as long as the moment
// and the tape are the same.
type laidTape struct {
	serial  uint64
	version int
	says    taped
	runs    [][]r3.Vec
}

// update measures anew where the cloth or the tape has moved.
func (l *laidTape) update(t *tape, s *mesh.Sheet, serial uint64) {
	if l.serial == serial && l.version == t.version {
		return
	}
	*l = laidTape{serial: serial, version: t.version}
	l.says, l.runs = t.measure(s)
}

// lines are the tape as the stage draws it on the drape.
func (l *laidTape) lines() (out []stage.Line) {
	for _, run := range l.runs {
		out = append(out, stage.Line{At: run, Ink: tapeInk})
	}
	return out
}
