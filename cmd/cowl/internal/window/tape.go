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

// tapeOnCloth is where a tape lies on the sheet of a pane, and what it says there. Where it
// lies holds as long as the sheet has the same triangles, what it says for one moment.
type tapeOnCloth struct {
	shape   *[3]int32
	serial  uint64
	version int
	runs    [][]footing
	says    taped
}

// update follows and measures the tape anew where it, or the cloth, has moved.
func (l *tapeOnCloth) update(t *tape, s *mesh.Sheet, serial uint64) {
	if len(s.Tris) == 0 || l.serial == serial && l.version == t.version {
		return
	}
	if l.shape != &s.Tris[0] || l.version != t.version {
		*l = tapeOnCloth{shape: &s.Tris[0]}
		for k := 1; k < len(t.at); k++ {
			l.follow(s, t.at[k-1], t.at[k])
		}
	}
	l.serial, l.version = serial, t.version
	l.measure(t, s)
}

// follow lays the tape on from one place to the next; it begins a new run where it left
// the cloth.
func (l *tapeOnCloth) follow(s *mesh.Sheet, from, to r2.Vec) {
	way := r2.Sub(to, from)
	l.says.cut += r2.Norm(way)
	n := max(int(math.Ceil(r2.Norm(way)/tapeStep)), 1)
	guess, on := len(s.Tris), false
	for i := range n + 1 {
		f, ok := foot(s, r2.Add(from, r2.Scale(float64(i)/float64(n), way)), guess)
		switch {
		case !ok:
			l.says.broken = true
		case !on:
			l.runs = append(l.runs, []footing{f})
		default:
			last := len(l.runs) - 1
			l.runs[last] = append(l.runs[last], f)
		}
		if on = ok; ok {
			guess = f.tri
		}
	}
}

// measure reads the tape off the cloth as it lies now.
func (l *tapeOnCloth) measure(t *tape, s *mesh.Sheet) {
	l.says.along, l.says.chord = 0, 0
	for _, run := range l.runs {
		for k := 1; k < len(run); k++ {
			l.says.along += r3.Norm(r3.Sub(run[k].at(s), run[k-1].at(s)))
		}
	}
	if n := len(t.at); n > 1 {
		a, okA := inSpace(s, t.at[0])
		b, okB := inSpace(s, t.at[n-1])
		if okA && okB {
			l.says.chord = r3.Norm(r3.Sub(b, a))
		}
	}
}

// lines are the tape as the stage draws it on the drape.
func (l *tapeOnCloth) lines(s *mesh.Sheet) (out []stage.Line) {
	for _, run := range l.runs {
		line := stage.Line{Ink: tapeInk}
		for _, f := range run {
			line.At = append(line.At, f.at(s))
		}
		out = append(out, line)
	}
	return out
}

// tapeInk is the colour of the tape, yellow as tapes are; its rim is dark.
var tapeInk = color.RGBA{0xF2, 0xC1, 0x1D, 0xFF}
