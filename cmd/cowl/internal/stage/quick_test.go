//go:build cgo

package stage

import (
	"image"
	"syscall"
	"testing"
	"time"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// processor returns the time this process has used on all cores, s. On a busy
// machine it says more than the clock.
func processor() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return (time.Duration(u.Utime.Nano()) + time.Duration(u.Stime.Nano())).Seconds()
}

// BenchmarkPaintIn draws cloth that moves, as a window does at 1280 × 800.
func BenchmarkPaintIn(b *testing.B) {
	for _, c := range []struct {
		name    string
		manner  Manner
		samples int32
	}{
		{"quick", Manner{Quick: true}, 4},
		{"quick, one sample", Manner{Quick: true}, 0},
		{"shadows", Manner{}, 4},
	} {
		b.Run(c.name, func(b *testing.B) {
			st := newStage(b)
			s := testScene(30)
			st.jobs <- func() {
				l, err := st.painter.Load(s)
				if err != nil {
					b.Error(err)
					return
				}
				defer l.Release()
				const w, h = 672, 724
				t, err := newTarget(w, h, c.samples)
				if err != nil {
					b.Error(err)
					return
				}
				defer t.release()
				v := ThreeQuarter(bodiceBox(s), 672.0/724)
				start := processor()
				for b.Loop() {
					if err := st.painter.Move(l, s.Cloth.Pos, nil); err != nil {
						b.Error(err)
					}
					st.painter.PaintIn(l, v, c.manner, image.Rect(0, 0, w, h), h)
					gl.Finish()
				}
				b.ReportMetric((processor()-start)*1000/float64(b.N), "cpu-ms/op")
			}
			done := make(chan struct{})
			st.jobs <- func() { close(done) }
			<-done
		})
	}
}
