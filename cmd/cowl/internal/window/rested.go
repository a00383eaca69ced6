//go:build cgo

package window

import (
	"reflect"

	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// rested is what was read when a pane last came to rest.
type rested struct {
	stand   draft.Stand
	trims   int    // lines cut along
	all     string // the style
	rest    string // all of it but the work on the stand
	outcome drape.Outcome
	pulls   map[string]float64 // N, by seam
}

// keepRest keeps what was read at rest. Where nothing but the work on the stand
// has changed since the rest before, that one stays for comparison.
func (p *Pane) keepRest() {
	f := &p.frame
	if f.Stage != drape.StageRest || !f.Read || !reflect.DeepEqual(f.Job.Cowl, p.cowl) {
		return
	}
	bare := p.Style.Clone()
	bare.Stand, bare.Trims = draft.DefaultStand(), nil
	now := &rested{p.Style.Stand, len(p.Style.Trims), string(p.Style.YAML()), string(bare.YAML()), f.Outcome, f.Pulls}
	switch was := p.rested; {
	case was == nil || was.rest != now.rest:
		p.before = nil
	case was.all != now.all:
		p.before = was
	}
	p.rested = now
}
