//go:build cgo

package window

import (
	"context"
	"errors"
	"fmt"
	"os"
	"runtime"
	"strings"
	"time"

	"cowl/cmd/cowl/internal/stage"

	"github.com/go-gl/glfw/v3.3/glfw"
)

// Run opens the window and returns when it is closed. It must be called on the
// main thread. Where there is no display or no OpenGL 4.1 the error wraps
// stage.ErrNoDrawing and says what to do.
func Run(o Options) error {
	if o.Context == nil {
		o.Context = context.Background()
	}
	if o.Config == "" {
		dir, err := configFolder()
		if err != nil {
			return fmt.Errorf("view: %w", err)
		}
		o.Config = dir
	}
	s, trouble := loadSettings(o.Config)
	if o.Out != "" {
		s.Folder = o.Out
	}
	if o.Size != [2]int{} {
		s.Wide, s.Tall = o.Size[0], o.Size[1]
	}
	a := newApp(o, s)
	w, err := a.open()
	if err != nil {
		return err
	}
	defer glfw.Terminate()
	defer w.Destroy()
	a.alarm.set(true)
	defer a.alarm.set(false)
	if trouble != nil {
		a.complain(trouble)
	}
	return a.live(w)
}

// open makes the window and what draws in it.
func (a *App) open() (w *glfw.Window, err error) {
	// With no display glfw.Init succeeds and the next call panics.
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return nil, fmt.Errorf("view: %w: there is no display (DISPLAY is not set); on a machine without one run it "+
			"under xvfb-run, or use cowl drape", stage.ErrNoDrawing)
	}
	if err := glfw.Init(); err != nil {
		return nil, fmt.Errorf("view: %w: %v", stage.ErrNoDrawing, err)
	}
	defer func() {
		if err != nil {
			glfw.Terminate()
		}
	}()
	if w, err = a.create(); err != nil {
		return nil, fmt.Errorf("view: %w: no window with OpenGL 4.1: %s; on Debian install libgl1-mesa-dri",
			stage.ErrNoDrawing, strings.TrimSpace(err.Error()))
	}
	w.MakeContextCurrent()
	if err := stage.UseContext(); err != nil {
		return nil, err
	}
	if a.device, err = newDevice(); err != nil {
		return nil, err
	}
	glfw.SwapInterval(1)
	if a.opt.Frames > 0 {
		glfw.SwapInterval(0)
	}
	return w, nil
}

// create asks for a window; the binding panics where the display refuses.
func (a *App) create() (w *glfw.Window, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v", r)
		}
	}()
	glfw.WindowHint(glfw.ContextVersionMajor, 4)
	glfw.WindowHint(glfw.ContextVersionMinor, 1)
	glfw.WindowHint(glfw.OpenGLProfile, glfw.OpenGLCoreProfile)
	glfw.WindowHint(glfw.OpenGLForwardCompatible, glfw.True)
	glfw.WindowHint(glfw.DepthBits, 24)
	glfw.WindowHint(glfw.Samples, 0) // panes are smoothed on canvases of their own
	glfw.WindowHintString(glfw.X11ClassName, "cowl")
	glfw.WindowHintString(glfw.X11InstanceName, "cowl")
	w, err = glfw.CreateWindow(a.set.Wide, a.set.Tall, "cowl", nil, nil)
	if err == nil && w == nil {
		err = errors.New("no window and no reason given")
	}
	return w, err
}

// live is the life of the window: take events, lay out, draw, wait.
func (a *App) live(w *glfw.Window) error {
	a.listen(w)
	a.measure(w)
	a.eye = a.framed(firstView)
	a.begin()
	a.offer()
	if a.opt.Ready != nil {
		a.opt.Ready(a)
	}
	defer a.close()
	a.start = time.Now()
	clock := newClock(a.opt.Frames)
	clock.waiting = true // for cloth on the lattice asked for
	for !w.ShouldClose() && !a.quit && !clock.done() && a.opt.Context.Err() == nil {
		a.wait()
		clock.waiting = clock.waiting && !a.fullLattice()
		clock.begin()
		a.now = a.clockNow()
		a.display.follow(w)
		a.measure(w)
		a.take()
		if a.wide < 1 || a.tall < 1 {
			time.Sleep(50 * time.Millisecond) // made an icon: nothing can be seen
			continue
		}
		a.watchTurning()
		a.watchFabric()
		a.keepSafe(false)
		if a.idle() {
			continue
		}
		a.glide(a.now)
		a.lookBack()
		a.build()
		a.draw()
		clock.busy()
		w.SwapBuffers()
		clock.end()
		if err := stage.Trouble(); err != nil {
			return fmt.Errorf("view: %w; your style is kept safe and offered at the next start", err)
		}
		if a.opt.Drawn != nil {
			a.opt.Drawn(a)
		}
		a.doTasks()
	}
	if a.opt.Report != nil && a.opt.Frames > 0 {
		t := clock.timing()
		t.Driver, t.Nodes = a.driver, a.pane().frame.Outcome.Nodes
		a.opt.Report(t)
	}
	return a.opt.Context.Err()
}

// take does what other goroutines have asked for and fetches what has moved.
func (a *App) take() {
	for {
		select {
		case do := <-a.results:
			do(a)
			a.stir()
			continue
		default:
		}
		break
	}
	for _, p := range a.panes {
		if p.poll() {
			p.keepRest()
			p.seeEbb(a.now)
			if !p.stale() && p.hasCloth() {
				p.past.keep(&p.frame, a.now)
			}
			a.stir()
		}
		if err, news := p.refuse(); news {
			a.complain(err)
		}
	}
}

// close ends all walks, frees the driver and writes the settings.
func (a *App) close() {
	a.endErrand()
	for _, p := range a.panes {
		p.release()
	}
	a.device.release()
	if a.opt.Frames == 0 {
		a.keepSettings()
	}
}
