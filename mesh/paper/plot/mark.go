package plot

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// mark is the room of a number beside a line: a box about its middle, turned. All in mm.
type mark struct {
	on             r2.Vec // the line
	in             r2.Vec // unit, from there to the number
	deep           float64
	mid, along, up r2.Vec // along and up are unit, of the number
	wide, high     float64
}

// mark is the room of a number so far in from its line.
func (p place) mark(wide, high, deep float64) mark {
	along := r2.Vec{X: -p.in.Y, Y: p.in.X}
	if along.X < 0 || along.X == 0 && along.Y > 0 {
		along = r2.Scale(-1, along) // it reads from below or from the right
	}
	mid := r2.Add(p.on, r2.Scale(deep+markKeep+cutPen.Width+high/2, p.in))
	return mark{p.on, p.in, deep, mid, along, r2.Vec{X: along.Y, Y: -along.X}, wide, high}
}

// end is where the line to a number ends.
func (m mark) end() r2.Vec { return r2.Sub(m.mid, r2.Scale(m.high/2+markKeep, m.in)) }

// meetsLine is meets of a whole line.
func (m mark) meetsLine(s Stroke) bool {
	for i := 1; i < len(s.Points); i++ {
		if m.meets(s.Points[i-1], s.Points[i]) {
			return true
		}
	}
	return s.Closed && m.meets(s.Points[len(s.Points)-1], s.Points[0])
}

// meetsMark is meets of another room and of the line to it.
func (m mark) meetsMark(other mark) bool {
	along, up := r2.Scale(other.wide/2, other.along), r2.Scale(other.high/2, other.up)
	a, b := r2.Add(other.mid, along), r2.Sub(other.mid, along)
	return m.meets(r2.Add(a, up), r2.Add(b, up)) || m.meets(r2.Sub(a, up), r2.Sub(b, up)) ||
		m.meets(r2.Add(a, up), r2.Sub(a, up)) || m.meets(r2.Add(b, up), r2.Sub(b, up)) ||
		m.deep > 0 && (m.meets(other.on, other.end()) || other.meets(m.on, m.end()))
}

// meets reports whether the line from a to b comes nearer to the room than is kept clear.
func (m mark) meets(a, b r2.Vec) bool {
	far := (m.wide+m.high)/2 + 2*markKeep // around it all
	if max(a.X, b.X) < m.mid.X-far || min(a.X, b.X) > m.mid.X+far || max(a.Y, b.Y) < m.mid.Y-far ||
		min(a.Y, b.Y) > m.mid.Y+far {
		return false
	}
	from, to := 0.0, 1.0 // of the line, what is left of it within the room
	for _, side := range [2]struct {
		dir  r2.Vec
		half float64
	}{{m.along, m.wide/2 + markKeep}, {m.up, m.high/2 + markKeep}} {
		p, q := r2.Dot(r2.Sub(a, m.mid), side.dir), r2.Dot(r2.Sub(b, m.mid), side.dir)
		if p == q {
			if math.Abs(p) > side.half {
				return false
			}
			continue
		}
		s, t := (-side.half-p)/(q-p), (side.half-p)/(q-p)
		from, to = max(from, min(s, t)), min(to, max(s, t))
	}
	return from <= to
}
