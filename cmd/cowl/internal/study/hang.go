package study

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/draw"
	"image/jpeg"
	"math"
	"sync"

	"cowl/cmd/cowl/internal/drawn"
	"cowl/cmd/cowl/internal/stage"
	"cowl/cmd/cowl/internal/study/rows"
	"cowl/cmd/cowl/internal/style"
	"cowl/mesh/body"
	"cowl/mesh/draft"
	"cowl/mesh/form"
	"cowl/sim/drape"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// hanger hangs rows: the forms and the stage are made once for all.
type hanger struct {
	open  drawn.Stager
	mu    sync.Mutex
	forms map[standing]func() (*form.Form, error)
	drawn sync.Mutex // a stage draws one picture after another
	stage *stage.Stage
	blind error // why there is no stage
	asked bool
}

// standing is a body as a form of it stands.
type standing struct {
	body body.Body
	worn draft.Side // the side that is turned to the cloth
}

func newHanger(open drawn.Stager) *hanger {
	return &hanger{open: open, forms: map[standing]func() (*form.Form, error){}}
}

func (h *hanger) close() {
	if h.stage != nil {
		h.stage.Close()
	}
}

// form returns the form that s hangs before, fitted once.
func (h *hanger) form(s style.Style) (*form.Form, error) {
	b, err := s.Wearer()
	if err != nil {
		return nil, err
	}
	h.mu.Lock()
	at := standing{b, s.Cut.Worn}
	fit, ok := h.forms[at]
	if !ok {
		fit = sync.OnceValues(func() (*form.Form, error) { return style.FormOf(b, s.Cut.Worn) })
		h.forms[at] = fit
	}
	h.mu.Unlock()
	return fit()
}

// run hangs the k-th placing of a case.
func (h *hanger) run(ctx context.Context, c oneCase, k int, f *form.Form) (*drape.Run, error) {
	if err := c.style.Fits(c.cowl, f); err != nil {
		return nil, err
	}
	job := c.style.Job(c.cowl, f)
	job.Seed = c.seed(k)
	if c.steady && job.Folds == drape.Auto {
		job.Folds = job.AutoFolds()
	}
	if c.first != nil {
		return drape.HangLike(ctx, job, c.first)
	}
	return drape.HangAll(ctx, job, 1)
}

// hang hangs the k-th placing of a case and draws it if it is to be shown.
func (h *hanger) hang(ctx context.Context, c oneCase, k int) (rows.Made[Row], error) {
	none := rows.Made[Row]{}
	f, err := h.form(c.style)
	if err != nil {
		return none, err
	}
	one := &drawn.Drape{Style: c.style, Cowl: c.cowl, Form: f, Toile: c.lined}
	if one.Run, err = h.run(ctx, c, k, f); err != nil {
		return none, err
	}
	one.Cowl = one.Run.Drape.Job.Cowl // with what was taken up
	made := rows.Made[Row]{Value: Row{Outcome: one.Run.Outcome}}
	if !c.drawn(k) || ctx.Err() != nil || len(one.Run.Reading.Section) == 0 {
		return made, nil
	}
	s := one.Section()
	made.Value.Section, made.Value.Form = millimetres(s.Cloth), millimetres(s.Form)
	picture, err := h.picture(one)
	if err != nil {
		made.Value.Missing = err.Error()
		return made, nil
	}
	made.Files = map[string][]byte{"jpg": picture}
	return made, nil
}

// millimetres rounds points to tenths of a millimetre.
func millimetres(points []r2.Vec) [][2]float64 {
	var out [][2]float64
	for _, p := range points {
		out = append(out, [2]float64{math.Round(p.X*1e4) / 10, math.Round(p.Y*1e4) / 10})
	}
	return out
}

// Size of one view of a row in pixels; front and three-quarter stand side by side.
const (
	viewWide = 400
	viewTall = 480
)

// picture draws front and three-quarter views. The camera looks at the form,
// not at the cloth, so that it is the same for all rows on one form.
func (h *hanger) picture(one *drawn.Drape) ([]byte, error) {
	h.drawn.Lock()
	defer h.drawn.Unlock()
	if !h.asked {
		h.asked = true
		h.stage, h.blind = h.open()
	}
	if h.blind != nil {
		return nil, h.blind
	}
	scene, box := one.Scene(), bodice(one.Form)
	aspect := float64(viewWide) / viewTall
	both := image.NewRGBA(image.Rect(0, 0, 2*viewWide, viewTall))
	for i, v := range []stage.View{stage.Front(box, aspect), stage.ThreeQuarter(box, aspect)} {
		img, err := h.stage.Draw(scene, v, viewWide, viewTall)
		if err != nil {
			return nil, err
		}
		draw.Draw(both, image.Rect(i*viewWide, 0, (i+1)*viewWide, viewTall), img, image.Point{}, draw.Src)
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, both, &jpeg.Options{Quality: 85}); err != nil {
		return nil, fmt.Errorf("picture: %w", err)
	}
	return b.Bytes(), nil
}

// bodice is the box that the camera frames: the form from the waist up, with
// room in front for the cloth.
func bodice(f *form.Form) r3.Box {
	const room = 0.03 // m
	var upper []r3.Vec
	for _, p := range f.Surface().Pos {
		if p.Y > -0.02 {
			upper = append(upper, p)
		}
	}
	b := stage.Bounds(upper)
	b.Max.Z += room
	return b
}
