//go:build cgo

package window

import (
	"image/png"
	"os"
	"path/filepath"
	"time"
)

// While a picture four times as large is drawn the window answers, and the picture can
// be stopped: nothing is saved then. Let go on, it has four times the pixels.
func largePicture(d *drive) {
	d.click("tab/Files")
	d.click("save/Picture 4×")
	d.until("a picture that has begun", func(a *App) bool { return a.errand != nil && a.errand.share > 0 })
	share := 0.0
	d.click("tab/Folds")
	d.until("the tab, before the picture is drawn", func(a *App) bool {
		if a.errand == nil {
			d.Fatal("the picture was drawn before the window answered")
		}
		share = a.errand.share
		return a.tab == tabFolds
	})
	d.shot("errand.png")
	d.click("cancel")
	d.until("nothing to do", func(a *App) bool { return a.errand == nil })
	if share <= 0 || share >= 1 {
		d.Errorf("stopped at %g of the picture, want on the way", share)
	}
	name := filepath.Join(d.out, "trial-4x.png")
	if _, err := os.Stat(name); err == nil {
		d.Error("a picture that was stopped is saved")
	}
	d.click("tab/Files")
	began := time.Now()
	d.click("save/Picture 4×")
	d.until("the picture", func(a *App) bool {
		_, err := os.Stat(name)
		return err == nil && a.errand == nil
	})
	d.Logf("a picture 4× as large: %.1f s", time.Since(began).Seconds())
	f, err := os.Open(name)
	if err != nil {
		d.Fatal(err)
	}
	defer f.Close()
	c, err := png.DecodeConfig(f)
	if err != nil {
		d.Fatal(err)
	}
	if r := d.place("view/1"); c.Width != int(4*r.W) || c.Height != int(4*r.H) {
		d.Errorf("picture of %d × %d pixels, want %g × %g", c.Width, c.Height, 4*r.W, 4*r.H)
	}
}
