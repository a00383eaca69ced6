//go:build cgo

package window

import (
	"image"
	"image/draw"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh/surface"
	"cowl/sim/fault"
)

// portrait is a picture of all panes as they hang when it is begun. It holds copies of
// its own, so that cloth may go on falling while it is drawn, tile by tile.
type portrait struct {
	parts []*portraitPart
	size  image.Point // pixels
}

// portraitPart is one pane of a portrait.
type portraitPart struct {
	scene  stage.Scene
	values []float64 // of the map, nil: none
	manner stage.Manner
	smooth *surface.Surface // nil: it is drawn on its lattice
	at     image.Rectangle  // pixels of the portrait

	loaded *stage.Loaded
	shot   *stage.Shooting
}

// newPortrait copies what hangs, to be drawn times as large as on the screen.
func (a *App) newPortrait(times float64, quick bool) *portrait {
	l := a.layout()
	area := bound(l.panes)
	px := func(v float64) int { return int(v*a.scale*times + 0.5) }
	out := &portrait{size: image.Pt(px(area.W), px(area.H))}
	smooth := !quick
	quick = quick || a.show > mapYarns || a.through
	for i, p := range a.panes {
		if !p.hasCloth() || p.dummy == nil {
			continue
		}
		r := l.panes[i]
		at := image.Pt(px(r.X-area.X), px(r.Y-area.Y))
		part := &portraitPart{manner: a.manner(p, quick, smooth), at: image.Rectangle{Min: at,
			Max: at.Add(image.Pt(px(r.W), px(r.H)))}}
		part.scene = p.scene(p.sheetNow())
		part.scene.Look.Own = p.view().Job.Fabric.Look
		if v := maps[a.show].value; v != nil {
			part.values = append([]float64(nil), v(p.view())...)
		}
		if smooth {
			part.smooth = &surface.Surface{}
		}
		out.parts = append(out.parts, part)
	}
	return out
}

// polish makes the smooth surfaces. It may take seconds, and belongs on a goroutine.
func (p *portrait) polish() {
	for _, part := range p.parts {
		if part.smooth != nil {
			*part.smooth = surface.Smooth(part.scene.Cloth, surface.Options{FoldY: part.scene.FoldY})
		}
	}
}

// aim begins to draw the portrait as an eye sees it.
func (p *portrait) aim(painter *stage.Painter, eye Orbit) error {
	for _, part := range p.parts {
		if err := part.load(painter); err != nil {
			return err
		}
		var err error
		if part.shot, err = painter.Shoot(part.loaded, eye.View(), part.manner, part.at.Dx(), part.at.Dy()); err != nil {
			return err
		}
	}
	return nil
}

// load brings the copy to the driver, once.
func (p *portraitPart) load(painter *stage.Painter) error {
	if p.loaded != nil {
		return nil
	}
	l, err := painter.Load(p.scene)
	if err != nil {
		return err
	}
	p.loaded = l
	if p.values != nil {
		if err := painter.Move(l, p.scene.Cloth.Pos, p.values); err != nil {
			return err
		}
	}
	if p.smooth != nil {
		painter.Smooth(l, stage.NewFine(*p.smooth))
	}
	return nil
}

// step draws one tile and reports whether all is drawn.
func (p *portrait) step() (done bool, err error) {
	for i, part := range p.parts {
		if part.shot.Share() < 1 {
			done, err := part.shot.Next()
			return done && i == len(p.parts)-1, err
		}
	}
	return true, nil
}

// share is how much is drawn, 0 to 1.
func (p *portrait) share() float64 {
	sum := 0.0
	for _, part := range p.parts {
		sum += part.shot.Share() / float64(len(p.parts))
	}
	return sum
}

// picture puts the parts together.
func (p *portrait) picture() *image.RGBA {
	out := image.NewRGBA(image.Rectangle{Max: p.size})
	for _, part := range p.parts {
		draw.Draw(out, part.at, part.shot.Picture(), image.Point{}, draw.Src)
	}
	return out
}

// release frees what lies in the driver.
func (p *portrait) release() {
	for _, part := range p.parts {
		if part.loaded != nil {
			part.loaded.Release()
			part.loaded = nil
		}
	}
}

// sit begins an errand that draws a portrait; ready is called when its surfaces are made.
func (a *App) sit(e *errand, p *portrait, ready func() error) {
	e.free = p.release
	if !a.beginErrand(e) {
		return
	}
	go func() {
		defer fault.Tell()
		p.polish()
		a.post(func(a *App) {
			if a.errand != e {
				return // it was stopped
			}
			if err := ready(); err != nil {
				a.endErrand()
				a.complain(err)
			}
		})
	}()
}
