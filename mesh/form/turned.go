package form

import (
	"slices"

	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r3"
)

// Turned returns the form of f turned by half a turn about Y, so that a back cowl hangs
// before it as a front does: Z points backward and X to the wearer's right. All that is
// said of the front holds of the back: FrontNeck is the nape, CF runs down the centre
// back, BridgedFront bridges from shoulder blade to shoulder blade, WaistPoint counts
// from CB, and Apex is the point of the back waist dart, level with the underarm.
func (f *Form) Turned() *Form {
	// The form is its own mirror image about X = 0: half a turn is the mirror image in Z.
	t := &Form{body: f.body, shape: f.shape, turned: !f.turned, grid: f.grid.turned(), surf: turnedSurface(f.surf)}
	s := f.seams
	t.seams = seams{
		shoulder: s.shoulder.turned(), side: s.side.turned(), plate: s.plate.turned().backward(),
		waist: s.waistRim.turned(), waistRim: s.waist.turned(),
		neck: s.neck.turned().backward(), cf: s.cb.turned(), cb: s.cf.turned(),
	}
	t.front = bridgeFront(t.surf)
	return t
}

func turnedSurface(s mesh.Surface) mesh.Surface {
	out := mesh.Surface{Pos: turnedAll(s.Pos), Normal: turnedAll(s.Normal)}
	for _, t := range s.Tris {
		out.Tris = append(out.Tris, [3]int32{t[0], t[2], t[1]}) // counter-clockwise from outside again
	}
	return out
}

func turnedAll(pts []r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(pts))
	for i, p := range pts {
		out[i] = r3.Vec{X: p.X, Y: p.Y, Z: -p.Z}
	}
	return out
}

func (l line) turned() line { return newLine(turnedAll(l.pts)) }

// backward is l from its end to its beginning.
func (l line) backward() line {
	slices.Reverse(l.pts)
	return newLine(l.pts)
}

// turned mirrors the grid in Z.
func (g *grid) turned() *grid {
	t := *g
	t.z0 = -(g.z0 + float64(g.nz-1)*gridStep)
	t.d = slices.Clone(g.d)
	for o := 0; o < len(t.d); o += g.nz {
		slices.Reverse(t.d[o : o+g.nz])
	}
	return &t
}

// blade is where the back waist dart ends, on the wearer's left of a form that is not
// turned: half way from CB to the armhole, level with the underarm (the draft of the back,
// see draft.BackFromBody).
func (f *Form) blade() r3.Vec {
	x, y := f.body.BackWidth/4, f.shape.at.underarm
	return r3.Vec{X: x, Y: y, Z: f.shape.backZ(x, y)}
}
