package svg

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cowl/mesh/read/outline"

	"gonum.org/v1/gonum/spatial/r2"
)

// pathLines reads the data of a path (SVG 1.1, chapter 8.3), curves broken
// into chords.
func pathLines(d string) ([]outline.Chain, error) {
	if len(d) > mostLetters {
		return nil, fmt.Errorf("path of %d letters, want at most %d", len(d), mostLetters)
	}
	p := &pen{rest: d}
	for {
		p.blanks()
		if p.rest == "" {
			p.lift(false)
			return p.done, nil
		}
		c := p.rest[0]
		if strings.IndexByte("MmLlHhVvCcSsQqTtAaZz", c) < 0 {
			if p.command == 0 || p.command == 'Z' || p.command == 'z' {
				return nil, fmt.Errorf("path: %.20q, want a command", p.rest)
			}
		} else {
			p.command, p.rest = c, p.rest[1:]
			if p.start == nil && c != 'M' && c != 'm' {
				return nil, errors.New("path: a path begins with M")
			}
		}
		if err := p.draw(); err != nil {
			return nil, fmt.Errorf("path: %w", err)
		}
		if p.points > outline.MostPoints {
			return nil, fmt.Errorf("path of more than %d points, want one outline", outline.MostPoints)
		}
	}
}

// pen walks along a path.
type pen struct {
	rest    string
	command byte
	start   *vec // of the line that is drawn; nil: none yet
	at      vec
	control vec  // last control point of a curve
	after   byte // kind of curve before: C, Q or 0
	line    []vec
	done    []outline.Chain
	points  int
}

// lift ends the line that is drawn.
func (p *pen) lift(closed bool) {
	if len(p.line) > 1 {
		p.done = append(p.done, outline.Chain{Points: p.line, Closed: closed})
	}
	p.line = nil
}

// to draws a straight line.
func (p *pen) to(v vec) {
	if p.line == nil {
		p.line = []vec{p.at}
	}
	p.line = append(p.line, v)
	p.points++
	p.at = v
}

// draw does what the command asks, once.
func (p *pen) draw() error {
	relative := p.command >= 'a'
	kind := p.command &^ 0x20 // as a capital
	if kind == 'Z' {
		p.lift(true)
		p.at, p.after = *p.start, 0
		return nil
	}
	v, err := p.arguments(kind)
	if err != nil {
		return err
	}
	base := vec{}
	if relative {
		base = p.at
	}
	pair := func(i int) vec { return r2.Add(base, vec{X: v[i], Y: v[i+1]}) }
	before := p.after
	p.after = 0
	switch kind {
	case 'M':
		p.lift(false)
		p.at = pair(0)
		start := p.at
		p.start = &start
		p.command-- // M becomes L, m becomes l: further pairs are lines
	case 'L':
		p.to(pair(0))
	case 'H':
		p.to(vec{X: base.X + v[0], Y: p.at.Y})
	case 'V':
		p.to(vec{X: p.at.X, Y: base.Y + v[0]})
	case 'C':
		p.cubic(pair(0), pair(2), pair(4))
	case 'S':
		p.cubic(p.reflected(before, 'C'), pair(0), pair(2))
	case 'Q':
		p.quadratic(pair(0), pair(2))
	case 'T':
		p.quadratic(p.reflected(before, 'Q'), pair(0))
	case 'A':
		p.arc(v[0], v[1], v[2], v[3] != 0, v[4] != 0, pair(5))
	}
	return nil
}

// arguments reads the numbers of a command.
func (p *pen) arguments(kind byte) ([]float64, error) {
	n := map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7}[kind]
	v := make([]float64, n)
	for i := range v {
		read := p.number
		if kind == 'A' && (i == 3 || i == 4) {
			read = p.flag
		}
		var err error
		if v[i], err = read(); err != nil {
			return nil, err
		}
	}
	return v, nil
}

// reflected returns the control point that goes on smoothly from a curve of
// the same kind.
func (p *pen) reflected(before, kind byte) vec {
	if before != kind {
		return p.at
	}
	return r2.Sub(r2.Scale(2, p.at), p.control)
}

// chordsOf is into how many chords a curve is broken: the curve of a garment
// is well within a twentieth of a millimetre of them.
const chordsOf = 32

// cubic draws a cubic Bézier curve.
func (p *pen) cubic(b, c, d vec) {
	a := p.at
	for i := 1; i <= chordsOf; i++ {
		t := float64(i) / chordsOf
		s := 1 - t
		v := r2.Add(r2.Add(r2.Scale(s*s*s, a), r2.Scale(3*s*s*t, b)), r2.Add(r2.Scale(3*s*t*t, c), r2.Scale(t*t*t, d)))
		p.to(v)
	}
	p.at, p.control, p.after = d, c, 'C'
}

// quadratic draws a quadratic Bézier curve.
func (p *pen) quadratic(b, c vec) {
	a := p.at
	p.cubic(r2.Add(r2.Scale(1.0/3, a), r2.Scale(2.0/3, b)), r2.Add(r2.Scale(1.0/3, c), r2.Scale(2.0/3, b)), c)
	p.control, p.after = b, 'Q'
}

// blanks skips blanks and one comma.
func (p *pen) blanks() { p.rest = strings.TrimLeft(p.rest, " ,\t\r\n") }

// flag reads a 0 or 1, which may stand against the next number.
func (p *pen) flag() (float64, error) {
	p.blanks()
	if p.rest == "" || p.rest[0] != '0' && p.rest[0] != '1' {
		return 0, fmt.Errorf("%.20q, want a flag of an arc, 0 or 1", p.rest)
	}
	v := float64(p.rest[0] - '0')
	p.rest = p.rest[1:]
	return v, nil
}

// number reads a number; it ends where no number goes on, as in 1-2 or .5.5.
func (p *pen) number() (float64, error) {
	p.blanks()
	n, dot, e := 0, false, false
scan:
	for ; n < len(p.rest); n++ {
		switch c := p.rest[n]; {
		case c >= '0' && c <= '9':
		case (c == '-' || c == '+') && (n == 0 || p.rest[n-1] == 'e' || p.rest[n-1] == 'E'):
		case c == '.' && !dot && !e:
			dot = true
		case (c == 'e' || c == 'E') && !e && n > 0:
			e = true
		default:
			break scan
		}
	}
	v, err := strconv.ParseFloat(p.rest[:n], 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%.20q, want a finite number", p.rest)
	}
	p.rest = p.rest[n:]
	return v, nil
}
