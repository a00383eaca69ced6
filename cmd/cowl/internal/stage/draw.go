//go:build cgo

package stage

import (
	"image"
	"runtime"

	"cowl/sim/fault"
)

// Stage draws off screen. It owns one thread with one OpenGL context, so its
// methods may be called from any goroutine, one after another.
type Stage struct {
	jobs    chan func()
	done    chan struct{}
	painter *Painter
}

// New starts a stage: without a display through EGL, else in a hidden window.
// The error wraps ErrNoDrawing and says what is missing and what to install.
func New() (*Stage, error) { return start(open) }

func start(open func() (func(), error)) (*Stage, error) {
	s := &Stage{jobs: make(chan func()), done: make(chan struct{})}
	ready := make(chan error)
	go s.serve(open, ready)
	if err := <-ready; err != nil {
		return nil, err
	}
	return s, nil
}

// serve runs on the thread of the context until the stage is closed.
func (s *Stage) serve(open func() (func(), error), ready chan<- error) {
	runtime.LockOSThread() // an OpenGL context belongs to a thread
	defer close(s.done)
	defer fault.Tell()
	shut, err := open()
	if err != nil {
		ready <- err
		return
	}
	defer shut()
	if s.painter, err = NewPainter(); err != nil {
		ready <- err
		return
	}
	ready <- nil
	for job := range s.jobs {
		job()
	}
	s.painter.Release()
}

// Close ends the stage and its thread. It must be called once.
func (s *Stage) Close() {
	close(s.jobs)
	<-s.done
}

// Draw returns a picture of w × h pixels, marks included. It fails where a
// place is not finite or the picture is too large for the driver.
func (s *Stage) Draw(scene Scene, v View, w, h int) (*image.RGBA, error) {
	pictures, err := s.drawAll(scene, []shot{{v, w, h}})
	if err != nil {
		return nil, err
	}
	return pictures[0], nil
}

// drawAll draws one scene from several eyes and loads it only once.
func (s *Stage) drawAll(scene Scene, shots []shot) (pictures []*image.RGBA, err error) {
	finished := make(chan struct{})
	s.jobs <- func() {
		defer close(finished)
		pictures, err = s.painter.pictures(scene, shots)
	}
	<-finished
	if err != nil {
		return nil, err
	}
	for i, p := range pictures {
		drawMarks(p, scene, shots[i])
	}
	return pictures, nil
}

// pictures runs on the thread of the context.
func (p *Painter) pictures(scene Scene, shots []shot) ([]*image.RGBA, error) {
	l, err := p.Load(scene)
	if err != nil {
		return nil, err
	}
	defer l.Release()
	fine := beside(func() Fine { return NewFine(scene.smooth()) })
	p.LookUp(l) // what the lattice sees of the sky, while the surface is made smooth
	p.Smooth(l, fine())
	var out []*image.RGBA
	for _, s := range shots {
		img, err := p.Shot(l, s.view, Manner{}, s.w, s.h)
		if err != nil {
			return nil, err
		}
		out = append(out, img)
	}
	return out, nil
}
