//go:build cgo

package window

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"cowl/sim"
	"cowl/sim/drape"
)

// Every warning that a drape can give has words of the window, and something that
// helps. The warnings are read out of the source that gives them.
func TestDoubtsAreWhole(t *testing.T) {
	n := 0
	for _, name := range []string{"doubt.go", "outcome.go"} {
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", "..", "..", "..", "sim", "drape", name), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(x ast.Node) bool {
			text, ok := textOf(x)
			if strings.Count(text, " ") < 4 {
				return !ok
			}
			n++
			p := &Pane{live: &drape.Live{}, dummy: &dummy{}}
			p.frame = drape.Frame{Read: true, Stage: drape.StageStopped,
				Outcome: drape.Outcome{Warning: text}}
			if d := p.doubt(); d == nil || d.sign == "" || len(d.cures) == 0 {
				t.Errorf("%s: the window has no words for %q", name, text)
			}
			return false
		})
	}
	if n != len(doubts) {
		t.Errorf("%d warnings found, %d in the list of doubts, want as many", n, len(doubts))
	}
}

// textOf is a string of a program, which may be written in several parts; false: x is none.
func textOf(x ast.Node) (string, bool) {
	switch e := x.(type) {
	case *ast.BasicLit:
		return strings.Trim(e.Value, `"`), e.Kind == token.STRING
	case *ast.BinaryExpr:
		a, ok := textOf(e.X)
		b, also := textOf(e.Y)
		return a + b, ok && also && e.Op == token.ADD
	}
	return "", false
}

// What the walk refuses is told with what hangs meanwhile: the drape of before, that
// which was asked for, or one that could not be placed.
func TestRefusals(t *testing.T) {
	other := drape.Job{Spacing: 0.01}
	for _, c := range []struct {
		name    string
		asked   drape.Job
		stage   string
		head    string
		figures bool
	}{
		{"another drape hangs", other, drape.StageRest, "Could not be hung", true},
		{"as asked, but for a remark", drape.Job{}, drape.StageRest, "Not as asked", true},
		{"could not be placed", drape.Job{}, drape.StageStopped, "Could not be placed", false},
	} {
		p := &Pane{live: &drape.Live{}, dummy: &dummy{}, asked: asked{job: c.asked}}
		p.frame = drape.Frame{Read: true, Stage: c.stage, Err: errors.New("too short")}
		if _, news := p.refuse(); !news {
			t.Errorf("%s: the refusal is no news", c.name)
		}
		if _, news := p.refuse(); news {
			t.Errorf("%s: told twice, the refusal is still news", c.name)
		}
		d := p.doubt()
		if d == nil || d.head != c.head || !strings.HasPrefix(d.words(Centimetres, nil), "Too short.") {
			t.Errorf("%s: doubt %+v, want %q with the reason", c.name, d, c.head)
		}
		if p.stale() || p.figures() != c.figures {
			t.Errorf("%s: stale %v, figures %v, want settled and %v", c.name, p.stale(), p.figures(), c.figures)
		}
	}
}

// After a change the figures of before are dull and called so, until the walk takes
// it up: here it never does. They cannot be saved as a result either.
func changing(d *drive) {
	d.click("tab/Cut")
	d.click("grain/typed")
	d.x("type", "30")
	d.key("Return")
	d.ask(func(a *App) {
		p := a.pane()
		if stageWords(p) != "changing" || p.figures() || p.resting() || restShare(p) != 0 {
			d.Errorf("after a change the drape is %q, figures %v, at rest %v; want changing and neither", stageWords(p),
				p.figures(), p.resting())
		}
		a.saveResult()
		if !strings.Contains(a.note.text, "before the change") {
			d.Errorf("saving the result says %q, want that it is that of before", a.note.text)
		}
		a.note = note{}
		a.pane().keep.unsaved = false
	})
	d.x("mousemove", "640", "3")
	d.golden("changing.png")
}

// Cloth that has failed is told of whole, with buttons that do what helps; its figures
// are dull.
func doubtful(d *drive) {
	d.ask(func(a *App) {
		f := &a.pane().frame
		f.Stage, f.Outcome.Status, f.Outcome.Warning = drape.StageStopped, sim.StepLimit,
			"layers of cloth pass through each other: try a finer spacing or another seed"
		a.pane().keep.unsaved = false
	})
	d.x("mousemove", "640", "3")
	d.golden("failed.png")
	d.click("cure/hand")
	d.ask(func(a *App) {
		if got := a.pane().seed(); got != 2 {
			d.Errorf("another hand is hand %d, want 2", got)
		}
		a.undo()
	})
	d.click("cure/finer")
	d.ask(func(a *App) {
		if got := a.pane().Style.Hang.Spacing; got != 0.015 {
			d.Errorf("the finer lattice has %g m, want 0.015", got)
		}
		a.undo()
		f := &a.pane().frame
		f.Stage, f.Outcome.Status, f.Outcome.Warning = drape.StageRest, sim.Settled, ""
		if a.pane().doubt() != nil || !a.pane().figures() {
			d.Error("cloth at rest with no warning is in doubt")
		}
	})
}
