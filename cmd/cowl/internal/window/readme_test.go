//go:build cgo

package window

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
	"time"

	"cowl/cmd/cowl/internal/golden"
	"cowl/cmd/cowl/internal/style"
	"cowl/sim/drape"
)

var readme = flag.Bool("readme", false, "draw the pictures of the window in the README anew")

// The pictures in the README are the window itself with the demo at rest and refined: as it
// opens, and with four extensions side by side.
func TestReadme(t *testing.T) {
	if !*readme {
		t.Skip("draws pictures; nothing is compared without -readme")
	}
	demo, err := os.ReadFile(filepath.Join("..", "..", "demo.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := style.Parse("demo.yaml", demo)
	if err != nil {
		t.Fatal(err)
	}
	d := start(t, func(o *Options) { o.Style = s })
	d.waits = 30 * time.Minute // four drapes, finely
	picture := func(name string) {
		d.rest()
		d.until("the finer lattice of all", func(a *App) bool {
			for _, p := range a.panes {
				if p.frame.Stage != drape.StageRest || p.frame.Outcome.Coarser == nil {
					return false
				}
			}
			return true
		})
		d.x("mousemove", "640", "3") // on nothing
		d.ask(func(a *App) { a.pane().keep.unsaved, a.note = false, note{} })
		golden.Save(t, filepath.Join("..", "..", "..", "..", "testdata", "readme", name), d.shown())
	}
	picture("window.png")
	d.key("ctrl+4")
	d.click("tab/Compare")
	d.click("fan/Extensions")
	picture("compare.png")
}
