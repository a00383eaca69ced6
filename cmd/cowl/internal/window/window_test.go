//go:build cgo

package window

import (
	"context"
	"errors"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cowl/cmd/cowl/internal/stage"
	"cowl/mesh/draft"
	"cowl/sim/drape"

	"github.com/go-gl/glfw/v3.3/glfw"
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// One window hangs the cloth once for all these checks. Each leaves the style
// as it found it; home takes back what is left.
func TestWindow(t *testing.T) {
	d := start(t, nil)
	for _, c := range []struct {
		name  string
		check func(*drive)
	}{
		{"agrees with a drape", agreesWithHang}, {"save", saves}, {"slash", slashRests},
		{"slider, fabric, undo", sliderFabricUndo}, {"hand", handPullsCloth},
		{"lean", leans}, {"folds laid", foldsLaid}, {"edge set", edgeSet}, {"edge in the section", edgeInSection},
		{"grain turned", grainTurned}, {"four panes", fourPanes},
	} {
		t.Run(c.name, func(t *testing.T) {
			sub := *d
			sub.TB = t
			sub.home()
			c.check(&sub)
		})
	}
}

// What the window reports at rest is what a drape of the same style gives, bit
// for bit.
func agreesWithHang(d *drive) {
	t := d.TB
	d.rest()
	var got drape.Outcome
	var pulls map[string]float64
	var job drape.Job
	d.ask(func(a *App) { got, pulls, job = a.pane().frame.Outcome, a.pane().frame.Pulls, a.pane().job() })
	if job.Folds != drape.Auto || got.Laid != job.AutoFolds() {
		t.Errorf("folds %d: %d laid, want auto to lay %d", job.Folds, got.Laid, job.AutoFolds())
	}
	job.Folds, job.Alone = got.Laid, true // of Auto HangAll tries several; the window takes the other core
	run, err := drape.HangAll(context.Background(), job, 1)
	if err != nil {
		t.Fatal(err)
	}
	want := run.Outcome
	for _, seam := range []string{"waist", "side", "shoulder"} {
		// which is not pinned
		if got, want := pulls[seam], run.Drape.PullOf(seam); got != want || (want == 0) != (seam == "waist") {
			t.Errorf("%s pins pull %v N, want the %v N of a drape", seam, got, want)
		}
	}
	if got.EdgeDrop != want.EdgeDrop || got.FoldCount != want.FoldCount || got.MaxStrain != want.MaxStrain ||
		got.Residual != want.Residual {
		t.Errorf("window: drop %v m, %d folds, strain %v, residual %v; drape: %v, %d, %v, %v, want the same",
			got.EdgeDrop, got.FoldCount, got.MaxStrain, got.Residual, want.EdgeDrop, want.FoldCount, want.MaxStrain,
			want.Residual)
	}
}

// A slider dragged by the mouse changes the cut, and the edge hangs deeper for
// it; a typed value is taken; undo brings the cut back in one step.
func sliderFabricUndo(d *drive) {
	t := d.TB
	d.rest()
	var extension, most, drop float64
	d.ask(func(a *App) {
		extension, most, drop = a.pane().cowl.Extension, a.pane().limits("extension").Hi, a.pane().frame.Outcome.EdgeDrop
	})
	d.click("tab/Cut")
	r := d.place("extension")
	y := px(r.Y + r.H/2)
	d.x("mousemove", px(r.X+7+(r.W-14)*extension/most), y)
	d.settle()
	d.x("mousedown", "1")
	for _, v := range []float64{0.12, 0.15, 0.165} {
		d.x("mousemove", px(r.X+7+(r.W-14)*v/most), y)
		d.settle()
	}
	d.x("mouseup", "1")
	d.settle()
	d.until("a longer extension", func(a *App) bool { return math.Abs(a.pane().cowl.Extension-0.165) < 0.011 })
	d.rest()
	d.ask(func(a *App) {
		if now := a.pane().frame.Outcome.EdgeDrop; now <= drop+0.010 {
			t.Errorf("edge drop %.1f mm after letting out the edge, want clearly more than %.1f", now*1000, drop*1000)
		}
	})
	d.key("ctrl+z")
	d.until("the old extension", func(a *App) bool { return a.pane().cowl.Extension == extension })

	d.click("grain/typed")
	d.x("type", "30")
	d.key("Return")
	d.until("grain of 30°", func(a *App) bool { return math.Abs(a.pane().cowl.Grain-30*degree) < 1e-9 })
	d.click("grain/typed")
	d.x("type", "400")
	d.key("Return")
	d.until("a complaint", func(a *App) bool { return a.note.bad && strings.Contains(a.note.text, "want -90.0–90.0°") })
	d.key("Escape")

	d.click("tab/Cloth")
	d.click("search")
	d.x("type", "faille")
	d.key("Return")
	d.click("fabrics")
	d.key("Down")
	d.until("the faille", func(a *App) bool { return a.pane().Style.Fabric.Name == "polyester-faille" })
	d.key("ctrl+z", "ctrl+z")
	d.until("the first style", func(a *App) bool {
		return a.pane().Style.Fabric.Name == "polyester-twill" && a.pane().cowl.Grain == 45*degree
	})
	d.ask(func(a *App) {
		if list := a.shelf().list(); len(list) != 1 || list[0].file != a.pane().keep.file {
			t.Errorf("%d styles kept safe, want that of the one pane", len(list))
		}
	})
}

// The hand takes hold of the cloth where the mouse is and pulls it along; let
// go, the cloth falls back; undo hangs it as it was.
func handPullsCloth(d *drive) {
	d.rest()
	d.key("1") // front
	d.x("mousemove", "640", "420")
	d.settle()
	d.key("g")
	d.until("the front view", func(a *App) bool { return a.goal == nil && a.tool == toolGrab })
	d.x("mousedown", "1")
	d.until("a hold", func(a *App) bool { return a.grip != nil })
	var flat = d.app.grip.flat
	var before r3.Vec
	d.ask(func(a *App) { before, _ = inSpace(&a.pane().frame.Sheet, flat) })
	for _, x := range []string{"660", "690", "720", "740"} {
		d.x("mousemove", x, "400")
		d.settle()
	}
	d.until("cloth that follows", func(a *App) bool {
		p, ok := inSpace(&a.pane().frame.Sheet, flat)
		return ok && p.X > before.X+0.01
	})
	d.x("mouseup", "1")
	d.until("an open hand", func(a *App) bool { return a.grip == nil })
	d.rest()
	d.key("ctrl+z")
	d.until("cloth that hangs anew", func(a *App) bool { return a.pane().hands.touch == 0 })

	d.rest()
	d.key("p")
	d.x("mousemove", "640", "420")
	d.settle()
	d.x("click", "1")
	d.until("a pin", func(a *App) bool { return own(a.pane()) == 1 })
	d.key("ctrl+z")
	d.until("no pin", func(a *App) bool { return own(a.pane()) == 0 })
}

// own counts the pins of one's own in the walk.
func own(p *Pane) (n int) {
	if p.live == nil {
		return 0
	}
	for _, q := range p.live.Pins() {
		if q.Own {
			n++
		}
	}
	return n
}

// Four panes hang four cuts, one after another can be made the active one, and
// undo leaves one again.
func fourPanes(d *drive) {
	t := d.TB
	d.rest()
	d.key("ctrl+4")
	d.until("four panes", func(a *App) bool { return len(a.panes) == 4 })
	d.click("tab/Compare")
	d.click("fan/Extensions")
	d.rest()
	d.ask(func(a *App) {
		for i := 2; i < 4; i++ { // the first is one's own cut
			if x, y := a.panes[i-1].frame.Outcome, a.panes[i].frame.Outcome; y.EdgeDrop <= x.EdgeDrop {
				t.Errorf("extension %.0f mm drops %.1f mm, %.0f mm drops %.1f, want more", x.Extension*1000, x.EdgeDrop*1000,
					y.Extension*1000, y.EdgeDrop*1000)
			}
		}
	})
	d.click("view/3")
	d.until("the third pane", func(a *App) bool { return a.active == 2 })
	d.key("ctrl+z", "ctrl+z")
	d.until("one pane", func(a *App) bool { return len(a.panes) == 1 })
}

// A picture twice as large has twice the pixels of the view; style, mesh, result
// and turntable are written.
func saves(d *drive) {
	t := d.TB
	d.rest()
	d.click("tab/Files")
	for _, c := range []struct{ button, file string }{
		{"save/Picture 2×", "trial-2x.png"}, {"save/Style", "trial.yaml"}, {"save/Result", "trial-result.json"},
		{"save/Mesh (GLB)", "trial.glb"}, {"save/Turning picture", "trial-turntable.gif"},
	} {
		d.click(c.button)
		d.until(c.file, func(a *App) bool {
			info, err := os.Stat(filepath.Join(d.out, c.file))
			return err == nil && info.Size() > 0 && a.errand == nil
		})
	}
	f, err := os.Open(filepath.Join(d.out, "trial-2x.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	view := d.place("view/1")
	if got, want := img.Bounds().Size(), image.Pt(int(2*view.W), int(2*view.H)); got != want {
		t.Errorf("picture of %v pixels, want %v", got, want)
	}
	d.ask(func(a *App) {
		if a.pane().keep.unsaved {
			t.Error("the style counts as not saved after it was saved")
		}
	})
}

// A smaller window shows everything; one of no size stops nothing.
func TestResize(t *testing.T) {
	d := start(t, nil)
	d.until("cloth", func(a *App) bool { return a.pane().hasCloth() })
	for _, size := range [][2]string{{"900", "600"}, {"1", "1"}, {"1280", "800"}} {
		d.x("search", "--name", "^cowl$", "windowsize", size[0], size[1])
		d.settle()
		d.until("size "+size[0], func(a *App) bool { return px(float64(a.wide)) == size[0] })
	}
	d.x("search", "--name", "^cowl$", "windowsize", "900", "600")
	d.until("a small window", func(a *App) bool { return a.wide == 900 })
	d.settle() // drawn as wide as that
	for _, id := range []string{"undo", "again", "tool/Unpin", "view/Top", "flat", "tab/Files"} {
		if r := d.place(id); r.X < 0 || r.Y < 0 || r.X+r.W > 900 || r.Y+r.H > 600 || r.W < 20 {
			t.Errorf("%s lies at %v of 900 × 600, want it in sight", id, r)
		}
	}
}

// Files that cannot be used are refused with a reason, and the drape hangs on;
// a fabric file that breaks while it is in use, too.
func TestOpenFiles(t *testing.T) {
	d := start(t, nil)
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	d.ask(func(a *App) {
		for _, c := range []struct{ path, want string }{
			{filepath.Join(dir, "none.yaml"), "no such file"},
			{write("bad.yaml", "cut: {extension_cm: [}\n"), "bad.yaml cannot be opened"},
			{write("far.yaml", "cut: {extension_cm: 39}\n"), "extension 39.0 cm, want"},
		} {
			a.openFile(c.path)
			if !a.note.bad || !strings.Contains(a.note.text, c.want) || a.pane().Style.Name != "Trial" {
				t.Errorf("opening %s says %q, want %q and the style kept", c.path, a.note.text, c.want)
			}
		}
	})
	own, err := os.ReadFile(filepath.Join("..", "..", "demo.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	style := write("own-style.yaml", string(own))
	d.ask(func(*App) { dropFiles(style) })
	d.until("the style that was dropped", func(a *App) bool { return a.pane().Style.Name == "Vesper blouse, cowl front" })
	f := limpest[3]
	f.Name, f.Title = "own-crepe", "Own crepe"
	path := write("own.yaml", string(f.YAML()))
	d.ask(func(*App) { dropFiles(path) })
	d.until("the fabric of the file", func(a *App) bool { return a.pane().Style.Fabric.Name == "own-crepe" })
	if err := os.WriteFile(path, []byte("weight_gsm: many\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	d.ask(func(a *App) { a.watched.seen = a.watched.seen.Add(-1) })
	d.until("a word about the broken file", func(a *App) bool {
		return a.note.bad && strings.Contains(a.note.text, "values before it stay") &&
			a.pane().Style.Fabric.Name == "own-crepe"
	})
}

// dropFiles hands files to the window as the desktop does. It belongs on the thread
// of the window.
func dropFiles(paths ...string) {
	w := glfw.GetCurrentContext()
	listener := w.SetDropCallback(nil)
	w.SetDropCallback(listener)
	listener(w, paths)
}

// Without a display the error says so and does not crash.
func TestNoDisplay(t *testing.T) {
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	err := Run(Options{Config: t.TempDir(), Style: quickStyle(t)})
	if err == nil || !strings.Contains(err.Error(), "DISPLAY") {
		t.Errorf("Run without a display = %v, want an error that names DISPLAY", err)
	}
	t.Setenv("DISPLAY", ":987")
	if err := Run(Options{Config: t.TempDir(), Style: quickStyle(t)}); err == nil || !errors.Is(err, stage.ErrNoDrawing) {
		t.Errorf("Run on a display that is not there = %v, want ErrNoDrawing", err)
	}
}

// A slash is taken up by the cloth that hangs; when it rests again, the window
// tells what it did: the rest before it and the one after.
func slashRests(d *drive) {
	d.rest()
	d.click("tab/Stand")
	d.click("release_armhole/typed")
	d.x("type", "4cm")
	d.key("Return")
	d.until("rest with the slash", func(a *App) bool {
		p := a.pane()
		return len(p.frame.Job.Cowl.Releases) == 2 && p.resting() && (p.before != nil || p.frame.Stage == drape.StageStopped)
	})
	d.ask(func(a *App) {
		p := a.pane()
		if p.frame.Stage == drape.StageRest && (p.before.stand != draft.DefaultStand() || p.rested.stand != p.Style.Stand) {
			d.Errorf("compared %+v with %+v, want the piece as cut with %+v", p.before.stand, p.rested.stand, p.Style.Stand)
		}
	})
	d.key("ctrl+z")
	d.until("the piece as it was cut", func(a *App) bool { return len(a.pane().cowl.Releases) == 0 })
}

// The demonstration hangs seven angles from 0 to 90°, draws a drop for each,
// and leaves the grain to undo. What it draws is what was read at rest.
func grainTurned(d *drive) {
	t := d.TB
	d.rest()
	d.click("tab/Compare")
	d.click("turn")
	seen := map[float64]float64{} // drop by angle, as the readings have it
	d.until("all seven angles", func(a *App) bool {
		p := a.pane()
		if p.resting() && p.frame.Read {
			seen[math.Round(p.frame.Job.Cowl.Grain/degree)] = p.frame.Outcome.EdgeDrop
		}
		return a.turning == nil && len(a.shownDrops) > 0
	})
	d.ask(func(a *App) {
		if len(a.shownDrops) != 7 {
			t.Errorf("%d drops, want 7", len(a.shownDrops))
			return
		}
		for k, s := range a.shownDrops {
			if s.angle != 15*float64(k) || s.edge < 0.02 || s.edge > 0.25 {
				t.Errorf("drop %d is %.3f m at %.0f°, want 2 to 25 cm at %d°", k, s.edge, s.angle, 15*k)
			}
		}
		if last := a.shownDrops[6]; seen[90] != last.edge {
			t.Errorf("90° is drawn at %.4f m, and the readings say %.4f m", last.edge, seen[90])
		}
	})
	d.key("ctrl+z")
	d.until("the grain of before", func(a *App) bool { return a.pane().cowl.Grain == 45*degree })
}

// A chosen number of folds is laid from the flat, and the readings tell what became
// of them; more than the cloth feeds are refused in the units of the window; the
// waist is pinned all round with more pins than at the seams; undo goes back.
func foldsLaid(d *drive) {
	t := d.TB
	d.rest()
	var pins int
	d.ask(func(a *App) { pins = len(a.pane().live.Pins()) })
	d.click("tab/Folds")
	d.click("laid/1")
	d.until("one fold laid", func(a *App) bool {
		p := a.pane()
		return p.Style.Hang.Folds == 1 && p.resting() && p.frame.Read && p.frame.Outcome.Laid == 1 && !p.frame.Carried
	})
	d.ask(func(a *App) {
		o := a.pane().frame.Outcome
		for i := range o.Folds {
			f, says := &o.Folds[i], foldWords(a.units, &o, &o.Folds[i])
			if want := map[bool]string{true: "laid at", false: "nobody laid it"}[f.Kept]; !strings.Contains(says, want) {
				t.Errorf("the readings say %q of a fold kept %t, want %q", says, f.Kept, want)
			}
		}
	})
	d.click("waist/All round")
	d.until("a waist pinned all round", func(a *App) bool {
		p := a.pane()
		return p.Style.Hang.Waist == drape.Pinned && p.frame.Job.Waist == drape.Pinned && len(p.live.Pins()) > pins
	})
	d.ask(func(a *App) {
		a.set.Units = Inches
		a.setNumber("extension", 0.005, "the extension", "")
		a.setNumber("folds", drape.MostFolds, "the folds laid", "")
		if !a.note.bad || !strings.Contains(a.note.text, "folds 6, want 0–") ||
			!strings.Contains(a.note.text, " in of surplus") || a.pane().Style.Hang.Folds != 1 {
			t.Errorf("six folds in too little cloth: %d laid, the window says %q, want a refusal in inches and 1",
				a.pane().Style.Hang.Folds, a.note.text)
		}
		a.set.Units = Centimetres
	})
	d.key("ctrl+z", "ctrl+z", "ctrl+z")
	d.until("folds and waist of before", func(a *App) bool {
		h := a.pane().Style.Hang
		return h.Folds == drape.Auto && a.pane().Style.Held() == drape.SidesPinned
	})
	d.until("the hanging of before", func(a *App) bool {
		p := a.pane()
		return p.resting() && p.frame.Read && p.frame.Outcome.Laid == p.frame.Job.AutoFolds() && len(p.live.Pins()) == pins
	})
}

// The edge is set where a typed depth wants it, and the readings say how much is
// taken up; as it falls again, none is.
func edgeSet(d *drive) {
	t := d.TB
	d.rest()
	var fell, want float64
	d.ask(func(a *App) {
		fell = a.pane().frame.Outcome.EdgeBelowNeck
		want = math.Round(fell*1000)/1000 - 0.02
	})
	d.click("tab/Folds")
	d.click("edge_depth/typed")
	d.x("type", "--", Centimetres.Length(want))
	d.key("Return")
	d.until("an edge that is set", func(a *App) bool {
		p := a.pane()
		return p.frame.Job.SetEdge && p.resting() && p.frame.Read
	})
	d.ask(func(a *App) {
		p := a.pane()
		o := p.frame.Outcome
		if a.note.bad {
			t.Errorf("the window complains: %q", a.note.text)
		}
		// On so coarse a lattice it may stay off by some more; then the window says so.
		off, says := math.Abs(o.EdgeBelowNeck-want), openWords(a.units, p)
		if o.EdgeBelowNeck >= fell || o.Taken <= 0 || !strings.Contains(says, "over the shoulder") ||
			strings.Contains(says, "still rests") != (off > drape.EdgeNear) {
			t.Errorf("wanted %.1f mm below the neck for %.1f: rests %.1f mm off, taken up %.1f mm, %q; want it nearer by "+
				"taking up",
				want*1000, fell*1000, off*1000, o.Taken*1000, says)
		}
	})
	d.click("edge/falls")
	d.until("an edge as it falls", func(a *App) bool {
		p := a.pane()
		return p.Style.Hang.EdgeDepth == draft.Auto && !p.frame.Job.SetEdge && p.resting() && p.frame.Outcome.Taken == 0
	})
	d.key("ctrl+z", "ctrl+z")
	d.until("the style of before", func(a *App) bool { undo, _ := a.past.Next(); return undo == "" })
}

// The mark of the edge in the section is drawn higher by the mouse, and the cloth
// comes along; let go, it falls. By an arrow key it is held until L.
func edgeInSection(d *drive) {
	t := d.TB
	d.rest()
	var flat r2.Vec
	var before r3.Vec
	edge := func(a *App) r3.Vec { p, _ := inSpace(&a.pane().frame.Sheet, flat); return p }
	d.ask(func(a *App) { flat = a.pane().cutMarks()[0].flat; before = edge(a) })
	r := d.place("section/edge")
	x, y := r.X+r.W/2, r.Y+r.H/2
	d.x("mousemove", px(x), px(y))
	d.settle()
	d.x("mousedown", "1")
	d.until("a hold", func(a *App) bool { return a.grip != nil && a.grip.cut == "edge" })
	for _, dy := range []float64{8, 16, 24} {
		d.x("mousemove", px(x-dy/2), px(y-dy))
		d.settle()
	}
	d.until("an edge that rises", func(a *App) bool { return edge(a).Y > before.Y+0.01 })
	d.x("mouseup", "1")
	d.until("an open hand", func(a *App) bool { return a.grip == nil })
	d.rest()
	d.ask(func(a *App) {
		if undo, _ := a.past.Next(); undo != "pulling the cloth" {
			t.Errorf("undo would take back %q, want the pull", undo)
		}
		a.ui.Focus("section/edge")
	})
	d.key("Down", "Down")
	d.until("a hand that stays", func(a *App) bool { return a.grip != nil && a.grip.stays && a.pane().hands.touch == 2 })
	d.key("l")
	d.until("an open hand again", func(a *App) bool { return a.grip == nil })
	d.key("ctrl+z", "ctrl+z")
	d.until("cloth that hangs anew", func(a *App) bool { return a.pane().hands.touch == 0 })
}
