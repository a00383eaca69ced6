//go:build cgo

package window

import (
	"strings"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/stage"
)

// device is what draws into the window.
type device struct {
	driver  string
	slow    bool // the driver draws on the processor
	painter *stage.Painter
	overlay *stage.Overlay
	atlas   int // version of the atlas in the driver
}

// newDevice prepares drawing in the current context.
func newDevice() (d device, err error) {
	d.driver = stage.Driver()
	d.slow = strings.Contains(d.driver, "llvmpipe") || strings.Contains(d.driver, "softpipe")
	if d.painter, err = stage.NewPainter(); err != nil {
		return d, err
	}
	d.overlay, err = stage.NewOverlay()
	return d, err
}

// drawOver draws a panel over what is painted.
func (d *device) drawOver(u *panel.UI, e extent) {
	if v := u.Letters.Version; v != d.atlas {
		d.overlay.SetAtlas(u.Letters.Atlas)
		d.atlas = v
	}
	d.overlay.Draw(flatOf(&u.List), e.wide, e.tall)
}

// flatOf hands the triangles of a panel to the stage.
func flatOf(l *panel.List) stage.Flat {
	f := stage.Flat{Verts: l.Verts, Index: l.Index}
	for _, p := range l.Parts {
		f.Parts = append(f.Parts, stage.FlatPart{Clip: p.Clip, First: p.First, Count: p.Count})
	}
	return f
}

// release frees what lies in the driver.
func (d *device) release() {
	d.overlay.Release()
	d.painter.Release()
}
