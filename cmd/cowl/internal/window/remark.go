package window

import (
	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// remark is what a teacher writes on a picture: a title, or words with an arrow. An arrow
// whose tip was set on the cloth stays there, however the cloth moves and the eye turns.
type remark struct {
	pane    int
	at, to  r2.Vec // as shares of the view of the pane, from its upper left corner
	points  bool   // it has an arrow
	onCloth bool
	flat    r2.Vec // m, where on the cloth the tip is
	words   string
}

// seer returns where a place in space is seen, in pixels of a view; false behind the eye.
type seer func(r3.Vec) (r2.Vec, bool)

// note lays a remark out on a view of wide × tall pixels whose upper left corner is at
// corner.
func (m *remark) note(s *mesh.Sheet, see seer, corner r2.Vec, wide, tall float64) stage.Note {
	place := func(q r2.Vec) r2.Vec { return r2.Add(corner, r2.Vec{X: q.X * wide, Y: q.Y * tall}) }
	n := stage.Note{Words: m.words, At: place(m.at), To: place(m.to), Points: m.points}
	if m.onCloth {
		if at, ok := inSpace(s, m.flat); ok {
			if q, ok := see(at); ok {
				n.To = r2.Add(corner, q)
			}
		}
	}
	return n
}

// remarks are all that is written on the views.
type remarks struct {
	list    []remark
	pulling bool // the last one is being drawn with the mouse
	typing  bool // the words of the last one are being typed
}

func (m *remarks) last() *remark {
	if len(m.list) == 0 {
		return &remark{pane: -1}
	}
	return &m.list[len(m.list)-1]
}

// back takes the last remark away.
func (m *remarks) back() {
	if n := len(m.list); n > 0 {
		m.list = m.list[:n-1]
	}
}
