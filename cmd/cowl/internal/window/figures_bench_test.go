//go:build cgo && unix

package window

import (
	"bufio"
	"fmt"
	"io"
	"os/exec"
	"runtime"
	"slices"
	"syscall"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/style"
	"cowl/sim/drape"
)

// The figures that the window is to reach, on 8 mm, 1280 × 800 pixels, drawn by the
// processor, with two cores idle:
//
//	go test ./cmd/cowl/internal/window -run '^$' -bench .
//
// They are benchmarks and no tests: a machine that is busy would fail them.

// seenPictures are the pictures of a window as they come on the screen.
type seenPictures struct {
	at chan picture // the newest alone
}

// picture is what one showed.
type picture struct {
	when    time.Time
	eye     Orbit
	falling bool
	good    bool // as fine as it will be
}

// watch opens a window on the lattice that one looks at, and its pictures.
func watch(b *testing.B, fabric string) (*drive, *seenPictures) {
	b.Helper()
	if old := runtime.GOMAXPROCS(0); old < runtime.NumCPU()+2 { // as cowl view has it
		runtime.GOMAXPROCS(runtime.NumCPU() + 2)
		b.Cleanup(func() { runtime.GOMAXPROCS(old) })
	}
	s, err := style.Parse("figures.yaml", fmt.Appendf(nil, "name: Figures\nfabric: %s\nhang: {spacing_mm: 8}\n", fabric))
	if err != nil {
		b.Fatal(err)
	}
	seen := &seenPictures{at: make(chan picture, 1)}
	d := start(b, func(o *Options) {
		o.Style, o.Drawn, o.Pace = s, seen.drawn, 0 // as fast as it can, not as tests want it
	})
	return d, seen
}

// frozen puts made-up cloth before the form, at rest.
func (d *drive) frozen() {
	d.until("a form", func(a *App) bool { return a.pane().dummy != nil })
	d.ask(func(a *App) { freeze(d.TB, a) })
}

// drawn takes note of a picture, in place of one that nobody has looked at.
func (s *seenPictures) drawn(a *App) {
	p := a.pane()
	now := picture{time.Now(), a.eye, p.hasCloth() && !p.resting() && p.shown == p.frame.Serial, p.drawn.good(a)}
	for {
		select {
		case s.at <- now:
			return
		default:
		}
		select {
		case <-s.at:
		default:
		}
	}
}

// BenchmarkFall counts pictures while the cloth falls; wanted are 25 a second of plain
// cloth and 12 of sheer.
func BenchmarkFall(b *testing.B) {
	for _, c := range [][2]string{{"plain", "polyester-twill"}, {"sheer", "silk-chiffon-memory"}} {
		b.Run(c[0], func(b *testing.B) {
			d, seen := watch(b, c[1])
			d.until("cloth that falls", func(a *App) bool {
				return a.pane().frame.Stage == drape.StageSettling && a.fullLattice()
			})
			b.ResetTimer()
			n, began := 0, time.Now()
			for n < b.N {
				if p := <-seen.at; p.falling {
					n++
				}
			}
			b.ReportMetric(float64(n)/time.Since(began).Seconds(), "pictures/s")
		})
	}
}

// BenchmarkKey takes the time from a key to the picture in which the eye has turned
// for it, at rest; wanted is a median of 0.1 s.
func BenchmarkKey(b *testing.B) {
	d, seen := watch(b, "polyester-twill")
	d.frozen()
	d.tabTo("view/1")
	hand := d.keyboard()
	var took []time.Duration
	b.ResetTimer()
	for range b.N {
		b.StopTimer()
		time.Sleep(time.Second) // the good picture comes, and nothing is drawn any more
		var before Orbit
		d.ask(func(a *App) { before = a.eye })
		b.StartTimer()
		sent := time.Now()
		fmt.Fprintln(hand, "key Right")
		for p := range seen.at {
			if p.eye != before {
				took = append(took, p.when.Sub(sent))
				break
			}
		}
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "ms/median")
}

// keyboard is a hand that is there already: to begin one takes longer than the window.
func (d *drive) keyboard() io.Writer {
	c := exec.Command("xdotool", "-")
	in, err := c.StdinPipe()
	if err != nil {
		d.Fatal(err)
	}
	if err := c.Start(); err != nil {
		d.Fatal(err)
	}
	d.Cleanup(func() { in.Close(); _ = c.Wait() })
	w := bufio.NewWriter(in)
	return flushing{w}
}

// flushing sends what is written to it at once.
type flushing struct{ *bufio.Writer }

func (f flushing) Write(p []byte) (int, error) {
	n, err := f.Writer.Write(p)
	if err == nil {
		err = f.Flush()
	}
	return n, err
}

// BenchmarkStart takes the time from the start of the window to its first picture;
// wanted is 1.5 s. That of the program before it is not in it.
func BenchmarkStart(b *testing.B) {
	var took []time.Duration
	for range b.N {
		d, seen := watch(b, "polyester-twill")
		took = append(took, (<-seen.at).when.Sub(d.opened))
		d.stop()
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "ms/median")
}

// BenchmarkRest takes the time from the moment at rest to the good picture of it;
// wanted is 0.5 s.
func BenchmarkRest(b *testing.B) {
	d, seen := watch(b, "polyester-twill")
	d.frozen()
	var took []time.Duration
	var cost time.Duration
	for range b.N {
		d.shown()
		was := used()
		var began time.Time
		d.ask(func(a *App) {
			p := a.pane()
			p.hold(p.frame)
			began = time.Now()
			a.awake = a.now + 1
			select {
			case <-seen.at: // of before
			default:
			}
		})
		for p := range seen.at {
			if p.good {
				took = append(took, p.when.Sub(began))
				break
			}
		}
		cost += used() - was
	}
	slices.Sort(took)
	b.ReportMetric(cost.Seconds()*1000/float64(b.N), "cpu-ms") // both cores together
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "ms/median")
}

// BenchmarkIdle takes the share of a core that the window uses while nothing happens;
// wanted are 0.5 %. It is looked at for a second a round: run it with -benchtime 20x.
func BenchmarkIdle(b *testing.B) {
	d, _ := watch(b, "polyester-twill")
	d.frozen()
	d.x("mousemove", "640", "3")
	d.shown()
	time.Sleep(8 * time.Second) // news grows old
	b.ResetTimer()
	was, began := used(), time.Now()
	time.Sleep(time.Duration(b.N) * time.Second)
	b.ReportMetric(100*(used()-was).Seconds()/time.Since(began).Seconds(), "%cpu")
}

// used is the time that this program has had on any core.
func used() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
