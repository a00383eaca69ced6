//go:build cgo

package window

import (
	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/sim/fault"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// dummy is a dress form with what is drawn of it. That of a cowl at the back is turned, so
// that the eye that looks from the front sees its back.
type dummy struct {
	form    *form.Form
	surface mesh.Surface
	hanger  map[float64]*mesh.Surface // in place of the form, for cloth that hangs free, by its cowl point, m
	seams   [][]r3.Vec
	front   []r2.Vec // m, (Z, Y) of its outline on the centre front
}

// standing is a body as a form of it stands: with the side to the eye at which the cowl is.
type standing struct {
	body body.Body
	worn draft.Side
}

// standingOf says for which form a style is cut.
func standingOf(s *style.Style) (standing, error) {
	b, err := s.Wearer()
	return standing{b, s.Cut.Worn}, err
}

func newDummy(w standing) (*dummy, error) {
	f, err := style.FormOf(w.body, w.worn)
	if err != nil {
		return nil, err
	}
	d := &dummy{form: f, surface: f.Surface(), seams: f.SeamLines(), hanger: map[float64]*mesh.Surface{}}
	for _, p := range f.CF() {
		d.front = append(d.front, r2.Vec{X: p.Z, Y: p.Y})
	}
	return d, nil
}

// hangerAt returns the hanger for cloth with that cowl point, m from the neck.
func (d *dummy) hangerAt(cowlPoint float64) *mesh.Surface {
	if d.hanger[cowlPoint] == nil {
		h := drawn.Hanger(d.form, cowlPoint)
		d.hanger[cowlPoint] = &h
	}
	return d.hanger[cowlPoint]
}

// dummies makes forms away from the thread of the window: one takes a second or
// two. Each is made once.
type dummies struct {
	made  map[standing]*dummy
	begun map[standing]bool
}

// get returns the form of w, or nil and has it made; done is then called on
// another goroutine.
func (d *dummies) get(w standing, done func(standing, *dummy, error)) *dummy {
	if f := d.made[w]; f != nil || d.begun[w] {
		return f
	}
	d.begun[w] = true
	go func() {
		defer fault.Tell()
		f, err := newDummy(w)
		done(w, f, err)
	}()
	return nil
}

// belowWaist is how much of the form is framed below the waist, m.
const belowWaist = 0.10

// beforeForm is the room framed before the form for the cloth, m.
const beforeForm = 0.06

// places are what the named views frame: the form from a little below the waist
// up, and room for the cloth before it.
func (d *dummy) places() []r3.Vec {
	if d == nil {
		return []r3.Vec{{X: -0.2, Y: -belowWaist, Z: -0.1}, {X: 0.2, Y: 0.40, Z: 0.2}}
	}
	var out []r3.Vec
	for _, p := range d.surface.Pos {
		if p.Y >= -belowWaist {
			out = append(out, p)
		}
	}
	for _, q := range d.front {
		if q.Y >= 0 {
			out = append(out, r3.Vec{Y: q.Y, Z: q.X + beforeForm})
		}
	}
	return out
}
