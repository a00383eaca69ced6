//go:build cgo

package window

import (
	"sync"

	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/materials/look"
	"cowl/mesh/draft"
	"cowl/mesh/limit"
	"cowl/sim/drape"
)

// Pane is one style hanging on its form.
type Pane struct {
	Style          style.Style
	cowl           draft.Cowl
	ranges         []limit.Range // of the numbers of the style; nil: to be asked for
	dummy          *dummy        // nil while it is being made
	live           *drape.Live
	frame          drape.Frame
	hands          hands
	asked          asked
	keep           keeping
	own            bool       // changed by hand since it was put beside the others
	rested, before *rested    // the last rest, and the one before it with other work on the stand
	gave           *sync.Once // of the walk: it has given way to drawing

	loaded              *stage.Loaded // nil until there is cloth to draw
	shape               *[3]int32     // first triangle of the sheet that is loaded: another sheet has another
	shown               uint64        // serial of the moment in the driver, 0: none
	values              mapKind       // that are in the driver
	polishing, polished uint64        // serial of the moment whose smooth surface is being made, and is in the driver
	cut                 centreCut
	canvas              stage.Canvas
	traced              tracked
	taped               tapeOnCloth
	past                past
	ebb                 ebb
	five                *fiveHands   // nil: nobody asked for them
	bent                *bent        // nil: the wearer has not bent
	look                *drape.Frame // what is looked back at, nil: the present is seen
	drawn               painting     // what lies on the canvas
}

// painting is all that a painted pane depends on.
type painting struct {
	serial          uint64
	eye             Orbit
	show            mapKind
	own             look.Look
	trace           trace
	tape            int // version of it
	noForm, through bool
	wide, tall      int
	smooth, fine    bool
	polished        bool
}

// hang begins to hang the pane's style, or goes over to it. Cloth is not carried round to
// the other side of the form.
func (p *Pane) hang() {
	other := p.asked.job.Cowl.Worn != p.cowl.Worn
	j := p.ask()
	if other {
		p.stop()
	}
	if p.live == nil {
		p.begin(j)
		return
	}
	p.live.Change(j)
}

// restart hangs the style from the flat.
func (p *Pane) restart() {
	p.stop()
	if p.dummy == nil {
		return
	}
	p.begin(p.ask())
}

// begin hangs j from the flat, with the pins of p.hands.
func (p *Pane) begin(j drape.Job) {
	p.live = drape.NewLive(j)
	for _, m := range p.hands.own {
		p.live.Pin(m.flat, m.at)
	}
	for _, m := range p.hands.gone {
		p.live.Unpin(m.flat)
	}
}

// stop ends the walk.
func (p *Pane) stop() {
	if p.live != nil {
		p.live.Close()
		p.live, p.gave = nil, nil
	}
}

// release ends the walk and frees what lies in the driver.
func (p *Pane) release() {
	p.stop()
	p.stopFive()
	p.unload()
	p.canvas.Release()
	p.drawn = painting{}
}

func (p *Pane) unload() {
	if p.loaded != nil {
		p.loaded.Release()
		p.loaded, p.polished = nil, 0
	}
}

// poll fetches the newest moment and reports whether it is a new one.
func (p *Pane) poll() bool {
	if p.live == nil {
		return false
	}
	was := p.frame.Serial
	p.live.Frame(&p.frame)
	return p.frame.Serial != was
}

// hasCloth reports whether there is cloth to look at.
func (p *Pane) hasCloth() bool { return len(p.frame.Sheet.Tris) > 0 }

// asked is what a pane was last asked to hang, and what has become of that.
type asked struct {
	job     drape.Job
	serial  uint64 // of the moment at which a hand touched the cloth, 0: none did since
	refused error  // why it could not be hung: the drape before it hangs on
}

// view is what is seen of a pane: the present, or what is looked back at.
func (p *Pane) view() *drape.Frame {
	if p.look != nil {
		return p.look
	}
	return &p.frame
}

// bent is what became of the cloth of a pane while its wearer bent.
type bent struct {
	lean   drape.Lean
	laid   int
	serial uint64 // of the moment at rest that it was asked of
}

// spacing is that of the lattice before any is refined, m.
func (p *Pane) spacing() float64 {
	h, _ := p.Style.Hang.Lattice()
	return h
}

// says turns words about a cowl at the front into those about the cowl of p. What the user
// has named is not among them.
func (p *Pane) says(text string) string { return p.Style.Cut.Worn.Say(text) }
