package draft

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// cornerAngle returns the angle inside the piece where one line ends and the next begins (rad).
func cornerAngle(in, out []r2.Vec) float64 {
	n := len(in)
	return math.Abs(turn(r2.Sub(in[n-2], in[n-1]), r2.Sub(out[1], out[0])))
}

// Join is how front and back meet where a seam ends that joins them.
type Join struct {
	Name        string
	Front, Back float64 // rad, inside each piece between the seam and the line that runs on over it
}

// Angle returns the angle of the line over the closed seam: π runs on without a corner.
func (j Join) Angle() float64 { return j.Front + j.Back }

// Joined lists the ends of the seams of front and back: shoulder tip, underarm and side
// waist, or hem.
func Joined(p Cowl, b Back) []Join {
	join := func(name string, cowl, plain float64) Join {
		front, back := p.Worn.frontFirst(cowl, plain)
		return Join{name, front, back}
	}
	return []Join{
		join("armhole at the shoulder tip", cornerAngle(p.Shoulder, p.Armhole), cornerAngle(b.Shoulder, b.Armhole)),
		join("armhole at the underarm", cornerAngle(p.Armhole, p.Side), cornerAngle(b.Armhole, b.Side)),
		join(p.LowerEdge()+" at the side seam", cornerAngle(p.Side, p.Waist), cornerAngle(b.Side, b.Waist)),
	}
}

// onwards returns the angle that the back takes where the front has one, so that the line
// runs on; the front's is its own affair, but the back turns by no more than mostBlend
// from square.
func onwards(front float64) float64 {
	return min(max(math.Pi-front, math.Pi/2-mostBlend), math.Pi/2+mostBlend)
}

// blend draws armhole and waist of the back on from those of the front p.
func (b *Back) blend(p Cowl) {
	b.Armhole = armholeFrom(b.Armhole, b.Shoulder, b.Side,
		onwards(cornerAngle(p.Shoulder, p.Armhole)), onwards(cornerAngle(p.Armhole, p.Side)))
	if p.Hem == 0 {
		b.Waist, b.Dart = waistFrom(b.Side, b.Waist, b.Dart, onwards(cornerAngle(p.Side, p.Waist)))
	}
}
