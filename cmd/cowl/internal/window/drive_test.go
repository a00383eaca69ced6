//go:build cgo

package window

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/panel"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/draft"
	"cowl/sim/drape"
)

// drive is a window with a hand on its mouse and keyboard: real events by way
// of xdotool.
type drive struct {
	testing.TB
	app    *App
	out    string
	ended  chan error
	waits  time.Duration // for what is to become true
	cancel context.CancelFunc
	opened time.Time
	over   bool
}

// missing ends a test that cannot run here, as a failure where COWL_REQUIRE_GL=1.
func missing(t testing.TB, why string) {
	t.Helper()
	if os.Getenv("COWL_REQUIRE_GL") == "1" {
		t.Fatal(why)
	}
	t.Skip(why + "; set COWL_REQUIRE_GL=1 to make this a failure")
}

// screen gives the test a display of its own, so that no other test moves its
// mouse.
func screen(t testing.TB, wide, tall int) {
	t.Helper()
	for _, tool := range []string{"Xvfb", "xdotool"} {
		if _, err := exec.LookPath(tool); err != nil {
			missing(t, tool+" is not installed, so no window can be driven")
		}
	}
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	x := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", wide, tall), "-nolisten", "tcp")
	x.ExtraFiles = []*os.File{w}
	if err := x.Start(); err != nil {
		missing(t, "Xvfb does not start: "+err.Error())
	}
	w.Close()
	t.Cleanup(func() { _ = x.Process.Kill(); _ = x.Wait() })
	line, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		missing(t, "Xvfb does not start: "+err.Error())
	}
	t.Setenv("DISPLAY", ":"+strings.TrimSpace(line))
	t.Setenv("WAYLAND_DISPLAY", "")
}

// quickStyle is a style that hangs quickly: the coarsest lattice.
func quickStyle(t testing.TB) style.Style {
	t.Helper()
	s, err := style.Parse("trial.yaml", []byte("name: Trial\nfabric: polyester-twill\nhang: {spacing_mm: 20}\n"))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// start opens a window on a screen of its own. change may alter the options.
func start(t testing.TB, change func(*Options)) *drive {
	t.Helper()
	if testing.Short() {
		t.Skip("hangs cloth")
	}
	screen(t, 1280, 800)
	runtime.GOMAXPROCS(max(runtime.GOMAXPROCS(0), runtime.NumCPU()+2)) // as cowl view has it
	dir := t.TempDir()
	ready, ended := make(chan *App, 1), make(chan error, 1)
	ctx, cancel := context.WithCancel(context.Background())
	o := Options{
		Style: quickStyle(t), Config: filepath.Join(dir, "config"), Out: filepath.Join(dir, "out"), Scale: 1,
		Size: [2]int{1280, 800}, Pace: 4, // the cloth falls faster
		Save: func(dir string, files []File) error {
			if err := os.MkdirAll(dir, 0o755); err != nil {
				return err
			}
			for _, f := range files {
				if err := os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o644); err != nil {
					return err
				}
			}
			return nil
		},
		Pattern: func(s style.Style, p draft.Cowl, format string) ([]File, error) {
			return []File{{"draft." + format, []byte(s.Name)}, {"draft-sheet." + format, []byte(format)}}, nil
		},
		Result:  func(style.Style, draft.Cowl, drape.Outcome) ([]byte, error) { return []byte("{}\n"), nil },
		Context: ctx, Ready: func(a *App) { ready <- a },
	}
	if change != nil {
		change(&o)
	}
	opened := time.Now()
	go func() {
		runtime.LockOSThread() // the context belongs to a thread
		ended <- Run(o)
	}()
	d := &drive{TB: t, out: o.Out, ended: ended, cancel: cancel, opened: opened, waits: 6 * time.Minute}
	select {
	case d.app = <-ready:
	case err := <-ended:
		cancel()
		if errors.Is(err, stage.ErrNoDrawing) {
			missing(t, err.Error())
		}
		t.Fatal(err)
	}
	t.Cleanup(d.stop)
	return d
}

func (d *drive) stop() {
	if d.over {
		return
	}
	d.over = true
	d.cancel()
	select {
	case <-d.ended:
	case <-time.After(time.Minute):
		d.Error("the window does not close")
	}
}

// ask runs do on the thread of the window and waits for it.
func (d *drive) ask(do func(*App)) {
	d.Helper()
	done := make(chan struct{})
	d.app.post(func(a *App) { do(a); close(done) })
	select {
	case <-done:
	case err := <-d.ended:
		d.ended <- err
		d.Fatalf("the window has ended: %v", err)
	case <-time.After(2 * time.Minute):
		d.Fatal("the window does not answer")
	}
}

// until waits for something to become true in the window.
func (d *drive) until(what string, is func(*App) bool) {
	d.Helper()
	begun := time.Now()
	// Every look is a picture, which the cloth waits for: so seldom more and more.
	for look := 50 * time.Millisecond; time.Since(begun) < d.waits; time.Sleep(look) {
		look = min(look*3/2, 600*time.Millisecond)
		ok := false
		d.ask(func(a *App) { ok = is(a) })
		if ok {
			return
		}
	}
	var note, stage string
	d.ask(func(a *App) { note, stage = a.note.text, a.pane().frame.Stage })
	d.Fatalf("waited in vain for: %s; the window says %q, the drape is %q", what, note, stage)
}

// rest waits until every pane has cloth at rest in its present style.
func (d *drive) rest() {
	d.Helper()
	d.until("cloth at rest", func(a *App) bool {
		for _, p := range a.panes {
			if p.frame.Stage != drape.StageRest || !p.frame.Read || p.frame.Job.Cowl.Extension != p.cowl.Extension ||
				p.frame.Job.Cowl.Grain != p.cowl.Grain || p.frame.Job.Fabric.Name != p.Style.Fabric.Name {
				return false
			}
		}
		return true
	})
}

// x runs xdotool.
func (d *drive) x(args ...string) {
	d.Helper()
	if out, err := exec.Command("xdotool", args...).CombinedOutput(); err != nil {
		d.Fatalf("xdotool %v: %v: %s", args, err, out)
	}
}

// place returns the pixels of a control.
func (d *drive) place(id string) (r panel.Rect) {
	d.Helper()
	d.until("control "+id, func(a *App) (ok bool) {
		r, ok = a.ui.Place(id)
		s := a.scale
		r = panel.Rect{X: r.X * s, Y: r.Y * s, W: r.W * s, H: r.H * s}
		return ok
	})
	return r
}

func px(v float64) string { return fmt.Sprint(int(v)) }

// click presses the left button in the middle of a control.
func (d *drive) click(id string) {
	d.Helper()
	r := d.place(id)
	d.x("mousemove", px(r.X+r.W/2), px(r.Y+r.H/2))
	d.settle()
	d.x("click", "1")
	d.settle()
}

// key presses a key; it goes to the window under the mouse.
func (d *drive) key(names ...string) {
	d.Helper()
	d.x(append([]string{"key"}, names...)...)
	d.settle()
}

// together sends events while the window is busy, so that one picture gets them all.
func (d *drive) together(send func()) {
	d.Helper()
	busy, free := make(chan struct{}), make(chan struct{})
	d.app.post(func(*App) { close(busy); <-free })
	<-busy
	send()
	time.Sleep(50 * time.Millisecond)
	close(free)
	d.settle()
}

// settle waits until what was sent has been answered in a picture.
func (d *drive) settle() {
	d.Helper()
	time.Sleep(60 * time.Millisecond)
	for range 3 {
		d.ask(func(a *App) { a.awake = a.now + 1 })
	}
}

// home brings the window back to what it opened with.
func (d *drive) home() {
	d.Helper()
	d.ask(func(a *App) {
		a.ui.OpenDialog("")
		a.ui.Focus("")
		a.useTool(toolLook)
		a.turning, a.shownDrops, a.trace, a.back = nil, nil, trace{}, lookback{}
		a.tape.clear()
		a.remarks, a.pointing = remarks{}, false
		for undo, _ := a.past.Next(); undo != ""; undo, _ = a.past.Next() {
			a.undo()
		}
		a.past = History[desk]{}
		a.tab, a.flat, a.show, a.note = 0, false, mapPlain, note{}
		a.look(firstView)
	})
	d.settle()
}

// tabTo goes from control to control with Tab, as far as one that is wanted.
func (d *drive) tabTo(id string) {
	d.Helper()
	for range 80 {
		on := ""
		d.ask(func(a *App) { on = a.ui.Focused() })
		if on == id {
			return
		}
		d.key("Tab")
	}
	d.Fatalf("80 times Tab do not reach %s", id)
}
